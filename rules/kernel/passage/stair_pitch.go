package passage

import "math"

// pitching is the body as it is pitched about the X axis of a stair, its places across
// unchanged: the way from the slope to the level and on.
type pitching struct {
	b     *Body
	s     side
	off   float64
	turn  Turn // not pitched
	at    [pitches]pitched
	nodes []pitchNode
}

// The pitches of the search are pitchStep apart, level the middle one.
const (
	pitches   = 73
	pitchStep = math.Pi / 72
	level     = pitches / 2
	// shortPitch is a step, in m, that is not halved any more.
	shortPitch = 0.001
)

// pitched is the body at a pitch.
type pitched struct {
	turn  Turn
	side  sidelong
	first int // of its regions among the nodes
	count int
}

// pitchNode is a region at a pitch.
type pitchNode struct {
	region
	from, to float64
	pitch    int
	last     int     // the node before it on the way, or -1
	y, z     float64 // where the way comes in
	seen     bool
}

// pitchTurn is a turn pitched by an angle about X, up in front.
func pitchTurn(t Turn, angle float64) Turn {
	s, c := math.Sincos(angle)
	// What is along body direction v has new world parts y·c − z·s and y·s + z·c.
	return Turn{t[0], t[1].times(c).minus(t[2].times(s)), t[1].times(s).add(t[2].times(c))}
}

func (b *Body) pitching(s side, t Turn, off float64) *pitching {
	p := &pitching{b: b, s: s, off: off, turn: t}
	for i := range p.at {
		at := pitchTurn(t, pitchStep*float64(i-level))
		p.at[i] = pitched{turn: at, side: b.sidelong(s, at, off), first: len(p.nodes)}
		for _, r := range p.at[i].side.regions() {
			if from, to := r.along(); from <= to {
				p.nodes = append(p.nodes, pitchNode{region: r, from: from, to: to, pitch: i, last: -1})
			}
		}
		p.at[i].count = len(p.nodes) - p.at[i].first
	}
	return p
}

// way looks for a way from a place at the level to down the flight, or where y is
// +Inf from up the flight that goes on: the poses of it, along Y and Z alone.
func (p *pitching) way(y, z float64) []Pose {
	var open []int
	for i := range p.nodes {
		n := &p.nodes[i]
		if math.IsInf(y, 1) && math.IsInf(n.to, 1) {
			at := max(n.from, 0) + 2*p.b.diameter
			n.seen, n.y, n.z = true, at, n.middle(at)
			open = append(open, i)
		} else if h := n.heights(y); n.pitch == level && y <= n.to+1e-9 && y >= n.from-1e-9 && z >= h.low-1e-9 && z <= h.high+1e-9 {
			n.seen, n.y, n.z = true, y, z
			open = append(open, i)
		}
	}
	for len(open) > 0 {
		i := open[0]
		open = open[1:]
		if math.IsInf(p.nodes[i].from, -1) {
			return p.poses(i)
		}
		open = p.spread(i, open)
	}
	return nil
}

// middle is half way between the heights at a place.
func (r region) middle(y float64) float64 {
	h := r.heights(y)
	return (h.low + h.high) / 2
}

// spread reaches the nodes next to one.
func (p *pitching) spread(i int, open []int) []int {
	for pitch := max(0, p.nodes[i].pitch-1); pitch <= min(pitches-1, p.nodes[i].pitch+1); pitch++ {
		for j := p.at[pitch].first; j < p.at[pitch].first+p.at[pitch].count; j++ {
			if p.nodes[j].seen {
				continue
			}
			if y, z, ok := p.meet(i, j); ok {
				n := &p.nodes[j]
				n.seen, n.last, n.y, n.z = true, i, y, z
				open = append(open, j)
			}
		}
	}
	return open
}

// meet is a place at which the body turns from one node to another.
func (p *pitching) meet(i, j int) (y, z float64, ok bool) {
	a, b := &p.nodes[i], &p.nodes[j]
	both := a.region.and(b.region)
	from, to := both.along()
	if from > to {
		return 0, 0, false
	}
	far := 2*p.b.diameter + p.s.deep/p.s.slope
	from, to = max(from, -far), min(to, 2*far)
	if from > to {
		from = to
	}
	for _, share := range [3]float64{0.5, 0.1, 0.9} {
		y = from + share*(to-from)
		z = both.middle(y)
		if p.turns(p.at[a.pitch].turn, p.at[b.pitch].turn, y, z) {
			return y, z, true
		}
	}
	return 0, 0, false
}

// turns reports whether the body turns in place from one pitch to another: no point
// moves further than the angle by its distance from the origin.
func (p *pitching) turns(t, u Turn, y, z float64) bool {
	angle := t.Apart(u)
	if angle < 1e-9 {
		return true
	}
	moved := angle * p.b.radius()
	one, other := p.b.sidelong(p.s, t, p.off), p.b.sidelong(p.s, u, p.off)
	a, b := one.room(y, z), other.room(y, z)
	if a < -1e-9 || b < -1e-9 {
		return false
	}
	if a+b >= moved {
		return true
	}
	if moved < shortPitch {
		return false
	}
	mid := t.Between(u, 0.5)
	return p.turns(t, mid, y, z) && p.turns(mid, u, y, z)
}

// radius is no less than the distance of any point of the body from its origin.
func (b *Body) radius() float64 { return math.Sqrt(b.half*b.half + b.wide*b.wide/4 + b.high*b.high/4) }

// poses are those of the way to a node, and from there down the flight.
func (p *pitching) poses(i int) []Pose {
	last := &p.nodes[i]
	far := min(last.y, 0) - 2*p.b.diameter - p.s.deep/p.s.slope
	out := []Pose{p.pose(last.pitch, far, last.middle(far))}
	for ; i >= 0; i = p.nodes[i].last {
		n := &p.nodes[i]
		out = append(out, p.pose(n.pitch, n.y, n.z))
		if n.last >= 0 {
			out = append(out, p.pose(p.nodes[n.last].pitch, n.y, n.z))
		}
	}
	return out
}

func (p *pitching) pose(pitch int, y, z float64) Pose {
	return Pose{p.at[pitch].turn, Vec{0, y, z}}
}

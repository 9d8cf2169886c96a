package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// pitching is the body as it is pitched about the X axis of a stair, its places across
// unchanged: the way from the slope to the level and on.
type pitching struct {
	b     *passage.Body
	s     side
	off   float64
	turn  space.Turn // not pitched
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
	turn  space.Turn
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
func pitchTurn(t space.Turn, angle float64) space.Turn {
	s, c := math.Sincos(angle)
	// What is along body direction v has new world parts y·c − z·s and y·s + z·c.
	return space.Turn{t[0], t[1].Times(c).Minus(t[2].Times(s)), t[1].Times(s).Add(t[2].Times(c))}
}

func newPitching(b *passage.Body, s side, t space.Turn, off float64) *pitching {
	p := &pitching{b: b, s: s, off: off, turn: t}
	for i := range p.at {
		at := pitchTurn(t, pitchStep*float64(i-level))
		p.at[i] = pitched{turn: at, side: sidelongOf(b, s, at, off), first: len(p.nodes)}
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
func (p *pitching) way(y, z float64) []space.Pose {
	var open []int
	for i := range p.nodes {
		n := &p.nodes[i]
		if math.IsInf(y, 1) && math.IsInf(n.to, 1) {
			at := max(n.from, 0) + 2*p.b.Diameter()
			n.seen, n.y, n.z = true, at, n.middle(at)
			open = append(open, i)
		} else if h := n.heights(y); n.pitch == level && y <= n.to+1e-9 && y >= n.from-1e-9 && z >= h.Low-1e-9 && z <= h.High+1e-9 {
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
	return (h.Low + h.High) / 2
}

package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

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
	far := 2*p.b.Diameter() + p.s.deep/p.s.slope
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
func (p *pitching) turns(t, u space.Turn, y, z float64) bool {
	angle := t.Apart(u)
	if angle < 1e-9 {
		return true
	}
	moved := angle * radius(p.b)
	one, other := sidelongOf(p.b, p.s, t, p.off), sidelongOf(p.b, p.s, u, p.off)
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
func radius(b *passage.Body) float64 {
	return math.Sqrt(b.Half()*b.Half() + b.Wide()*b.Wide()/4 + b.High()*b.High()/4)
}

// poses are those of the way to a node, and from there down the flight.
func (p *pitching) poses(i int) []space.Pose {
	last := &p.nodes[i]
	far := min(last.y, 0) - 2*p.b.Diameter() - p.s.deep/p.s.slope
	out := []space.Pose{p.pose(last.pitch, far, last.middle(far))}
	for ; i >= 0; i = p.nodes[i].last {
		n := &p.nodes[i]
		out = append(out, p.pose(n.pitch, n.y, n.z))
		if n.last >= 0 {
			out = append(out, p.pose(p.nodes[n.last].pitch, n.y, n.z))
		}
	}
	return out
}

func (p *pitching) pose(pitch int, y, z float64) space.Pose {
	return space.Pose{Turn: p.at[pitch].turn, At: space.Vec{X: 0, Y: y, Z: z}}
}

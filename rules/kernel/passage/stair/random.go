package stair

import (
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// even is a random number between two.
func (g *growing) even(a, b float64) float64 { return a + (b-a)*g.r.Float64() }

// anywhere is a random pose at one of the stair's parts.
func (g *growing) anywhere() treeNode {
	q := space.RandomQuaternion(g.r)
	return treeNode{Pose: space.Pose{Turn: q.Turn(), At: g.somewhere()}, turn: q}
}

// moreLanding is how many times more often than the other parts the landing is taken.
const moreLanding = 2

// somewhere is a random place at one of the stair's parts, for the body's middle.
func (g *growing) somewhere() space.Vec {
	s, far := g.s, g.b.Diameter()
	deep, up := s.Rise*float64(s.Risers), g.even(0, s.Headroom)
	part := max(0, g.r.IntN(s.parts()+moreLanding)-moreLanding)
	if part == 0 && s.Turn == Straight {
		walls := turns.Bounds{High: s.Width}
		if s.Placed {
			walls = s.landing()
		}
		return space.Vec{X: g.even(walls.Low, walls.High), Y: g.even(-far/2, far), Z: up}
	}
	switch on := g.even(0, s.run()); part {
	case 0:
		return space.Vec{X: g.even(0, s.Across), Y: g.even(-far/4, s.Length), Z: up}
	case 1:
		return space.Vec{X: g.even(0, s.Width), Y: -s.run() - g.even(0, far), Z: up - deep}
	case 2:
		return space.Vec{X: g.even(0, s.Width), Y: -on, Z: up - s.slope()*on}
	case 3:
		return s.beyond(g.even(0, 1), on, up+s.slope()*on)
	default:
		return s.beyond(g.even(0, 1), s.run()+g.even(0, far), up+deep)
	}
}

// beyond is a place at a share of the width of the flight that goes on, so far on from
// the landing.
func (s Stair) beyond(share, on, up float64) space.Vec {
	if s.Turn == Quarter {
		return space.Vec{X: s.Across + on, Y: share * s.Length, Z: up}
	}
	return space.Vec{X: s.Across - share*s.Width, Y: -on, Z: up}
}

// slope is the direction of a flight.
func (g *growing) slope() space.Vec {
	if g.s.Turn == Straight || g.r.IntN(2) == 0 {
		return space.Vec{Y: 1, Z: g.s.slope()}
	}
	return g.s.beyond(0, 1, g.s.slope()).Minus(g.s.beyond(0, 0, 0))
}

// near is a random pose about one, turned and shifted by about so much.
func (g *growing) near(n *treeNode, by float64) treeNode {
	q := n.turn.Nearby(g.r, by)
	v := space.Vec{X: g.r.NormFloat64(), Y: g.r.NormFloat64(), Z: g.r.NormFloat64()}
	return treeNode{Pose: space.Pose{Turn: q.Turn(), At: n.At.Add(v.Times(by / 2))}, turn: q}
}

// How a pose with room is looked for: the random steps grow where one leaves more, up to
// a most, and get less after so many that leave less.
const (
	stepMost  = 0.4
	stepGrows = 1.4
	stepLess  = 0.6
	stepFails = 6
)

// roomier is a pose that has room, if random steps each of which leaves more than the one
// before come to one.
func (g *growing) roomier(n treeNode, tries int, step float64) (_ treeNode, ok bool) {
	failed := 0
	for range tries {
		if n.room >= roomLeast {
			return n, true
		}
		m := g.near(&n, step)
		if m.room = g.look(m.Pose, n.room); m.room > n.room {
			n, failed, step = m, 0, min(stepMost, step*stepGrows)
		} else if failed++; failed > stepFails {
			failed, step = 0, step*stepLess
		}
	}
	return n, n.room >= roomLeast
}

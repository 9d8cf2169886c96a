package car

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// The ways along the roomiest turns.
const (
	ridgeRests  = 6     // places at rest that are looked for
	restClimb   = 200   // steps to the roomiest turn near one
	ridgeStates = 8000  // that they may spend
	ridgeStride = 0.06  // m, of a step outward
	ridgeLeast  = 0.004 // m, of the shortest
	ridgeTries  = 30    // turns that are tried at a depth
	ridgeTurn   = 0.08  // rad, about, of the first
	ridgeRoom   = 0.03  // m, that is room enough
	widening    = 1.6   // of the angle, after a turn that is roomier
	narrowing   = 0.85  // after one that is not
	climbTurn   = 0.3   // rad, about, of the first step to a roomier rest
	settling    = 0.93  // of the angle there, after a turn that is not
)

// ridges looks for a way out from places at rest, each along the roomiest turns near
// the last ones: it goes where random directions seldom do, along a narrow way on which
// the body has to turn at an even rate. It gives the way in.
func ridges(b *passage.Body, in hole, rest space.Turn, budget *passage.Budget) (way []state, least float64) {
	least = math.Inf(1)
	if budget.Spent() {
		return nil, least
	}
	budget.States(ridgeStates, func(left *passage.Budget) {
		x := newRoam(b, in, left, false)
		for _, t := range x.rests(rest) {
			x.tree = nil
			x.alike(t)
			for _, root := range x.tree {
				out := x.ridge(root)
				least = min(least, out[len(out)-1].x)
				if x.arrived(out[len(out)-1]) {
					way = backward(out)
					return
				}
			}
		}
	})
	return way, least
}

// backward is the states of branches, the last one first.
func backward(out []branch) []state {
	way := make([]state, len(out))
	for i, n := range out {
		way[len(out)-1-i] = n.state
	}
	return way
}

// rests are some turns at which the body is within the walls, from one of them and
// from random ones, each made roomier.
func (x *roam) rests(first space.Turn) (out []space.Turn) {
	for k := range ridgeRests {
		t := first
		if k > 0 {
			t = x.anyTurn()
		}
		if t, room := x.climb(t); room >= 0 {
			out = append(out, t)
		}
	}
	return out
}

// climb is a turn near one at which the inside leaves more, and what it leaves.
func (x *roam) climb(t space.Turn) (space.Turn, float64) {
	sizes := x.h.inside()
	best, _ := turns.Room(x.b, t, sizes, space.Angle{Sin: 0, Cos: 1})
	by := climbTurn
	for range restClimb {
		u := x.nearby(t, by)
		if at, _ := turns.Room(x.b, u, sizes, space.Angle{Sin: 0, Cos: 1}); at > best {
			t, best, by = u, at, by*widening
		} else {
			by = max(by*settling, 1e-3)
		}
	}
	return t, best
}

// ridge is the way outward from a root as far as it goes.
func (x *roam) ridge(root branch) []branch {
	way := []branch{root}
	for by := ridgeStride; by >= ridgeLeast && !x.budget.Spent(); {
		last := way[len(way)-1]
		if x.arrived(last) {
			break
		}
		next := x.along(way, max(last.depth-by, x.outside()))
		ok := next.margin >= 0
		if ok {
			_, ok = x.step(last.state, next.state)
		}
		if !ok {
			by /= 2
			continue
		}
		way = append(way, next)
		by = min(ridgeStride, 1.5*by)
	}
	return way
}

// along is the way gone on to a depth: it turns on as it did before, or not, and from
// there to what is roomier, until there is room enough.
func (x *roam) along(way []branch, depth float64) branch {
	last := way[len(way)-1]
	s := x.state(last.turn, depth)
	if n := len(way); n > 1 {
		before := way[n-2]
		f := (before.depth - depth) / (before.depth - last.depth)
		if on := x.state(before.turn.Between(last.turn, f), depth); on.margin > s.margin {
			s = on
		}
	}
	by := ridgeTurn
	for i := 0; i < ridgeTries && s.margin < ridgeRoom && x.budget.Spend(1); i++ {
		if near := x.state(x.nearby(s.turn, by), depth); near.margin > s.margin {
			s, by = near, by*widening
		} else {
			by *= narrowing
		}
	}
	return branch{s, depth, -1}
}

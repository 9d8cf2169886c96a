package car

import (
	"math"
	"math/rand/v2"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// roam looks for a way in by growing a tree of states in random directions, the
// same ones on every machine: outward from the body at rest, or inward from a
// place that was reached.
type roam struct {
	entry
	inward bool
	tree   []branch
	r      *rand.Rand
}

// branch is a state with the one that it is reached from.
type branch struct {
	state
	depth float64 // of the foremost point
	from  int     // -1 at a root
}

// The growth of a tree.
const (
	roamSeed    = 25
	roamStride  = 0.15 // m, of a branch
	roamTurn    = 0.4  // rad, about
	roamForward = 0.4  // m, at most, and a quarter of it back
	roamPick    = 4    // the furthest of so many grows
	restSteps   = 600
	slides      = 8   // random turns that are tried where a branch ends at a wall
	slideTurn   = 0.2 // rad, about, of each
	slideMost   = 0.1 // m, that a branch may be in the wall
)

func newRoam(b *passage.Body, h hole, budget *passage.Budget, inward bool) *roam {
	return &roam{entry: entry{b: b, h: h, budget: budget}, inward: inward, r: rand.New(rand.NewPCG(roamSeed, 0))}
}

func (x *roam) nearby(t space.Turn, by float64) space.Turn {
	return t.Quaternion().Nearby(x.r, by).Turn()
}

func (x *roam) anyTurn() space.Turn { return space.RandomQuaternion(x.r).Turn() }

func (x *roam) root(s state, depth float64) {
	if s.margin >= 0 {
		x.tree = append(x.tree, branch{s, depth, -1})
	}
}

// rest makes roots of a turn at which the body is within the walls, after it has
// been made roomier, and of those like it.
func (x *roam) rest(t space.Turn) {
	sizes := x.h.inside()
	best, _ := turns.Room(x.b, t, sizes, space.Angle{Sin: 0, Cos: 1})
	for i := range restSteps {
		u := x.nearby(t, roamTurn/2*math.Pow(0.99, float64(i)))
		if at, _ := turns.Room(x.b, u, sizes, space.Angle{Sin: 0, Cos: 1}); at > best {
			t, best = u, at
		}
	}
	x.alike(t)
}

// inside are the sizes of what is behind an opening.
func (h hole) inside() [3]float64 {
	return [3]float64{h.length, h.inY[1] - h.inY[0], h.inZ[1] - h.inZ[0]}
}

// alike makes roots of a turn and of those at which the body has the same widths.
func (x *roam) alike(t space.Turn) {
	for _, world := range halfTurns {
		for k, own := range halfTurns {
			if k > 1 && !x.b.Mirrored() {
				break
			}
			u := t
			for i := range u {
				u[i] = space.Vec{X: u[i].X * own[0], Y: u[i].Y * own[1], Z: u[i].Z * own[2]}.Times(world[i])
			}
			depth := (x.h.length + x.b.Width(u[0])) / 2
			x.root(x.state(u, depth), depth)
		}
	}
}

// halfTurns are those about the three axes, and none, as the signs of the axes.
var halfTurns = [4][3]float64{{1, 1, 1}, {1, -1, -1}, {-1, 1, -1}, {-1, -1, 1}}

// arrived reports whether a branch is where the tree is to go.
func (x *roam) arrived(n branch) bool {
	if x.inward {
		return n.depth-x.b.Width(n.turn[0]) >= x.b.Wrap()
	}
	return n.depth <= x.outside()
}

func (x *roam) outside() float64 { return -x.b.Wrap() - entrySlack - 1e-3 }

// forward is how much further one depth is than another.
func (x *roam) forward(a, b float64) float64 {
	if x.inward {
		return a - b
	}
	return b - a
}

// find grows the tree until it arrives: the states from the root on.
func (x *roam) find() []state {
	for len(x.tree) > 0 && x.budget.Spend(1) {
		near, turn, depth := x.aim()
		if i := x.grow(near, turn, depth); i >= 0 {
			return x.line(i)
		}
	}
	return nil
}

// aim is a branch with where to grow it: one that is far along, onward, or the
// one that is nearest to anywhere.
func (x *roam) aim() (near int, turn space.Turn, depth float64) {
	least, most := x.outside(), x.h.length-x.b.Wrap()
	if x.r.IntN(2) == 0 {
		turn, depth = x.anyTurn(), least+x.r.Float64()*(most-least)
		nearest := math.Inf(1)
		for i, n := range x.tree {
			if d := math.Abs(depth-n.depth) + turn.Apart(n.turn)*x.b.Diameter()/4; d < nearest {
				near, nearest = i, d
			}
		}
		return near, turn, depth
	}
	near = x.r.IntN(len(x.tree))
	for range roamPick - 1 {
		if i := x.r.IntN(len(x.tree)); x.forward(x.tree[i].depth, x.tree[near].depth) > 0 {
			near = i
		}
	}
	by := roamForward * (1.25*x.r.Float64() - 0.25)
	if x.r.IntN(3) == 0 {
		by = most - least
	}
	if !x.inward {
		by = -by
	}
	n := x.tree[near]
	return near, x.nearby(n.turn, roamTurn), min(most, max(least, n.depth+by))
}

// grow grows a branch towards a turn and a depth as far as it goes; the branch
// with which the tree has arrived, or -1.
func (x *roam) grow(from int, turn space.Turn, depth float64) int {
	a := x.tree[from]
	n := int(math.Ceil((math.Abs(depth-a.depth) + turn.Apart(a.turn)*x.b.Diameter()/2) / roamStride))
	for k := 0; k < n && x.budget.Spend(1); k++ {
		f := 1 / float64(n-k)
		d := a.depth + f*(depth-a.depth)
		s := x.slid(x.state(a.turn.Between(turn, f), d), d)
		if s.margin < 0 {
			break
		}
		if _, ok := x.step(a.state, s); !ok {
			break
		}
		a = branch{s, d, from}
		x.tree = append(x.tree, a)
		from = len(x.tree) - 1
		if x.arrived(a) {
			return from
		}
	}
	return -1
}

// slid is a state, or one near it that is free at its depth, if some random turns
// come to one, each of which leaves more than the one before.
func (x *roam) slid(s state, depth float64) state {
	for i := 0; i < slides && s.margin < 0 && s.margin > -slideMost && x.budget.Spend(1); i++ {
		if near := x.state(x.nearby(s.turn, slideTurn), depth); near.margin > s.margin {
			s = near
		}
	}
	return s
}

// line is the branches from a root to one.
func (x *roam) line(i int) []state {
	var out []state
	for ; i >= 0; i = x.tree[i].from {
		out = append(out, x.tree[i].state)
	}
	slices.Reverse(out)
	return out
}

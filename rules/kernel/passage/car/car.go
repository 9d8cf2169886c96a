// Package car decides whether a body goes into a space through a door in its end wall, as
// that of a vehicle or an elevator, and how. Lengths are in m and angles in rad.
package car

import (
	"math"
	"math/rand/v2"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// Car is a space with a door in its end wall: a vehicle, or an elevator. The
// world's axes: X goes in, the inside is 0 ≤ X ≤ Length, 0 ≤ Y ≤ Width and
// 0 ≤ Z ≤ Height; before X = 0 there is nothing but the wall with the door,
// which begins at Left and Sill. Lengths in m.
type Car struct {
	Length, Width, Height float64
	DoorWidth, DoorHeight float64
	Left, Sill            float64
}

// opening is the part of the door that is beside no wall of the inside.
func (c Car) opening() (y, z, w, h float64) {
	y, z = max(0, c.Left), max(0, c.Sill)
	return y, z, min(c.Width, c.Left+c.DoorWidth) - y, min(c.Height, c.Sill+c.DoorHeight) - z
}

// mirror is the car with left and right exchanged.
func (c Car) mirror() Car {
	c.Left = c.Width - c.Left - c.DoorWidth
	return c
}

// Into decides whether the body goes into a car by one motion from outside to rest.
// The margin of a motion is in m. A door that is nearer to the right is looked at
// in the mirror, so that the answer is the same on both sides.
//
// Bars and covers prove that nothing passes; searches find ways in, and what
// neither decides is Undecided. Derived.
func Into(b *passage.Body, c Car, budget *passage.Budget) passage.Decision {
	other := c.mirror()
	if c.Left-other.Left <= passage.Settled {
		return intoLeft(b, c, budget)
	}
	d := intoLeft(b, other, budget)
	d.Motion = mirrored(d.Motion, c.Width)
	for i := range d.Others {
		d.Others[i] = mirrored(d.Others[i], c.Width)
	}
	return d
}

// mirrored is a motion in a space of a width with left and right exchanged, and
// the two ends of the body, which are alike.
func mirrored(m passage.Motion, width float64) passage.Motion {
	m.Angle = -m.Angle
	if first := m.Start; first != nil {
		m.Start = func() space.Turn { return first().Mirrored() }
	}
	if poses := m.Follow; poses != nil {
		m.Follow = func() []space.Pose {
			given := poses()
			out := make([]space.Pose, len(given))
			for i, q := range given {
				out[i] = space.Pose{Turn: q.Turn.Mirrored(), At: space.Vec{X: q.At.X, Y: width - q.At.Y, Z: q.At.Z}}
			}
			return out
		}
	}
	return m
}

func intoLeft(b *passage.Body, c Car, budget *passage.Budget) passage.Decision {
	y, z, w, h := c.opening()
	ways := opening.Straight(b, w, h)
	for i := range ways {
		m := &ways[i]
		m.Margin = min(m.Margin, (c.Length-m.Depth)/2)
		poses := m.Follow
		m.Follow = func() []space.Pose { return parked(b, poses(), y, z, c.Length) }
	}
	plain := passage.Best(ways)
	if plain.Margin >= opening.Facing {
		return passage.Passing(ways)
	}
	if plain.Margin >= 0 {
		if budget.Spent() {
			return passage.Passing(ways)
		}
		if m, ok := turnLevel(b.Coarse(entryCoarse), c.hole(), new([]*entry), budget); ok && m.Margin > plain.Margin && !m.Tilted {
			ways = append(ways, m)
		}
		return passage.Passing(ways)
	}
	if opening.Barred(b, c.DoorWidth, c.DoorHeight) {
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.BarInside}
	}
	inside := atRest(b, c, budget)
	if inside.Margin < 0 && !inside.RanOut {
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.WholeBody}
	}
	in := turns.Within(b, [3]float64{c.Length, w, h}, budget)
	if in.Margin >= 0 {
		m := passage.Motion{Way: passage.Free, Margin: in.Margin, Tilted: true}
		m.Follow = func() []space.Pose { return parked(b, opening.Push(b, in.Turn, w, h, 0, 0), y, z, c.Length) }
		return passage.Decision{Outcome: passage.Passes, Motion: m}
	}
	if budget.Spent() {
		return passage.Decision{Outcome: passage.Undecided, Motion: plain, RanOut: true}
	}
	m, between, ok := turnIn(b.Coarse(entryCoarse), c, inside.Turn, budget)
	if ok {
		return passage.Decision{Outcome: passage.Passes, Motion: m}
	}
	if proven, ranOut := shutOut(b, c, between, budget); proven {
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.BeyondCover}
	} else {
		return passage.Decision{Outcome: passage.Undecided, Motion: plain, RanOut: ranOut || inside.RanOut || in.RanOut}
	}
}

// restCells are the cells that it may take to find out whether the body can rest in a
// car: where they do not tell, the cover of the ways in often does.
const restCells = 4000

// atRest looks for a turn at which the body is in a car.
func atRest(b *passage.Body, c Car, budget *passage.Budget) turns.Covered {
	var part *passage.Budget
	if budget != nil {
		part = &passage.Budget{Cells: min(restCells, budget.Cells)}
		budget.Cells -= part.Cells
		defer func() { budget.Cells += part.Cells }()
	}
	return turns.Within(b, [3]float64{c.Length, c.Width, c.Height}, part)
}

// entryCoarse is how far, in m, a body that is looked for a way in for may be from
// the true one.
const entryCoarse = 0.001

// hole is the door with the inside behind it.
func (c Car) hole() hole {
	y, z, w, h := c.opening()
	return hole{
		y: [2]float64{y, y + w}, z: [2]float64{z, z + h}, inY: [2]float64{0, c.Width}, inZ: [2]float64{0, c.Height}, length: c.Length,
	}
}

// The states that the ways in may spend: level or tipping on each side, leaning,
// and the trees.
const (
	levelStates = 4000
	leanStates  = 8000
	roamStates  = 4000
	waysOut     = 4 // trees that grow outward, each in other random directions
	goOn        = 2 // searches that are gone on from
)

// turnIn looks for a way in on which the body turns: level on each of its sides,
// tipping about each of its level directions, out from where it can rest along the
// roomiest turns, along its curve with its length leaning in the door, from there on
// in any way, and any way out.
func turnIn(b *passage.Body, c Car, rest space.Turn, budget *passage.Budget) (m passage.Motion, between depths, found bool) {
	in := c.hole()
	var tried []*entry
	if m, ok := turnLevel(b, in, &tried, budget); ok {
		return m, between, true
	}
	way, least := ridges(b, in, rest, budget)
	for _, lean := range leans(b, c) {
		if way != nil {
			break
		}
		if way, margin := tryLean(b, in, lean, space.Vec{X: 1}, leanStates, &tried, budget); way != nil {
			return freely(way, margin, true), between, true
		}
	}
	between = gate(least, furthest(tried))
	for seed := uint64(0); seed < waysOut && way == nil; seed++ {
		way = wayOut(b, in, rest, seed, budget)
	}
	for i := 0; i < goOn && way == nil; i++ {
		way = onward(b, in, tried, budget)
	}
	if way == nil {
		return passage.Motion{}, between, false
	}
	way, margin := tried[0].followed(way)
	return freely(way, margin, true), between, way != nil
}

// turnLevel looks for a way in on which the body stays level on one of its sides,
// then for one on which it tips about a level direction. What was tried is added to
// a list.
func turnLevel(b *passage.Body, in hole, tried *[]*entry, budget *passage.Budget) (passage.Motion, bool) {
	ups := []space.Vec{{X: 1}, {Z: 1}, {Y: 1}, {X: -1}}
	if b.Own().Angle != 0 {
		s, k := math.Sincos(b.Own().Angle)
		ups = append(ups, space.Vec{Y: s, Z: k}, space.Vec{Y: k, Z: -s})
	}
	for _, lean := range [2]float64{math.Pi / 2, 0} {
		for _, v := range ups {
			if way, margin := tryLean(b, in, lean, v, levelStates, tried, budget); way != nil {
				return freely(way, margin, lean == 0), true
			}
		}
	}
	return passage.Motion{}, false
}

// tryLean looks for a way in at one lean, with so many states.
func tryLean(b *passage.Body, in hole, lean float64, v space.Vec, most int, tried *[]*entry, budget *passage.Budget) (way []state, margin float64) {
	budget.States(most, func(left *passage.Budget) {
		e := leaning(b, in, lean, v, left)
		*tried = append(*tried, e)
		way, margin = e.way()
	})
	return way, margin
}

// wayOut is a way in that was found as one out from where the body can rest.
func wayOut(b *passage.Body, in hole, rest space.Turn, seed uint64, budget *passage.Budget) (way []state) {
	budget.States(roamStates, func(left *passage.Budget) {
		x := newRoam(b, in, left, false)
		x.r = rand.New(rand.NewPCG(roamSeed, seed))
		x.rest(rest)
		way = x.find()
		slices.Reverse(way)
	})
	return way
}

// onward goes on from the deepest place that a search came to, and from no other
// of that search again.
func onward(b *passage.Body, in hole, tried []*entry, budget *passage.Budget) (way []state) {
	best := deepestOf(tried)
	if best == nil {
		return nil
	}
	begin := best.path(best.deepest())
	best.rows = nil
	budget.States(roamStates, func(left *passage.Budget) {
		x := newRoam(b, in, left, true)
		last := begin[len(begin)-1]
		x.root(last, last.x+b.Reach(last.turn[0]).Dot(last.turn[0]))
		if more := x.find(); more != nil {
			way = append(begin, more[1:]...)
		}
	})
	return way
}

// deepestOf is the search that came furthest in, or nil.
func deepestOf(tried []*entry) (best *entry) {
	for _, e := range tried {
		if at := e.deepest(); at >= 0 && (best == nil || e.node(at).x > best.node(best.deepest()).x) {
			best = e
		}
	}
	return best
}

// furthest is the depth of the origin to which the searches came, or -Inf.
func furthest(tried []*entry) float64 {
	if best := deepestOf(tried); best != nil {
		return best.node(best.deepest()).x
	}
	return none
}

func freely(states []state, margin float64, tilted bool) passage.Motion {
	return passage.Motion{Way: passage.Free, Margin: margin, Tilted: tilted, Follow: func() []space.Pose { return placed(states) }}
}

// leans are the angles at which the body's length leans in a door if it goes
// through along its curve.
func leans(b *passage.Body, c Car) []float64 {
	_, _, w, h := c.opening()
	m := b.Middle()
	if len(m) == 0 {
		return nil
	}
	thick := b.ClearHeight(m[len(m)/2], 1e-9) + 2*b.Wrap()
	f := opening.RectangleInRectangle(2*(b.Half()+b.Wrap()), thick, w, h)
	if f.Angle == 0 || f.Margin < 0 {
		return nil
	}
	a := f.Angle
	if h > w {
		a = math.Pi/2 - a
	}
	return []float64{a, -a, math.Pi + a, math.Pi - a}
}

// parked moves a push through an opening to a place in a car, and ends it in the
// middle of its length.
func parked(b *passage.Body, poses []space.Pose, y, z, length float64) []space.Pose {
	last := &poses[len(poses)-1]
	last.At.X = length/2 - b.MiddleAlong(last.Turn[0])
	for i := range poses {
		poses[i].At.Y += y
		poses[i].At.Z += z
	}
	return poses
}

// none is less than any margin.
var none = math.Inf(-1)

// Package carrying is the panel's way from the shop to the room, leg by leg:
// whether it passes and by which motion, or what proves that none exists, and
// the sizes between which nothing is known.
//
// Lengths are in m. A margin is the clearance left on every side of the wrapped
// panel; below nothing, what is missing on every side.
package carrying

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/layout"
	"dryfit/spec/record"
)

// Leg is one leg of the route.
type Leg struct {
	layout.Leg
	Way record.Value[Way]
}

// Way is what is known of a leg.
type Way struct {
	Outcome passage.Outcome
	// Motion is the best one found, in words; Margin is its own. Of a leg that
	// is not passed it is the plain way that comes nearest.
	Motion string
	Margin float64
	// Depth is the free depth that the motion with the least of it needs before
	// a door and beyond it, in the wrap; Side is the free width beside the door
	// that this motion takes to one side, 0 where it takes none.
	Depth, Side float64
	// Tilted says that the panel is neither level nor upright on the way; then
	// Length and Chord are how far these come off level, in rad.
	Tilted        bool
	Length, Chord float64
	Bound         passage.Bound // what proves that no motion exists
	Needs         string        // the leg's key without which this is not known, "" where there is none
	Decides       string        // the leg's key that is not stated and may decide it, "" where there is none
	RanOut        bool          // a search ended because its cells were spent
	Bare          bool          // the panel without its wrap passes
	// Unfollowed says that a part of the way is not followed: from a stair's slope
	// to the level.
	Unfollowed bool
	// Climbs says that a stair is followed as one motion. Margin is then what this
	// leaves at least: no more than 50mm is looked for.
	Climbs bool
	Size   Size // of a leg that is not passed
	// Loads is how many trips a vehicle makes, and Load the panels in one.
	Loads, Load int
	pose        func() Pose
	stowed      func() []Pose
}

// Search is how a route is searched.
type Search struct {
	Depth Depth
	// Brief leaves out the sizes with which a leg that is not passed would be, how
	// near the panel comes to passing a door that a bar inside it proves too small,
	// and all poses. It spends less on a leg.
	Brief bool
	// Only is the key of the one leg that is asked for; "" is all.
	Only string
	// Memory is what was decided before, for who reviews a spec many times; nil
	// remembers nothing.
	Memory *Memory
}

// Depth is how much a whole route's searches may spend.
type Depth uint8

// The depths.
const (
	Plain    Depth = iota // what a check spends
	None                  // plain motions and the proofs that cost next to nothing
	Thorough              // ten times the plain one
)

// What the searches of a spec may spend, in the order of its route: cells, and looks at
// poses up a stair.
const (
	cells = 20000
	looks = 650000
)

// briefly is how many cells a brief search may spend on one leg. Of 3,600 random panels and
// legs of all kinds but stairs at least 98 in 100 of those that pass do so with no more.
const briefly = 4000

// budget is what the searches of a whole route may spend.
func (s Search) budget() *passage.Budget {
	switch {
	case s.Depth == None:
		return nil
	case s.Brief:
		return &passage.Budget{Cells: s.times() * cells}
	default:
		return &passage.Budget{Cells: s.times() * cells, Looks: s.times() * looks}
	}
}

// times is how often the search of a depth may spend what a plain one does.
func (s Search) times() int {
	if s.Depth == Thorough {
		return 10
	}
	return 1
}

// leg is what may be spent on one leg of what is left. What it takes is taken from there.
func (s Search) leg(left *passage.Budget, use func(*passage.Budget) Way) Way {
	if left == nil || !s.Brief {
		return use(left)
	}
	given := min(left.Cells, s.times()*briefly)
	part := &passage.Budget{Cells: given}
	way := use(part)
	left.Cells -= given - part.Cells
	return way
}

// panel is the wrapped panel as it is carried.
type panel struct {
	body  *passage.Body
	wrap  float64
	brief bool
}

// Of is every leg of the route that is asked for, in order: those that the
// standards give come before the spec's.
func Of(c *layout.Ceiling, search Search) []Leg {
	route := c.Route.Get()
	if i := slices.IndexFunc(route, func(l layout.Leg) bool { return l.Prefix == search.Only }); i >= 0 {
		route = route[i : i+1]
	}
	if len(route) == 0 {
		return nil
	}
	ways := layout.Derive(c, func() []Way { return all(c, route, search) })
	out := make([]Leg, 0, len(route))
	for i, l := range route {
		out = append(out, Leg{Leg: l, Way: layout.Derive(c, func() Way { return ways.Get()[i] })})
	}
	return out
}

// all decides the legs in their order, since they share what may be spent. Legs
// of the same sizes are decided once.
func all(c *layout.Ceiling, route []layout.Leg, search Search) []Way {
	p, known := newPanel(c, search.Memory)
	budget := search.budget()
	p.brief = search.Brief
	out := make([]Way, 0, len(route))
	for _, l := range route {
		kind := KindOf(l.Kind.Get())
		key := remembered{sizesOf(l), search.Depth, search.Brief}
		way := search.leg(budget, func(left *passage.Budget) Way {
			return known.recall(key, left, func() Way { return kind.way(p, l, left) })
		})
		if kind.Loads {
			p.load(c, &way, l.Inside)
		}
		out = append(out, way)
	}
	return out
}

// newPanel is the ceiling's panel, with what a memory knows of one like it; nil is an
// empty memory.
func newPanel(c *layout.Ceiling, memory *Memory) (*panel, known) {
	if memory == nil {
		memory = NewMemory()
	}
	outline, long := c.Panel.Outline.Get(), c.Panel.EndLength.Get()
	// What the outline's chords cut off the curve counts as wrap.
	step := c.Panel.Arc.Get() / layout.BandSteps
	wrap := c.Wrap.Allowance.Get() + step*step/(8*c.Vault.TightestRadius.Get())
	section := make([]space.Point, 0, len(outline))
	for _, q := range outline {
		section = append(section, space.Point{X: q.Y, Y: q.Z})
	}
	known := memory.of(markOf(section, long, wrap))
	body := known.all.bodyOr(func() *passage.Body { return passage.NewBody(section, long, wrap) })
	return &panel{wrap: wrap, body: body}, known
}

// way is what a decision means for a leg that these walls make.
func (p *panel) way(w walls, d passage.Decision, left *passage.Budget) Way {
	out := p.unsized(w, d)
	if d.Outcome != passage.Passes {
		out.Bare = p.bare(w)
		if !p.brief {
			out.Size = p.size(w, d, left)
		}
	}
	return out
}

// unsized is such a way without what would pass.
func (p *panel) unsized(w walls, d passage.Decision) Way {
	m := d.Motion
	out := Way{
		Outcome: d.Outcome, Motion: w.words(m), Margin: m.Margin, Depth: m.Depth, Side: m.Side,
		Tilted: m.Tilted, Bound: d.Bound, RanOut: d.RanOut, Climbs: m.Climbs,
	}
	for _, o := range d.Others {
		if o.Depth < out.Depth {
			out.Depth, out.Side = o.Depth, o.Side
		}
	}
	if m.Tilted {
		out.Length, out.Chord = mostTilt(m.Poses())
	}
	if !p.brief {
		out.pose = func() Pose { return p.tightest(w, m) }
	}
	return out
}

// bare reports whether the panel without its wrap passes.
func (p *panel) bare(w walls) bool {
	b := p.body.Wrapped(0)
	if w.barredFirst && w.barred(b, w.sizes()) {
		return false
	}
	return w.decide(b, w.sizes(), nil).Outcome == passage.Passes
}

// mostTilt is how far the panel's length and its chord come off level on the
// way, in rad.
func mostTilt(poses []space.Pose) (length, chord float64) {
	for _, q := range poses {
		l, c := q.Turn.Tilt()
		length, chord = max(length, l), max(chord, c)
	}
	return length, chord
}

// sizes are all that a leg's outcome hangs on, but for the panel.
type sizes struct {
	of                  [21]float64
	around              [3]float64 // free depth before it and after, and width beside
	turn, between, ends string
}

// absent stands for a size that a leg does not state.
const absent = -1

func sizesOf(l layout.Leg) (out sizes) {
	kind := KindOf(l.Kind.Get())
	out.of[0] = float64(kind.index)
	if kind.Deep {
		out.around = [3]float64{given(l.Before, absent), given(l.After, absent), given(l.Beside, absent)}
	}
	for i, n := range []layout.Number{
		l.Width, l.Height, l.Length, l.Wall, l.Onward, l.Headroom, l.Rise, l.Going,
		l.Landing.Length, l.Landing.Width, l.Door.Width, l.Door.Height,
		l.Inside.Length, l.Inside.Width, l.Inside.Height, l.DoorLeft, l.DoorSill, l.LandingLeft,
	} {
		out.of[i+1] = given(n, absent)
	}
	out.of[len(out.of)-1] = given(l.Risers, absent)
	if l.Turn.Given() {
		out.turn = l.Turn.Get()
	}
	if l.Between.Given() {
		out.between = l.Between.Get()
	}
	if l.Ends.Given() {
		out.ends = l.Ends.Get()
	}
	return out
}

// given is a size, or what is taken where there is none.
func given[T int | float64](n record.Value[T], otherwise float64) float64 {
	if !n.Given() {
		return otherwise
	}
	return float64(n.Get())
}

// height is a height, without an end where none is stated.
func height(n layout.Number) float64 { return given(n, math.Inf(1)) }

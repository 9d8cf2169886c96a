package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/model/layout"
)

// walls are what a leg is made of.
type walls struct {
	dims []dim
	// decide decides the leg with other sizes in the place of its own.
	decide func(b *passage.Body, sizes []float64, left *passage.Budget) passage.Decision
	// barred is a proof that no motion exists, which costs next to nothing; nil
	// where there is none.
	barred func(b *passage.Body, sizes []float64) bool
	// barredFirst says that what is barred is decided by that, whatever the plain
	// motions come to.
	barredFirst bool
	// threaded is the motion along the panel's curve, whatever its margin; nil
	// where there is none.
	threaded func(b *passage.Body, left *passage.Budget) (passage.Motion, bool)
	words    func(passage.Motion) string
	view     view
}

// dim is a clear size of a leg.
type dim struct {
	key  []any // within the leg
	name string
	is   float64
}

func (w walls) sizes() []float64 {
	out := make([]float64, len(w.dims))
	for i, d := range w.dims {
		out[i] = d.is
	}
	return out
}

func doorWalls(l layout.Leg) walls {
	door := func(s []float64) opening.Door {
		return opening.Door{Width: s[0], Height: s[1], Wall: given(l.Wall, 0), Floor: true}
	}
	w := walls{
		dims: []dim{{[]any{"width"}, "width", l.Width.Get()}, {[]any{"height"}, "height", height(l.Height)}},
		decide: func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
			return opening.Through(b, door(s), left)
		},
		barred:      func(b *passage.Body, s []float64) bool { return opening.Barred(b, s[0], s[1]) },
		barredFirst: true,
		words:       openingWords,
	}
	w.threaded = func(b *passage.Body, left *passage.Budget) (passage.Motion, bool) {
		return opening.Thread(b, door(w.sizes()), left)
	}
	w.view = throughWall(l.Width.Get(), height(l.Height), given(l.Wall, 0))
	return w
}

// door is an opening. Of one whose wall's depth is not given what passes straight
// passes in any wall, and what can't pass in none can't in any; between them the
// depth is needed.
func (p *panel) door(l layout.Leg, left *passage.Budget) Way {
	w := doorWalls(l)
	if l.Wall.Given() {
		return p.roomier(l, w, p.decided(w, left), left)
	}
	straight := tube(l.Width.Get(), height(l.Height), 0, []any{"height"})
	if d := straight.decide(p.body, straight.sizes(), left); d.Outcome == passage.Passes {
		return p.way(straight, d, left)
	}
	way := p.decided(w, left)
	if way.Outcome != passage.Cannot {
		way.Needs = "wall"
	}
	return way
}

func tube(width, high, length float64, highKey []any) walls {
	return walls{
		dims: []dim{{[]any{"width"}, "width", width}, {highKey, "height", high}},
		decide: func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
			return opening.Along(b, opening.Corridor{Width: s[0], Height: s[1], Length: length}, left)
		},
		words: openingWords,
		view:  throughWall(width, high, 0),
	}
}

func cornerWalls(width, onward, high layout.Number, onwardKey, highKey []any) walls {
	return walls{
		dims: []dim{{[]any{"width"}, "width", width.Get()}, {onwardKey, "width going on", onward.Get()}, {highKey, "height", height(high)}},
		decide: func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
			return corner.Around(b, corner.Corner{Width: s[0], Onward: s[1], Height: s[2]}, left)
		},
		words: cornerWords,
		view:  aroundCorner(width.Get(), onward.Get()),
	}
}

func carWalls(l layout.Leg) walls {
	in := l.Inside
	within := func(s []float64) car.Car {
		c := car.Car{Length: s[2], Width: s[3], Height: s[4], DoorWidth: s[0], DoorHeight: s[1]}
		c.Left, c.Sill = given(l.DoorLeft, (c.Width-c.DoorWidth)/2), given(l.DoorSill, 0)
		return c
	}
	return walls{
		dims: []dim{
			{[]any{"door", "width"}, "door's width", l.Door.Width.Get()},
			{[]any{"door", "height"}, "door's height", height(l.Door.Height)},
			{[]any{"inside", "length"}, "inside length", in.Length.Get()},
			{[]any{"inside", "width"}, "inside width", in.Width.Get()},
			{[]any{"inside", "height"}, "inside height", height(in.Height)},
		},
		decide: func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
			return car.Into(b, within(s), left)
		},
		barred: func(b *passage.Body, s []float64) bool { return opening.Barred(b, s[0], s[1]) },
		words:  carWords,
		view:   onFloor(in.Length.Get(), in.Width.Get()),
	}
}

// roomier is a way through a door, or one along the panel's own curve with what
// that takes beside the wall, where the first takes more than there is.
func (p *panel) roomier(l layout.Leg, w walls, way Way, left *passage.Budget) Way {
	free := func(depth, side float64) bool {
		within := func(n layout.Number, takes float64) bool { return !n.Given() || n.Get() >= takes }
		return within(l.Before, depth) && within(l.After, depth) && within(l.Beside, side)
	}
	if way.Outcome != passage.Passes || way.Tilted || free(way.Depth, way.Side) {
		return way
	}
	if m, ok := w.threaded(p.body, left); ok && m.Margin >= 0 && !m.Tilted && free(m.Depth, m.Side) {
		way.Depth, way.Side = m.Depth, m.Side
	}
	return way
}

func (p *panel) decided(w walls, left *passage.Budget) Way {
	if p.brief && w.barredFirst && w.barred(p.body, w.sizes()) {
		// Nobody asks a brief search how near the motions come.
		return Way{Outcome: passage.Cannot, Bound: passage.BarInside, Bare: p.bare(w)}
	}
	return p.way(w, w.decide(p.body, w.sizes(), left), left)
}

func openingWords(m passage.Motion) string {
	switch m.Way {
	case passage.AlongAxis:
		return "carried along its axis, turned in its own plane"
	case passage.AlongChord:
		return "carried along its chord, on edge"
	case passage.AlongRise:
		return "carried flat on, its back to the opening"
	case passage.AlongOwnChord:
		return "carried along its own chord"
	case passage.Threaded3:
		if first, ok := m.First(); ok && math.Abs(first[2].X) > math.Sqrt2/2 {
			return "threaded along its own curve, its axis upright"
		}
		return "threaded along its own curve, its axis level"
	default:
		return "tilted"
	}
}

func cornerWords(m passage.Motion) string {
	switch m.Way {
	case passage.AsHung:
		return "as it hangs, in plan its width by its length"
	case passage.OnFoot:
		return "standing on a foot"
	case passage.OnOwnChord:
		return "with its own chord level"
	case passage.OnEdge:
		return "on edge, its axis upright, the arch around the corner"
	default:
		return "tilted"
	}
}

func carWords(m passage.Motion) string {
	if m.Way == passage.Free {
		return "turned and tilted on its way in"
	}
	return openingWords(m)
}

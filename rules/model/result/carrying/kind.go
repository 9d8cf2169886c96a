package carrying

import (
	"slices"
	"strconv"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// Kind is all that is known of one kind of leg but its rule, which the family of
// transit has. Every part but the marks is needed.
type Kind struct {
	Kind spec.LegKind
	// Place is the key of the clear width, within the leg.
	Place []any
	// Deep marks a leg whose motion takes free depth before it and beyond, Loads
	// one that takes panels stacked and in several trips, and Rated one that may
	// state what it carries.
	Deep, Loads, Rated bool

	index int
	way   func(*panel, layout.Leg, *passage.Budget) Way
}

// kinds are those of all kinds of leg.
var kinds = map[spec.LegKind]Kind{
	spec.Vehicle: {Place: []any{"door", "width"}, Loads: true, way: func(p *panel, l layout.Leg, left *passage.Budget) Way {
		return p.decided(carWalls(l), left)
	}},
	spec.Door: {Place: []any{"width"}, Deep: true, way: (*panel).door},
	spec.Corridor: {Place: []any{"width"}, way: func(p *panel, l layout.Leg, left *passage.Budget) Way {
		return p.decided(tube(l.Width.Get(), height(l.Height), given(l.Length, 0), []any{"height"}), left)
	}},
	spec.Corner: {Place: []any{"width"}, way: func(p *panel, l layout.Leg, left *passage.Budget) Way {
		return p.decided(cornerWalls(l.Width, l.Onward, l.Height, []any{"onward"}, []any{"height"}), left)
	}},
	spec.Stair: {Place: []any{"width"}, way: (*panel).stair},
	spec.Elevator: {Place: []any{"door", "width"}, Rated: true, way: func(p *panel, l layout.Leg, left *passage.Budget) Way {
		return p.decided(carWalls(l), left)
	}},
}

// Kinds are those of all kinds of leg, in the order of spec.LegKinds.
func Kinds() []Kind {
	var out []Kind
	for _, k := range spec.LegKinds() {
		out = append(out, KindOf(k))
	}
	return out
}

// KindOf is that of a leg's kind. A kind without one is a mistake in this program
// and panics.
func KindOf(kind spec.LegKind) Kind {
	k, ok := kinds[kind]
	if !ok {
		panic("carrying: nothing is known of legs of kind " + string(kind))
	}
	k.Kind, k.index = kind, slices.Index(spec.LegKinds(), kind)
	return k
}

// Key is the key of the leg's clear width.
func (l Leg) Key() string { return l.At(KindOf(l.Kind.Get()).Place...) }

// At is a key within the leg.
func (l Leg) At(key ...any) string { return spec.Key(append([]any{"route", l.Index}, key...)...) }

// LegOf is the index in the route of the leg that a key lies in, and 0 where it lies
// in none.
func LegOf(key string) int {
	parts := spec.SplitKey(key)
	if len(parts) < 2 || parts[0] != "route" {
		return 0
	}
	n, err := strconv.Atoi(parts[1])
	if err != nil {
		return 0
	}
	return n
}

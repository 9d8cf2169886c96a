package carrying

import (
	"dryfit/rules/layout"
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

	way func(*panel, layout.Leg) Way
}

// Kinds are those of all kinds of leg, in the order of spec.LegKinds.
func Kinds() []Kind {
	return []Kind{
		{
			Kind: spec.Vehicle, Place: []any{"door", "width"}, Loads: true,
			way: func(p *panel, l layout.Leg) Way {
				way := p.through(p.openings(l.Door.Width.Get(), l.Door.Height.Get()), nil)
				p.load(&way, l.Inside)
				return way
			},
		},
		{
			Kind: spec.Door, Place: []any{"width"}, Deep: true,
			way: func(p *panel, l layout.Leg) Way {
				return p.through(p.openings(l.Width.Get(), l.Height.Get()), p.threads(l))
			},
		},
		{
			Kind: spec.Corridor, Place: []any{"width"},
			way: func(p *panel, l layout.Leg) Way {
				return p.through(p.openings(l.Width.Get(), l.Height.Get()), nil)
			},
		},
		{
			Kind: spec.Corner, Place: []any{"width"},
			way: func(p *panel, l layout.Leg) Way {
				return p.turn(l.Width.Get(), l.Onward.Get(), l.Height.Get())
			},
		},
		{Kind: spec.Stair, Place: []any{"width"}, way: (*panel).stair},
		{Kind: spec.Elevator, Place: []any{"door", "width"}, Rated: true, way: (*panel).elevator},
	}
}

// KindOf is that of a leg's kind. A kind without one is a mistake in this program
// and panics.
func KindOf(kind spec.LegKind) Kind {
	for _, k := range Kinds() {
		if k.Kind == kind {
			return k
		}
	}
	panic("carrying: nothing is known of legs of kind " + string(kind))
}

// Key is the key of the leg's clear width.
func (l Leg) Key() string {
	return spec.Key(append([]any{"route", l.Index}, KindOf(l.Kind.Get()).Place...)...)
}

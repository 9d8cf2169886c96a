package carrying

import (
	"regexp"
	"slices"
	"strings"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
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

// At is a key within the leg, with the leg's own prefix.
func (l Leg) At(key ...any) string { return l.Prefix + "." + spec.Key(key...) }

// Own reports whether the standards give the leg, and not the spec.
func (l Leg) Own() bool { return standards.OwnLeg(l.Prefix) }

// Number is the leg's in its route, from 1: "2", or "default.1" of one that the
// standards give.
func (l Leg) Number() string { return strings.Replace(l.Prefix, "route.", "", 1) }

// legKey is the key of a leg at the beginning of one that lies in it.
var legKey = regexp.MustCompile(`^(default\.)?route\.[0-9]+\b`)

// LegOf is the key of the leg that a key lies in, and "" where it lies in none.
func LegOf(key string) string { return legKey.FindString(key) }

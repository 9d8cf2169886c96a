package layout

import (
	"dryfit/rules/kernel/curve"
	"dryfit/spec"
)

// Shape is what is known of one profile: which dimensions it takes, and how its
// curve is made of them. How its figures follow is in package calcs.
type Shape struct {
	Profile spec.Profile
	// Takes are the keys of the dimensions that a spec may state beside the
	// span.
	Takes []string
	// Follows are the dimensions that follow from others where a spec gives more
	// than the profile needs.
	Follows []Follows
	// ChoosesRise reports whether the rise is for the designer to say.
	ChoosesRise bool
	// OneArc marks an intrados that is one arc of a circle.
	OneArc bool

	make   func(dimensions) made
	kinked bool
}

// Kinked reports whether the intrados has a corner at its crown.
func (s Shape) Kinked() bool { return s.kinked }

// Follows is a dimension that follows from others, which must be stated beside
// it for that.
type Follows struct {
	Key    string
	From   []string
	Beside string
}

const (
	riseKey, radiusKey  = "vault.rise", "vault.radius"
	crownKey, haunchKey = "vault.crown_radius", "vault.haunch_radius"
	spanKey             = "vault.span"
)

// Shapes are those of all profiles, in the order of spec.Profiles.
func Shapes() []Shape {
	return []Shape{flat, segmental, semicircular, threeCentred, pointed, elliptical}
}

// ShapeOf is that of a profile. A profile without one is a mistake in this
// program and panics.
func ShapeOf(p spec.Profile) Shape {
	for _, s := range Shapes() {
		if s.Profile == p {
			return s
		}
	}
	panic("layout: no shape of profile " + string(p))
}

// Shape is that of the vault.
func (v Vault) Shape() Shape { return ShapeOf(v.Profile.Get()) }

var flat = Shape{
	Profile: spec.Flat, Takes: []string{riseKey},
	make: func(d dimensions) (m made) {
		m.curve, m.err = curve.Flat(d.span.Get())
		return m
	},
}

var segmental = Shape{
	Profile: spec.Segmental, Takes: []string{riseKey, radiusKey},
	Follows:     []Follows{{radiusKey, []string{spanKey, riseKey}, riseKey}},
	ChoosesRise: true, OneArc: true,
	make: func(d dimensions) (m made) {
		if !d.rise.Given() {
			return made{missing: riseKey}
		}
		m.curve, m.err = curve.Segmental(d.span.Get(), d.rise.Get())
		return m
	},
}

var semicircular = Shape{
	Profile: spec.Semicircular, Takes: []string{riseKey, radiusKey},
	Follows: []Follows{{riseKey, []string{spanKey}, spanKey}, {radiusKey, []string{spanKey}, spanKey}},
	OneArc:  true,
	make: func(d dimensions) (m made) {
		m.curve, m.err = curve.Semicircular(d.span.Get())
		return m
	},
}

var threeCentred = Shape{
	Profile: spec.ThreeCentred, Takes: []string{riseKey, crownKey, haunchKey},
	Follows: []Follows{
		{haunchKey, []string{spanKey, riseKey, crownKey}, crownKey},
		{crownKey, []string{haunchKey}, haunchKey},
	},
	ChoosesRise: true,
	make: func(d dimensions) (m made) {
		switch {
		case !d.rise.Given():
			return made{missing: riseKey}
		case d.crown.Given():
			m.curve, m.err = curve.ThreeCentredByCrown(d.span.Get(), d.rise.Get(), d.crown.Get())
		case d.haunch.Given():
			m.curve, m.err = curve.ThreeCentredByHaunch(d.span.Get(), d.rise.Get(), d.haunch.Get())
		default:
			return made{missing: crownKey}
		}
		return m
	},
}

var pointed = Shape{
	Profile: spec.Pointed, Takes: []string{riseKey, radiusKey},
	Follows: []Follows{
		{radiusKey, []string{spanKey, riseKey}, riseKey},
		{riseKey, []string{radiusKey}, radiusKey},
	},
	ChoosesRise: true,
	make: func(d dimensions) (m made) {
		switch {
		case d.rise.Given():
			m.curve, m.err = curve.PointedByRise(d.span.Get(), d.rise.Get())
		case d.radius.Given():
			m.curve, m.err = curve.PointedByRadius(d.span.Get(), d.radius.Get())
		default:
			return made{missing: riseKey}
		}
		return m
	},
	kinked: true,
}

var elliptical = Shape{
	Profile: spec.Elliptical, Takes: []string{riseKey}, ChoosesRise: true,
	make: func(d dimensions) (m made) {
		if !d.rise.Given() {
			return made{missing: riseKey}
		}
		m.curve, m.err = curve.Elliptical(d.span.Get(), d.rise.Get())
		return m
	},
}

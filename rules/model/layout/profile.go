package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/figure"
	"dryfit/spec"
)

// Shape is all that is known of one profile: which dimensions it takes, how its
// curve is made of them, and how its figures follow. Every part but Follows,
// haunch, crown and kink is needed.
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

	make func(dimensions) made
	// radius, slope, arc and tightest fill in how the figures follow.
	radius, slope, arc, tightest func(*Ceiling, *figure.Figure)
	// haunch and crown add the figures that only this profile has, before the
	// radius and before the slope.
	haunch, crown func(*Ceiling, *Lines)
	// kink fills in how the slope at a corner at the crown follows; nil without
	// one.
	kink func(*Ceiling, *figure.Figure)
}

// Kinked reports whether the intrados has a corner at its crown.
func (s Shape) Kinked() bool { return s.kink != nil }

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
	radius: by("a flat ceiling has none"),
	slope:  by("level"),
	arc: func(c *Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "s", []figure.Term{Term("s", Metres(c.Vault.Span))}
	},
	tightest: by("the least of the radii above"),
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
	radius: arcRadius, slope: arcSlope, arc: arcLength, tightest: by("the least of the radii above"),
}

var semicircular = Shape{
	Profile: spec.Semicircular, Takes: []string{riseKey, radiusKey},
	Follows: []Follows{{riseKey, []string{spanKey}, spanKey}, {radiusKey, []string{spanKey}, spanKey}},
	OneArc:  true,
	make: func(d dimensions) (m made) {
		m.curve, m.err = curve.Semicircular(d.span.Get())
		return m
	},
	radius: arcRadius, slope: arcSlope, arc: arcLength, tightest: by("the least of the radii above"),
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
	haunch: func(c *Ceiling, l *Lines) {
		l.Add("vault.haunch-radius", "r", "radius of the haunches", func(f *figure.Figure) figure.Measure {
			f.Method = "given, or from the rise and the crown radius: (2·R·h − s²/4 − h²)/(2·(R − s/2))"
			return Metres(c.haunch())
		})
	},
	radius: func(c *Ceiling, f *figure.Figure) {
		f.Formula = "(s^2/4 + h^2 - s*r) / (2*(h - r))"
		f.Terms = []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise)), Term("r", Metres(c.haunch()))}
	},
	crown: func(c *Ceiling, l *Lines) {
		l.Add("vault.crown-angle", "β", "half the angle of the crown's arc", func(f *figure.Figure) figure.Measure {
			v := c.Vault
			f.Formula = "atan((s/2 - r) / (R - h))"
			f.Terms = []figure.Term{Term("s", Metres(v.Span)), Term("r", Metres(c.haunch())), Term("R", Metres(v.Radius)), Term("h", Metres(v.Rise))}
			return Angle(c.crownAngle())
		})
	},
	slope: by("upright"),
	arc: func(c *Ceiling, f *figure.Figure) {
		f.Formula = "2*(R*β + r*(90 - β))*pi/180"
		f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("β", Angle(c.crownAngle())), Term("r", Metres(c.haunch()))}
	},
	tightest: by("the least of the radii above"),
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
	radius: func(c *Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "(h^2 + s^2/4) / s", []figure.Term{Term("h", Metres(c.Vault.Rise)), Term("s", Metres(c.Vault.Span))}
	},
	slope: by("a pointed vault's arcs begin upright"),
	kink: func(c *Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "asin(1 - s/(2*R))", []figure.Term{Term("s", Metres(c.Vault.Span)), Term("R", Metres(c.Vault.Radius))}
	},
	arc: func(c *Ceiling, f *figure.Figure) {
		f.Formula = "2*R*acos(1 - s/(2*R))*pi/180"
		f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("s", Metres(c.Vault.Span))}
	},
	tightest: by("the least of the radii above"),
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
	radius: func(c *Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "(s/2)^2 / h", []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise))}
	},
	slope: by("an ellipse begins upright"),
	arc:   by("half the perimeter of an ellipse, integrated"),
	tightest: func(c *Ceiling, f *figure.Figure) {
		v := c.Vault
		f.Formula = "min(h^2 / (s/2), R)"
		f.Terms = []figure.Term{Term("h", Metres(v.Rise)), Term("s", Metres(v.Span)), Term("R", Metres(v.Radius))}
	},
}

// by is a figure without a closed form, and how it is come by instead.
func by(method string) func(*Ceiling, *figure.Figure) {
	return func(_ *Ceiling, f *figure.Figure) { f.Method = method }
}

func arcRadius(c *Ceiling, f *figure.Figure) {
	f.Formula = "(s^2 + 4*h^2) / (8*h)"
	f.Terms = []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise))}
}

func arcSlope(c *Ceiling, f *figure.Figure) {
	f.Formula = "2*atan(2*h/s)"
	f.Terms = []figure.Term{Term("h", Metres(c.Vault.Rise)), Term("s", Metres(c.Vault.Span))}
}

func arcLength(c *Ceiling, f *figure.Figure) {
	f.Formula = "2*R*φ*pi/180"
	f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("φ", Angle(c.Vault.HalfAngle))}
}

// haunch is the radius of the haunches of a three-centred vault.
func (c *Ceiling) haunch() Number { return c.Number("vault.haunch-radius", c.Vault.TightestRadius.Get) }

// crownAngle is half the angle of the crown's arc of a three-centred vault.
func (c *Ceiling) crownAngle() Number {
	v := c.Vault
	return c.Number("vault.crown-angle", func() float64 {
		return math.Atan2(v.Span.Get()/2-v.TightestRadius.Get(), v.Radius.Get()-v.Rise.Get())
	})
}

// curveLines are the radius, the slope at the springing, the length of the arc
// and its tightest radius, by the profile.
func (c *Ceiling) curveLines(l *Lines) {
	v := c.Vault
	s := v.Shape()
	if s.haunch != nil {
		s.haunch(c, l)
	}
	l.Add("vault.radius", "R", "radius of the intrados at the crown", func(f *figure.Figure) figure.Measure {
		v.Shape().radius(c, f)
		return Metres(v.Radius)
	})
	if s.crown != nil {
		s.crown(c, l)
	}
	l.Add("vault.half-angle", "φ", "slope of the intrados at the springing", func(f *figure.Figure) figure.Measure {
		v.Shape().slope(c, f)
		return Angle(v.HalfAngle)
	})
	if s.kink != nil {
		l.Add("vault.crown-slope", "κ", "slope of each arc at the crown, half of the angle between them", func(f *figure.Figure) figure.Measure {
			v.Shape().kink(c, f)
			return Angle(v.Kink)
		})
	}
	c.intradosLines(l)
}

func (c *Ceiling) intradosLines(l *Lines) {
	v := c.Vault
	l.Add("vault.arc-length", "A", "length of the intrados", func(f *figure.Figure) figure.Measure {
		v.Shape().arc(c, f)
		return Metres(v.Arc)
	})
	l.Add("vault.tightest-radius", "R_t", "tightest radius of the intrados", func(f *figure.Figure) figure.Measure {
		v.Shape().tightest(c, f)
		return Metres(v.TightestRadius)
	})
}

package calcs

import (
	"math"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// by is a figure without a closed form, and how it is come by instead.
func by(method string) func(*layout.Ceiling, *figure.Figure) {
	return func(_ *layout.Ceiling, f *figure.Figure) { f.Method = method }
}

func arcRadius(c *layout.Ceiling, f *figure.Figure) {
	f.Formula = "(s^2 + 4*h^2) / (8*h)"
	f.Terms = []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise))}
}

func arcSlope(c *layout.Ceiling, f *figure.Figure) {
	f.Formula = "2*atan(2*h/s)"
	f.Terms = []figure.Term{Term("h", Metres(c.Vault.Rise)), Term("s", Metres(c.Vault.Span))}
}

func arcLength(c *layout.Ceiling, f *figure.Figure) {
	f.Formula = "2*R*φ*pi/180"
	f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("φ", Angle(c.Vault.HalfAngle))}
}

// haunch is the radius of the haunches of a three-centred vault.
func haunch(c *layout.Ceiling) layout.Number {
	return c.Number("vault.haunch-radius", c.Vault.TightestRadius.Get)
}

// crownAngle is half the angle of the crown's arc of a three-centred vault.
func crownAngle(c *layout.Ceiling) layout.Number {
	v := c.Vault
	return c.Number("vault.crown-angle", func() float64 {
		return math.Atan2(v.Span.Get()/2-v.TightestRadius.Get(), v.Radius.Get()-v.Rise.Get())
	})
}

// curveLines are the radius, the slope at the springing, the length of the arc
// and its tightest radius, by the profile.
func curveLines(c *layout.Ceiling, l *Lines) {
	v := c.Vault
	of := formulasOf(v.Profile.Get())
	if of.haunch != nil {
		of.haunch(c, l)
	}
	l.Add("vault.radius", "R", "radius of the intrados at the crown", func(f *figure.Figure) figure.Measure {
		formulasOf(v.Profile.Get()).radius(c, f)
		return Metres(v.Radius)
	})
	if of.crown != nil {
		of.crown(c, l)
	}
	l.Add("vault.half-angle", "φ", "slope of the intrados at the springing", func(f *figure.Figure) figure.Measure {
		formulasOf(v.Profile.Get()).slope(c, f)
		return Angle(v.HalfAngle)
	})
	if of.kink != nil {
		l.Add("vault.crown-slope", "κ", "slope of each arc at the crown, half of the angle between them", func(f *figure.Figure) figure.Measure {
			formulasOf(v.Profile.Get()).kink(c, f)
			return Angle(v.Kink)
		})
	}
	intradosLines(c, l)
}

func intradosLines(c *layout.Ceiling, l *Lines) {
	v := c.Vault
	l.Add("vault.arc-length", "A", "length of the intrados", func(f *figure.Figure) figure.Measure {
		formulasOf(v.Profile.Get()).arc(c, f)
		return Metres(v.Arc)
	})
	l.Add("vault.tightest-radius", "R_t", "tightest radius of the intrados", func(f *figure.Figure) figure.Measure {
		formulasOf(v.Profile.Get()).tightest(c, f)
		return Metres(v.TightestRadius)
	})
}

// formulas are how the figures of a profile's curve follow. Every part but haunch,
// crown and kink is needed.
type formulas struct {
	// radius, slope, arc and tightest fill in how the figures follow.
	radius, slope, arc, tightest func(*layout.Ceiling, *figure.Figure)
	// haunch and crown add the figures that only this profile has, before the
	// radius and before the slope.
	haunch, crown func(*layout.Ceiling, *Lines)
	// kink fills in how the slope at a corner at the crown follows; nil without
	// one.
	kink func(*layout.Ceiling, *figure.Figure)
}

// formulasOf are those of a profile; none of one that is unknown.
func formulasOf(p spec.Profile) formulas {
	switch p {
	case spec.Flat:
		return flatFormulas
	case spec.Segmental, spec.Semicircular:
		return arcFormulas
	case spec.ThreeCentred:
		return threeCentredFormulas
	case spec.Pointed:
		return pointedFormulas
	case spec.Elliptical:
		return ellipticalFormulas
	}
	return formulas{}
}

var flatFormulas = formulas{
	radius: by("a flat ceiling has none"),
	slope:  by("level"),
	arc: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "s", []figure.Term{Term("s", Metres(c.Vault.Span))}
	},
	tightest: by("the least of the radii above"),
}

var arcFormulas = formulas{
	radius: arcRadius, slope: arcSlope, arc: arcLength, tightest: by("the least of the radii above"),
}

var threeCentredFormulas = formulas{
	haunch: func(c *layout.Ceiling, l *Lines) {
		l.Add("vault.haunch-radius", "r", "radius of the haunches", func(f *figure.Figure) figure.Measure {
			f.Method = "given, or from the rise and the crown radius: (2·R·h − s²/4 − h²)/(2·(R − s/2))"
			return Metres(haunch(c))
		})
	},
	radius: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula = "(s^2/4 + h^2 - s*r) / (2*(h - r))"
		f.Terms = []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise)), Term("r", Metres(haunch(c)))}
	},
	crown: func(c *layout.Ceiling, l *Lines) {
		l.Add("vault.crown-angle", "β", "half the angle of the crown's arc", func(f *figure.Figure) figure.Measure {
			v := c.Vault
			f.Formula = "atan((s/2 - r) / (R - h))"
			f.Terms = []figure.Term{Term("s", Metres(v.Span)), Term("r", Metres(haunch(c))), Term("R", Metres(v.Radius)), Term("h", Metres(v.Rise))}
			return Angle(crownAngle(c))
		})
	},
	slope: by("upright"),
	arc: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula = "2*(R*β + r*(90 - β))*pi/180"
		f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("β", Angle(crownAngle(c))), Term("r", Metres(haunch(c)))}
	},
	tightest: by("the least of the radii above"),
}

var pointedFormulas = formulas{
	radius: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "(h^2 + s^2/4) / s", []figure.Term{Term("h", Metres(c.Vault.Rise)), Term("s", Metres(c.Vault.Span))}
	},
	slope: by("the arcs of a pointed vault are vertical at the springing"),
	kink: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "asin(1 - s/(2*R))", []figure.Term{Term("s", Metres(c.Vault.Span)), Term("R", Metres(c.Vault.Radius))}
	},
	arc: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula = "2*R*acos(1 - s/(2*R))*pi/180"
		f.Terms = []figure.Term{Term("R", Metres(c.Vault.Radius)), Term("s", Metres(c.Vault.Span))}
	},
	tightest: by("the least of the radii above"),
}

var ellipticalFormulas = formulas{
	radius: func(c *layout.Ceiling, f *figure.Figure) {
		f.Formula, f.Terms = "(s/2)^2 / h", []figure.Term{Term("s", Metres(c.Vault.Span)), Term("h", Metres(c.Vault.Rise))}
	},
	slope: by("an ellipse is vertical at the springing"),
	arc:   by("half the perimeter of an ellipse, integrated"),
	tightest: func(c *layout.Ceiling, f *figure.Figure) {
		v := c.Vault
		f.Formula = "min(h^2 / (s/2), R)"
		f.Terms = []figure.Term{Term("h", Metres(v.Rise)), Term("s", Metres(v.Span)), Term("R", Metres(v.Radius))}
	},
}

package layout

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/rules/kernel/curve"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Vault is the curve and what stands on it.
type Vault struct {
	Profile            record.Value[spec.Profile]
	Span, Rise, Length Number
	Radius             Number // of the crown; +Inf of a flat ceiling
	TightestRadius     Number
	Arc                Number // length of the intrados
	HalfAngle          Number // of the intrados with the horizontal, at the springing
	Thickness          Number // from the intrados to the extrados
	Crown              Number // height of the extrados at the axis, above the springing
	Kink               Number // slope of each side of the intrados at the crown; nothing but of a pointed vault
	Intrados           record.Value[curve.Curve]
	Cut                Word                       // of the feet: "plumb", "radial", "level"
	Width              Number                     // over the feet, as they are cut
	Figure             record.Value[curve.Region] // the section of the whole, up to the extrados
	// Spread is how much wider the arch gets by each unit that its rise falls, its
	// length, its pattern of curvature and the mitre at its crown kept: what a form
	// that is not quite true does to the feet. Nothing of a flat ceiling.
	Spread Number
	Slopes record.Value[[]Slope] // those of HalfSlopes
}

// agreement is how far apart two ways of saying one thing may be: half the
// least that a drawing shows.
const agreement = 0.0005

// feathers is the slope at the springing past which a plumb cut leaves no foot
// to speak of, and the feet are cut level unless the spec says otherwise.
const feathers = 75 * math.Pi / 180

func length(m float64) quantity.Length { return quantity.Length(m) }

// sprintf prints quantities in the units of the spec.
func (c *Ceiling) sprintf(format string, args ...any) string {
	printed := make([]any, len(args))
	for i, a := range args {
		if q, ok := a.(interface{ Value() quantity.Value }); ok {
			a = c.Units.Format(q.Value())
		}
		printed[i] = a
	}
	return fmt.Sprintf(format, printed...)
}

func resolveVault(c *Ceiling) []Fault {
	sp := c.spec.Vault
	d := dimensions{
		profile: stated(c, sp.Profile), span: si(c, sp.Span), rise: si(c, sp.Rise), radius: si(c, sp.Radius),
		crown: si(c, sp.CrownRadius), haunch: si(c, sp.HaunchRadius),
	}
	made := Derive(c, d.make)
	if faults := c.wrongProfile(d, made.Get()); len(faults) > 0 {
		return faults
	}
	c.Vault = Vault{
		Profile: d.profile, Span: d.span, Length: si(c, sp.Length),
		Intrados: Derive(c, func() curve.Curve { return made.Get().curve }),
	}
	c.curveFigures()
	return c.resolveFeet()
}

// curveFigures are those that follow from the curve alone, and from it and the
// thickness.
func (c *Ceiling) curveFigures() {
	v := &c.Vault
	of := func(key string, f func(curve.Curve) float64) Number {
		return named(c, key, func() float64 { return f(v.Intrados.Get()) })
	}
	v.Rise = of("vault.rise", func(in curve.Curve) float64 { return in.At(in.Length() / 2).Z })
	v.Radius = of("vault.radius", func(in curve.Curve) float64 { return inverse(in.Curvature(in.Length() / 2)) })
	v.TightestRadius = of("vault.tightest-radius", curve.Curve.TightestRadius)
	v.Arc = of("vault.arc-length", curve.Curve.Length)
	v.HalfAngle = of("vault.half-angle", curve.Curve.HalfAngle)
	v.Kink = of("vault.crown-slope", func(in curve.Curve) float64 { return in.Kink(in.Length() / 2) })
	v.Slopes = Derive(c, func() []Slope { return v.HalfSlopes() })
	v.Spread = Derive(c, func() float64 { return v.spread() })
	v.Thickness = named(c, "vault.thickness", func() float64 { return max(c.Rib.Depth.Get(), c.Skin.Setback.Get()+c.Skin.Total()) })
	v.Crown = named(c, "vault.crown-height", func() float64 { return v.Behind(v.Arc.Get()/2, v.Thickness.Get()).Z })
}

// resolveFeet decides how the feet are cut.
func (c *Ceiling) resolveFeet() []Fault {
	v := &c.Vault
	v.Cut = c.text(stated(c, c.spec.Springing.Cut), "common practice: plumb, or level if a plumb cut would leave a feather edge", func() string {
		if v.HalfAngle.Get() > feathers {
			return "level"
		}
		return "plumb"
	})
	if v.Cut.Get() == "level" && v.HalfAngle.Get() == 0 {
		return []Fault{{"springing.cut", "a flat ceiling has no springing to cut level; cut it plumb"}}
	}
	v.Figure = Derive(c, func() curve.Region { return v.Band(0, v.Arc.Get(), 0, v.Thickness.Get()) })
	v.Width = named(c, "vault.width", func() float64 {
		low, high := v.Figure.Get().Bounds()
		return high.Y - low.Y
	})
	return nil
}

func inverse(curvature float64) float64 {
	if curvature == 0 {
		return math.Inf(1)
	}
	return 1 / curvature
}

// dimensions are what the spec says of the curve.
type dimensions struct {
	profile                           record.Value[spec.Profile]
	span, rise, radius, crown, haunch Number
}

// others are all but the span.
func (d dimensions) others() []Number { return []Number{d.rise, d.radius, d.crown, d.haunch} }

// made is a curve, or the dimension that it lacks, or why there is none.
type made struct {
	curve   curve.Curve
	missing string
	err     error
}

// wrongProfile says what does not fit in the dimensions of a curve: those that
// its profile has not, those that are missing, and those that say a thing twice
// and do not agree.
func (c *Ceiling) wrongProfile(d dimensions, m made) []Fault {
	profile := d.profile.Get()
	for _, v := range d.others() {
		if v.Given() && !slices.Contains(ShapeOf(profile).Takes, v.Key()) {
			return []Fault{{v.Key(), fmt.Sprintf("a %s vault has no %s of its own", profile, words(v.Key()))}}
		}
	}
	if m.missing != "" {
		return []Fault{{m.missing, fmt.Sprintf("a %s vault needs its %s", profile, words(m.missing))}}
	}
	if m.err != nil {
		return []Fault{c.impossible(d, m.err)}
	}
	middle := m.curve.Length() / 2
	follows := []float64{
		m.curve.At(middle).Z, inverse(m.curve.Curvature(0)), inverse(m.curve.Curvature(middle)), inverse(m.curve.Curvature(0)),
	}
	for i, v := range d.others() {
		if v.Given() && !(math.Abs(v.Get()-follows[i]) <= agreement) {
			said, fits := c.Units.Pair(length(v.Get()).Value(), length(follows[i]).Value())
			return []Fault{{v.Key(), fmt.Sprintf("the %s is given as %s, and %s follows from the rest", words(v.Key()), said, fits)}}
		}
	}
	return nil
}

func words(key string) string {
	switch key {
	case "vault.crown_radius":
		return "crown radius"
	case "vault.haunch_radius":
		return "haunch radius"
	default:
		return strings.TrimPrefix(key, "vault.")
	}
}

// make makes the curve of as much as it needs, and reads no more.
func (d dimensions) make() made { return ShapeOf(d.profile.Get()).make(d) }

// impossible says at its key which values are possible.
func (c *Ceiling) impossible(d dimensions, err error) Fault {
	var e *curve.ImpossibleError
	if !errors.As(err, &e) {
		return Fault{"vault", err.Error()}
	}
	key := map[string]string{
		"span": "vault.span", "rise": "vault.rise", "radius": "vault.radius",
		"crown radius": "vault.crown_radius", "haunch radius": "vault.haunch_radius",
	}[e.Dimension]
	low := c.sprintf("over %v", length(e.Over))
	if e.From {
		low = c.sprintf("from %v", length(e.Over))
	}
	high := ""
	switch {
	case math.IsInf(e.To, 1):
	case e.Below:
		high = c.sprintf(" and under %v", length(e.To))
	default:
		high = c.sprintf(" and up to %v", length(e.To))
	}
	return Fault{key, c.sprintf("a %s of %v is impossible for a %s vault with a span of %v; the possible range is %s%s",
		e.Dimension, length(e.Value), d.profile.Get(), length(d.span.Get()), low, high)}
}

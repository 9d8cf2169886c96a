package layout

import (
	"errors"
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// Vault is the curve and what stands on it.
type Vault struct {
	Span, Rise, Length float64
	Radius             float64 // of the crown; +Inf of a flat ceiling
	TightestRadius     float64
	Arc                float64 // length of the intrados
	HalfAngle          float64 // of the intrados with the horizontal, at the springing
	Thickness          float64 // from the intrados to the extrados
	Intrados, Extrados curve.Curve
	Cut                string  // of the feet: "plumb", "radial", "level"
	Width              float64 // over the feet, as they are cut
	// Spread is how much wider the arch gets by each unit that its rise falls, its
	// length and its pattern of curvature kept: what a form that is not quite true
	// does to the feet. Nothing of a flat ceiling.
	Spread float64
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
	sp := c.Spec.Vault
	intrados, faults := c.profile()
	if len(faults) > 0 {
		return faults
	}
	thickness := max(c.Rib.Depth, c.Skin.Setback+c.Skin.Total())
	extrados, err := intrados.Offset(thickness)
	if err != nil {
		return []Fault{{"vault.profile", err.Error()}} // outward never folds
	}
	crown := intrados.At(intrados.Length() / 2)
	c.Vault = Vault{
		Span: float64(sp.Span), Rise: crown.Z, Length: float64(sp.Length),
		Radius: inverse(intrados.Curvature(intrados.Length() / 2)), TightestRadius: intrados.TightestRadius(),
		Arc: intrados.Length(), HalfAngle: intrados.HalfAngle(), Thickness: thickness,
		Intrados: intrados, Extrados: extrados,
	}
	cut := "plumb"
	if c.Vault.HalfAngle > feathers {
		cut = "level"
	}
	c.Vault.Cut = c.text(c.Spec.Springing.Cut, "springing.cut", cut, "common practice: plumb, or level where plumb would feather the foot")
	if c.Vault.Cut == "level" && c.Vault.HalfAngle == 0 {
		return []Fault{{"springing.cut", "a flat ceiling has no springing to cut level; cut it plumb"}}
	}
	low, high := c.Vault.Band(0, c.Vault.Arc, 0, c.Vault.Thickness).Bounds()
	c.Vault.Width, c.Vault.Spread = high.Y-low.Y, c.Vault.spread()
	return nil
}

// spread works out Spread from a small change of all curvature.
func (v Vault) spread() float64 {
	const steps, e = 256, 1e-4
	if math.IsInf(v.TightestRadius, 1) {
		return 0
	}
	ds := v.Arc / 2 / steps
	wider, lower := 0.0, 0.0
	for i := range steps {
		t := v.Intrados.Tangent(v.Arc/2 - (float64(i)+0.5)*ds)
		slope := math.Atan2(t.Z, t.Y)
		wider += 2 * (math.Cos(slope*(1-e)) - math.Cos(slope)) * ds
		lower += (math.Sin(slope) - math.Sin(slope*(1-e))) * ds
	}
	return wider / lower
}

func inverse(curvature float64) float64 {
	if curvature == 0 {
		return math.Inf(1)
	}
	return 1 / curvature
}

// inputs says which of the optional dimensions a profile takes.
var inputs = map[string][]string{
	"flat":          {"rise"},
	"semicircular":  {"rise", "radius"},
	"segmental":     {"rise", "radius"},
	"elliptical":    {"rise"},
	"pointed":       {"rise", "radius"},
	"three-centred": {"rise", "crown_radius", "haunch_radius"},
}

// profile makes the intrados from as much as it needs, and compares the rest
// with what follows from it.
func (c *Ceiling) profile() (curve.Curve, []Fault) {
	sp := c.Spec.Vault
	given := map[string]*quantity.Length{
		"rise": sp.Rise, "radius": sp.Radius, "crown_radius": sp.CrownRadius, "haunch_radius": sp.HaunchRadius,
	}
	for _, key := range []string{"rise", "radius", "crown_radius", "haunch_radius"} {
		if given[key] != nil && !contains(inputs[sp.Profile], key) {
			return curve.Curve{}, []Fault{{"vault." + key, fmt.Sprintf("a %s vault has no %s of its own", sp.Profile, words(key))}}
		}
	}
	intrados, missing, err := makeProfile(sp.Profile, float64(sp.Span), given)
	if missing != "" {
		return curve.Curve{}, []Fault{{"vault." + missing, fmt.Sprintf("a %s vault needs its %s", sp.Profile, words(missing))}}
	}
	if err != nil {
		return curve.Curve{}, []Fault{c.impossible(err)}
	}
	follows := map[string]float64{
		"rise":          intrados.At(intrados.Length() / 2).Z,
		"radius":        inverse(intrados.Curvature(0)),
		"crown_radius":  inverse(intrados.Curvature(intrados.Length() / 2)),
		"haunch_radius": inverse(intrados.Curvature(0)),
	}
	for _, key := range []string{"rise", "radius", "crown_radius", "haunch_radius"} {
		if g := given[key]; g != nil && !(math.Abs(float64(*g)-follows[key]) <= agreement) {
			said, fits := c.Units.Pair(g.Value(), length(follows[key]).Value())
			return curve.Curve{}, []Fault{{"vault." + key, fmt.Sprintf(
				"the %s is given as %s, and %s follows from the rest", words(key), said, fits)}}
		}
	}
	return intrados, nil
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

func words(key string) string {
	switch key {
	case "crown_radius":
		return "crown radius"
	case "haunch_radius":
		return "haunch radius"
	default:
		return key
	}
}

// makeProfile makes the curve, or names the dimension that is missing.
func makeProfile(profile string, span float64, given map[string]*quantity.Length) (c curve.Curve, missing string, err error) {
	rise, radius := given["rise"], given["radius"]
	switch profile {
	case "flat":
		c, err = curve.Flat(span)
	case "semicircular":
		c, err = curve.Semicircular(span)
	case "pointed":
		switch {
		case rise != nil:
			c, err = curve.PointedByRise(span, float64(*rise))
		case radius != nil:
			c, err = curve.PointedByRadius(span, float64(*radius))
		default:
			missing = "rise"
		}
	case "three-centred":
		crown, haunch := given["crown_radius"], given["haunch_radius"]
		switch {
		case rise == nil:
			missing = "rise"
		case crown != nil:
			c, err = curve.ThreeCentredByCrown(span, float64(*rise), float64(*crown))
		case haunch != nil:
			c, err = curve.ThreeCentredByHaunch(span, float64(*rise), float64(*haunch))
		default:
			missing = "crown_radius"
		}
	default: // segmental, elliptical
		switch {
		case rise == nil:
			missing = "rise"
		case profile == "segmental":
			c, err = curve.Segmental(span, float64(*rise))
		default:
			c, err = curve.Elliptical(span, float64(*rise))
		}
	}
	return c, missing, err
}

// impossible says at its key which values are possible.
func (c *Ceiling) impossible(err error) Fault {
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
	return Fault{key, c.sprintf("a %s of %v is impossible for a %s vault with a span of %v; possible is %s%s",
		e.Dimension, length(e.Value), c.Spec.Vault.Profile, c.Spec.Vault.Span, low, high)}
}

// Package figure is the form of a derived figure: what it is, how it follows
// from others, and the same with the numbers put in, so that a person with a
// pocket calculator can follow it.
package figure

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Figure is one derived figure.
type Figure struct {
	Key     string // stable: "vault.radius"
	Symbol  string // as the formulas of other figures write it
	Name    string
	Subject string // the heading it stands under
	Value   quantity.Value
	Sold    bool // a size that something is sold in
	// Formula gives the value from the terms, in the units that Numbers prints
	// them in: + − · / ^ and brackets, sqrt, sin, cos, tan, asin, acos, atan of
	// degrees, ceil, min, max and pi. Empty where there is no closed form, and
	// Method says how the figure is come by instead.
	Formula string
	Terms   []Term
	Method  string
	// Metres has lengths enter the formula in metres or feet, where they make
	// areas and volumes, and not in millimetres or inches.
	Metres bool
	// Inputs are the keys that were read for the figure: those that its value
	// comes from, and those that chose its formula.
	Inputs record.Set
	// From are those that its value comes from.
	From record.Set
	// Assumed reports whether one of the inputs was assumed.
	Assumed bool
}

// Term is one symbol of a formula.
type Term struct {
	Symbol string
	Measure
}

// Measure is a value with the key that it has and the keys that it comes from.
type Measure struct {
	Key   string // of a figure or of the spec; "" for what has none, as a constant of nature
	Value quantity.Value
	From  record.Set
}

// Printed is the value as a sheet shows it: of a size sold, the fraction of an inch
// that it is.
func (f Figure) Printed(s quantity.System) string {
	if f.Sold && s == quantity.Imperial {
		return s.Limit(f.Value)
	}
	return s.Format(f.Value)
}

// unit is what a figure's numbers are printed in, by system and unit.
type unit struct {
	size, offset float64
	name         string
}

const (
	inch, foot    = quantity.Inch, quantity.Foot
	pound, poundF = quantity.Pound, quantity.PoundForce
)

var metric = map[quantity.Unit]unit{
	quantity.Metre: {1e-3, 0, "mm"}, quantity.Radian: {math.Pi / 180, 0, "deg"}, quantity.Fraction: {0.01, 0, "%"},
}

var imperial = map[quantity.Unit]unit{
	quantity.Metre: {inch, 0, "in"}, quantity.Radian: {math.Pi / 180, 0, "deg"}, quantity.Fraction: {0.01, 0, "%"},
	quantity.Kilogram: {pound, 0, "lb"}, quantity.Newton: {poundF, 0, "lbf"},
	quantity.SquareMetre: {foot * foot, 0, "ft2"}, quantity.CubicMetre: {foot * foot * foot, 0, "ft3"},
	quantity.KilogramPerCubicMetre: {pound / (foot * foot * foot), 0, "lb/ft3"},
	quantity.Celsius:               {5.0 / 9, 32, "F"},
	quantity.NewtonMetre:           {poundF * foot, 0, "lbf.ft"}, quantity.NewtonPerMetre: {poundF / inch, 0, "lbf/in"},
	quantity.NewtonPerKilogram: {poundF / pound, 0, "lbf/lb"},
	quantity.Pascal:            {poundF / (inch * inch), 0, "psi"},
}

func (f Figure) unit(u quantity.Unit, s quantity.System) unit {
	if f.Metres && u == quantity.Metre {
		if s == quantity.Imperial {
			return unit{foot, 0, "ft"}
		}
		return unit{1, 0, "m"}
	}
	table := metric
	if s == quantity.Imperial {
		table = imperial
	}
	if found, ok := table[u]; ok {
		return found
	}
	return unit{1, 0, u.String()}
}

// Digits of the numbers in a worked line, and of its result: the numbers have
// enough that the result's digits come out of them.
const (
	termDigits   = 9
	resultDigits = 6
)

// number prints a value in the worked line's unit.
func (f Figure) number(v quantity.Value, s quantity.System, digits int) string {
	u := f.unit(v.Unit, s)
	x := v.SI/u.size + u.offset
	text := strconv.FormatFloat(quantity.Steady(x), 'g', digits, 64)
	if strings.Contains(text, "e") {
		rounded, err := strconv.ParseFloat(text, 64)
		if err == nil {
			text = strconv.FormatFloat(rounded, 'f', -1, 64)
		}
	}
	return text
}

// Worked is the formula with the numbers put in, and the result with its unit;
// empty where there is no formula.
func (f Figure) Worked(s quantity.System) (arithmetic, result string) {
	if f.Formula == "" || math.IsInf(f.Value.SI, 0) {
		return "", ""
	}
	numbers := map[string]string{}
	for _, t := range f.Terms {
		n := f.number(t.Value, s, termDigits)
		if strings.HasPrefix(n, "-") {
			n = "(" + n + ")"
		}
		numbers[t.Symbol] = n
	}
	u := f.unit(f.Value.Unit, s).name
	if f.Value.Unit == quantity.One {
		u = ""
	}
	return substitute(f.Formula, numbers), f.number(f.Value, s, resultDigits) + u
}

// substitute puts a number in the place of each symbol: a run of letters,
// digits, underscores and marks that begins with a letter.
func substitute(formula string, numbers map[string]string) string {
	var b, word strings.Builder
	flush := func() {
		if w := word.String(); w != "" {
			if n, ok := numbers[w]; ok {
				w = n
			}
			b.WriteString(w)
			word.Reset()
		}
	}
	for _, r := range formula {
		if unicode.IsLetter(r) || r == '_' || word.Len() > 0 && unicode.IsDigit(r) {
			word.WriteRune(r)
			continue
		}
		flush()
		b.WriteRune(r)
	}
	flush()
	return b.String()
}

package schema

import (
	"math"
	"time"

	"dryfit/spec/quantity"
)

// format is one of our own formats of a text.
type format struct {
	unit  quantity.Unit // of a quantity, else zero
	check func(text string) error
	// pattern is a regular expression of the texts, as far as there is one.
	pattern string
	// written says how the text is written. It ends the description of every
	// key of the format, for editors; where the format is told beside the
	// description it is left off.
	written string
}

const (
	aLength     = "A length with its unit: mm, cm, m, ft or in"
	aPercentage = "A percentage, 0% to 100%."
)

var formats = map[string]format{
	"length":        sized(quantity.Metre, positive, aLength+"."),
	"length-zero":   sized(quantity.Metre, notNegative, aLength+"; zero is allowed."),
	"length-signed": sized(quantity.Metre, bound{}, aLength+"; it may be negative."),
	"mass":          sized(quantity.Kilogram, positive, "A mass with its unit: kg, g or lb."),
	"force":         sized(quantity.Newton, positive, "A force with its unit: N, kN or lbf."),
	"stress":        sized(quantity.Pascal, positive, "A stress with its unit: Pa, kPa, MPa, GPa or psi."),
	"density":       sized(quantity.KilogramPerCubicMetre, positive, "A density with its unit: kg/m3 or lb/ft3."),
	"temperature":   sized(quantity.Celsius, aboveZero, "A temperature with its unit: C or F."),
	"angle":         sized(quantity.Radian, bound{}, "An angle with its unit: deg or rad."),
	"bearing":       sized(quantity.Radian, aTurn, "An angle with its unit: deg or rad; from 0deg to less than 360deg."),
	"share":         sized(quantity.Fraction, aShare, aPercentage),
	"humidity":      sized(quantity.Fraction, aShare, aPercentage),
	"hours":         sized(quantity.Hour, notNegative, "A time with its unit: h."),
	"stock":         {check: stock, pattern: quantity.StockPattern, written: "A nominal stock, in quarters of an inch."},
	"date":          {check: date, written: "A date, the year first."},
}

// bound is what a quantity in SI may be, and what is said of one that is not.
type bound struct {
	allowed   quantity.Allowed
	fits      func(float64) bool
	otherwise string
}

var (
	positive    = bound{quantity.Positive, func(v float64) bool { return v > 0 }, "must be greater than zero"}
	notNegative = bound{quantity.NotNegative, func(v float64) bool { return v >= 0 }, "must not be negative"}
	aboveZero   = bound{quantity.Signed, func(v float64) bool { return v > -273.15 }, "is below absolute zero"}
	aShare      = bound{quantity.Percentage, func(v float64) bool { return v >= 0 && v <= 1 }, "must be from 0% to 100%"}
	aTurn       = bound{quantity.Bearing, func(v float64) bool { return v >= 0 && v < 2*math.Pi }, "must be from 0deg to less than 360deg"}
)

// unfit says what a text is not, or may not be, to follow it in a sentence.
type unfit string

// Error is the text itself.
func (e unfit) Error() string { return string(e) }

// greatest is past any load or temperature in SI: it keeps what is worked out
// from a spec finite, as Longest does.
const greatest = 1e12

// Longest is past any room, and Shortest under the thickness of anything that
// is made, in m: no other length is taken, but for nothing where it may be.
const (
	Longest  = 10e3
	Shortest = 1e-6
)

func sized(u quantity.Unit, b bound, written string) format {
	return format{unit: u, written: written, pattern: quantity.Pattern(u, b.allowed), check: func(text string) error {
		v, err := quantity.Parse(u, text)
		switch {
		case err != nil:
			return err
		case !(v.SI < greatest && v.SI > -greatest):
			return unfit("is outside the physical range")
		case u == quantity.Metre && math.Abs(v.SI) > Longest:
			return unfit("is longer than any room: the maximum is 10000m")
		case u == quantity.Metre && v.SI != 0 && math.Abs(v.SI) < Shortest:
			return unfit("is too short: the minimum is 0.001mm")
		case b.fits != nil && !b.fits(v.SI):
			return unfit(b.otherwise)
		default:
			return nil
		}
	}}
}

func stock(text string) error {
	_, err := quantity.Stock(text).Quarters()
	return err
}

func date(text string) error {
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		return unfit("is not a date; write 2027-06-30")
	}
	return nil
}

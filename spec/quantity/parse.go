package quantity

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strings"
)

// maxDigits bounds how many digits a text may have, so that exact arithmetic
// on it stays cheap. It leaves room for all that a float64 prints.
const maxDigits = 40

// longest is how much a message quotes of what stands in a unit's place.
const longest = 24

// suffix is a unit as it is written: num/den of the SI unit, exact.
type suffix struct {
	name     string
	num, den int64
}

// suffixes lists the units that each kind may be written in. The inch, the
// pound and the pound-force are exact by definition: 25.4 mm, 0.45359237 kg,
// and that mass in standard gravity.
var suffixes = map[Unit][]suffix{
	One:      {{"", 1, 1}},
	Metre:    {{"mm", 1, 1000}, {"cm", 1, 100}, {"m", 1, 1}, {"in", 127, 5000}, {"ft", 381, 1250}},
	Kilogram: {{"kg", 1, 1}, {"g", 1, 1000}, {"lb", 45359237, 100000000}, {"oz", 45359237, 1600000000}},
	Newton:   {{"kN", 1000, 1}, {"N", 1, 1}, {"lbf", 44482216152605, 1e13}, {"kip", 44482216152605, 1e10}},
	Pascal: {
		{"GPa", 1e9, 1},
		{"MPa", 1e6, 1},
		{"kPa", 1000, 1},
		{"Pa", 1, 1},
		{"psi", 44482216152605, 6451600000},
		{"ksi", 44482216152605, 6451600},
	},
	KilogramPerCubicMetre: {{"kg/m3", 1, 1}, {"lb/ft3", 453592370000, 28316846592}},
	Celsius:               {{"C", 1, 1}, {"F", 5, 9}},
	Radian:                {{"deg", 1, 1}, {"rad", 1, 1}, {"°", 1, 1}},
	Fraction:              {{"%", 1, 100}},
	Hour:                  {{"h", 1, 1}},
}

// accepted shows how each kind is written.
var accepted = map[Unit]string{
	One:                   `3 or 1.5`,
	Metre:                 `"2700mm", "2.7m", "8ft 10 1/4in" or "3/4in"`,
	Kilogram:              `"25kg" or "55lb"`,
	Newton:                `"0.9kN", "900N" or "200lbf"`,
	Pascal:                `"12.3GPa", "15MPa" or "1.78e6psi"`,
	KilogramPerCubicMetre: `"680kg/m3" or "42lb/ft3"`,
	Celsius:               `"21C" or "70F"`,
	Radian:                `"12deg" or "0.2rad"`,
	Fraction:              `"25%"`,
	Hour:                  `"72h"`,
}

// Accepted shows how a quantity of a unit is written, for messages.
func Accepted(u Unit) string { return accepted[u] }

// The grammar. Pattern says the same to other programs, with the characters
// that marks stands for.
const (
	plain    = `\d+(?:\.\d+)?`
	fraction = `\d+/\d+`
	footForm = `(` + plain + `) *(?:ft|')`
	partForm = `(\d+(?: +|-)` + fraction + `|` + fraction + `|` + plain + `) *(?:in|")`
)

var (
	numberForm = regexp.MustCompile(`^([+-]?)(` + plain + `(?:[eE][+-]?\d{1,2})?) *([^\d ].*)?$`)
	inchForm   = regexp.MustCompile(`^([+-]?)(?:` + footForm + `(?: *-? *` + partForm + `)?|` + partForm + `)$`)
	// misread is a small numeral with digits after it, which marks would make one
	// fraction of.
	misread = regexp.MustCompile(`[` + numerals + `][\d/⁄]`)
	stockRE = regexp.MustCompile(`^\d+/4$`)

	// marks turns what word processors and drawings write into what the grammar
	// reads. A small numeral is only read where it belongs to a unit.
	marks = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`, "''", `"`, "−", "-", "–", "-", "\u00a0", " ",
		"°C", "C", "°F", "F", "m³", "m3", "ft³", "ft3", "⁄", "/",
		"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8")
)

// Parse reads a quantity of a unit. Lengths may be in feet and inches with
// fractions; they are worked exactly and rounded once. A sign is read: whether
// a quantity may be negative is for its key to say. The error says what is
// wrong and how it is written instead.
func Parse(u Unit, text string) (Value, error) {
	if v, ok := parsePlain(u, text); ok {
		return v, nil
	}
	if misread.MatchString(text) {
		return Value{}, fmt.Errorf("not a number with a unit; write %s", accepted[u])
	}
	t := strings.Trim(marks.Replace(text), " ")
	if digitsIn(t) > maxDigits {
		return Value{}, fmt.Errorf("more digits than a quantity may have (%d); write %s", maxDigits, accepted[u])
	}
	if u == Metre {
		if m := inchForm.FindStringSubmatch(t); m != nil {
			return feetAndInches(m[1], m[2], m[3]+m[4])
		}
	}
	m := numberForm.FindStringSubmatch(t)
	switch {
	case u == Metre && stockRE.MatchString(t):
		return Value{}, fmt.Errorf("a nominal stock is not a length; write %s", accepted[u])
	case m == nil || len(m[3]) > longest:
		return Value{}, fmt.Errorf("not a number with a unit; write %s", accepted[u])
	}
	s, err := named(u, m[3])
	if err != nil {
		return Value{}, err
	}
	r, _ := new(big.Rat).SetString(m[2])
	if m[1] == "-" {
		r.Neg(r)
	}
	return Value{SI: scaled(u, s, r), Unit: u}, nil
}

func digitsIn(text string) int {
	n := 0
	for _, c := range []byte(text) {
		if '0' <= c && c <= '9' {
			n++
		}
	}
	return n
}

// numerals are the characters that are fractions.
const numerals = "½¼¾⅛⅜⅝⅞"

// exact is the greatest whole number up to which every one is a float64.
const exact = 1 << 53

// parsePlain reads the common case, a plain decimal and a metric unit, without
// the grammar. Its two factors are whole numbers that a float64 holds exactly,
// so that the one division rounds as the exact arithmetic would.
func parsePlain(u Unit, text string) (Value, bool) {
	mantissa, scale, point, i := int64(0), int64(1), false, 0
	for ; i < len(text); i++ {
		c := text[i]
		if c == '.' && !point && i > 0 {
			point = true
			continue
		}
		if c < '0' || c > '9' {
			break
		}
		mantissa = 10*mantissa + int64(c-'0')
		if point {
			scale *= 10
		}
		if mantissa >= exact || scale >= exact {
			return Value{}, false
		}
	}
	if i == 0 || text[i-1] == '.' {
		return Value{}, false
	}
	return plainIn(u, text[i:], mantissa, scale)
}

// plainIn is a decimal, its digits over a power of ten, in the unit of a suffix.
func plainIn(u Unit, suffix string, mantissa, scale int64) (Value, bool) {
	for _, s := range suffixes[u] {
		if s.name != suffix || s.name == "F" || isDegree(s) {
			continue
		}
		if mantissa > exact/s.num || scale > exact/s.den {
			return Value{}, false
		}
		return Value{SI: float64(mantissa*s.num) / float64(scale*s.den), Unit: u}, true
	}
	return Value{}, false
}

// named finds the unit as it was written.
func named(u Unit, written string) (suffix, error) {
	meant := ""
	for _, s := range suffixes[u] {
		if s.name == written {
			return s, nil
		}
		if strings.EqualFold(s.name, written) {
			meant = s.name
		}
	}
	switch {
	case written == "":
		return suffix{}, fmt.Errorf("no unit; write %s", accepted[u])
	case u == One:
		return suffix{}, errors.New("this value is a number without a unit")
	case written[0] == ',':
		return suffix{}, fmt.Errorf("a comma in a number, whose decimal mark is a point; write %s", accepted[u])
	case meant != "":
		return suffix{}, fmt.Errorf("unit %q is written %q; write %s", written, meant, accepted[u])
	default:
		return suffix{}, fmt.Errorf("unit %q does not belong here; write %s", written, accepted[u])
	}
}

func isDegree(s suffix) bool { return s.name == "deg" || s.name == "°" }

func scaled(u Unit, s suffix, r *big.Rat) float64 {
	if s.name == "F" {
		r.Sub(r, big.NewRat(32, 1))
	}
	v, _ := r.Mul(r, big.NewRat(s.num, s.den)).Float64()
	if isDegree(s) {
		v *= math.Pi / 180
	}
	return v
}

// feetAndInches adds up feet and inches, either of which may be absent. What no
// one writes on purpose, 13' 19" or 9 11/8", is refused.
func feetAndInches(sign, feet, inches string) (Value, error) {
	total, err := mixedNumber(inches)
	if err != nil {
		return Value{}, err
	}
	if feet != "" {
		twelve := big.NewRat(12, 1)
		if total.Cmp(twelve) >= 0 {
			return Value{}, fmt.Errorf("twelve inches or more after feet; write %s", accepted[Metre])
		}
		f, _ := new(big.Rat).SetString(feet)
		total.Add(total, f.Mul(f, twelve))
	}
	if sign == "-" {
		total.Neg(total)
	}
	v, _ := total.Mul(total, big.NewRat(127, 5000)).Float64()
	return Value{SI: v, Unit: Metre}, nil
}

// mixedNumber reads "9", "9.5", "1/2", "9 1/2" or "9-1/2"; nothing is zero.
func mixedNumber(text string) (*big.Rat, error) {
	if strings.Contains(text, "/") {
		text = strings.ReplaceAll(text, "-", " ")
	}
	total := new(big.Rat)
	for i, part := range strings.Fields(text) {
		r, ok := new(big.Rat).SetString(part)
		switch {
		case !ok:
			return nil, fmt.Errorf("a fraction of nothing; write %s", accepted[Metre])
		case i > 0 && r.Cmp(big.NewRat(1, 1)) >= 0:
			return nil, fmt.Errorf("a fraction that is not less than one after whole inches; write %s", accepted[Metre])
		}
		total.Add(total, r)
	}
	return total, nil
}

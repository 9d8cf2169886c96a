package quantity

import (
	"math"
	"strconv"
	"strings"
)

// System is the system of units that a spec prints in.
type System uint8

// The systems.
const (
	Metric System = iota + 1
	Imperial
)

// style is how one unit prints: SI divided by size (after offset), with a
// number of decimals and a suffix.
type style struct {
	size, offset float64
	decimals     int
	suffix       string
}

const (
	psi      = PoundForce / (Inch * Inch)
	perFoot3 = Pound / (Foot * Foot * Foot)
)

func (s System) style(v Value) style {
	if s == Imperial {
		if st, ok := imperialStyle(v); ok {
			return st
		}
	}
	return metricStyle(v)
}

// Steady moves a number away from zero by far less than is ever printed and
// more than round-off amounts to. Plain sizes fall in the middle between two
// decimals, or where another unit is printed, and would go either way with the
// last bits of a product, which differ between processors.
// What is too large for that is as it was.
func Steady(x float64) float64 {
	if math.Abs(x) > 1e9 {
		return x
	}
	return x * (1 + 1e-12)
}

// metric are the styles of units that have one, whatever the size.
var metric = map[Unit]style{
	KilogramPerCubicMetre:  {1, 0, 0, "kg/m3"},
	Celsius:                {1, 0, 1, "C"},
	Radian:                 {math.Pi / 180, 0, 1, "deg"},
	Fraction:               {0.01, 0, 1, "%"},
	CubicMetre:             {1, 0, 4, "m3"},
	KilogramPerSquareMetre: {1, 0, 1, "kg/m2"},
	NewtonMetre:            {1, 0, 1, "Nm"},
	Hour:                   {1, 0, 0, "h"},
	PerMetre:               {1, 0, 4, "/m"},
	MetreToTheFourth:       {1e-12, 0, 0, "mm4"},
	NewtonPerKilogram:      {1, 0, 2, "N/kg"},
}

func metricStyle(v Value) style {
	size := math.Abs(Steady(v.SI))
	switch {
	case v.Unit == Metre:
		return style{1e-3, 0, lengthDecimals(size), "mm"}
	case v.Unit == Kilogram && size < 1:
		return style{1, 0, 3, "kg"}
	case v.Unit == Kilogram:
		return style{1, 0, 1, "kg"}
	case v.Unit == Newton && size < 100:
		return style{1, 0, 1, "N"}
	case v.Unit == Newton:
		return style{1e3, 0, 2, "kN"}
	case v.Unit == Pascal:
		return stressStyle(size)
	case v.Unit == SquareMetre && size < smallArea:
		return style{1e-6, 0, 0, "mm2"}
	case v.Unit == SquareMetre:
		return style{1, 0, 2, "m2"}
	case v.Unit == NewtonPerMetre && size < lineLoad:
		return style{1, 0, 1, "N/m"}
	case v.Unit == NewtonPerMetre:
		return style{1e3, 0, 1, "N/mm"}
	}
	if s, ok := metric[v.Unit]; ok {
		return s
	}
	return style{1, 0, 2, ""}
}

func stressStyle(size float64) style {
	switch {
	case size >= 1e9:
		return style{1e9, 0, 2, "GPa"}
	case leastMPa <= size && size < 1e5:
		return style{1e6, 0, 3, "MPa"}
	default:
		return style{1e6, 0, 2, "MPa"}
	}
}

// Below these, an area is a section's, in m2, and a force by length is a load and
// not a stiffness, in N/m.
const (
	smallArea = 0.1
	lineLoad  = 1000
)

// leastMPa is the least stress, in Pa, that shows in three decimals of a MPa.
const leastMPa = 500

// lengthDecimals: drawings show whole millimetres of what is large and tenths
// of what is small.
func lengthDecimals(size float64) int {
	if size >= 1 {
		return 0
	}
	return 1
}

// imperial are the styles of units that have one, whatever the size.
var imperial = map[Unit]style{
	Newton:                 {PoundForce, 0, 1, "lbf"},
	KilogramPerCubicMetre:  {perFoot3, 0, 1, "lb/ft3"},
	Celsius:                {5.0 / 9, 32, 1, "F"},
	CubicMetre:             {Foot * Foot * Foot, 0, 3, "ft3"},
	KilogramPerSquareMetre: {Pound / (Foot * Foot), 0, 2, "lb/ft2"},
	NewtonMetre:            {PoundForce * Foot, 0, 1, "lbf.ft"},
	PerMetre:               {1 / Foot, 0, 4, "/ft"},
	MetreToTheFourth:       {Inch * Inch * Inch * Inch, 0, 2, "in4"},
	NewtonPerKilogram:      {PoundForce / Pound, 0, 2, "lbf/lb"},
}

func imperialStyle(v Value) (style, bool) {
	size := math.Abs(Steady(v.SI))
	switch {
	case v.Unit == Kilogram && size < Pound:
		return style{Pound, 0, 3, "lb"}, true
	case v.Unit == Kilogram:
		return style{Pound, 0, 1, "lb"}, true
	case v.Unit == Pascal && size < 100*psi:
		return style{psi, 0, 1, "psi"}, true
	case v.Unit == Pascal:
		return style{psi, 0, 0, "psi"}, true
	case v.Unit == SquareMetre && size < smallArea:
		return style{Inch * Inch, 0, 3, "in2"}, true
	case v.Unit == SquareMetre:
		return style{Foot * Foot, 0, 2, "ft2"}, true
	case v.Unit == NewtonPerMetre && size < lineLoad:
		return style{PoundForce / Foot, 0, 2, "lbf/ft"}, true
	case v.Unit == NewtonPerMetre:
		return style{PoundForce / Inch, 0, 1, "lbf/in"}, true
	}
	s, ok := imperial[v.Unit]
	return s, ok
}

// Format prints v in the system's unit for it, with the digits that a drawing
// has: lengths to 0.1 mm or 1/16 in, trailing zeros of a decimal dropped where
// the value is whole. A length of a micrometre or more never prints as nothing:
// it has as many decimals as it takes, or sixty-fourths of an inch.
func (s System) Format(v Value) string {
	if s == Imperial && v.Unit == Metre {
		return onRule(v.SI)
	}
	st := s.style(v)
	if v.Unit == Metre {
		return st.visible(v.SI)
	}
	return st.print(v.SI, st.decimals)
}

// leastShown is the least length, in m, that is not round-off: the least that
// a spec may state.
const leastShown = 1e-6

// visible prints a length with decimals until it shows one that is not nought.
func (st style) visible(m float64) string {
	decimals := st.decimals
	for math.Abs(m) >= leastShown && decimals < st.decimals+finest && st.print(m, decimals) == st.print(0, decimals) {
		decimals++
	}
	return st.print(m, decimals)
}

// onRule prints a length in sixteenths of an inch, in sixty-fourths where there
// are none, or else in decimals.
func onRule(m float64) string {
	for _, parts := range []int64{16, 64} {
		if text := inches(m, parts); text != `0"` {
			return text
		}
	}
	return style{Inch, 0, 3, `"`}.visible(m)
}

func (st style) print(si float64, decimals int) string {
	return st.digits(si, decimals, st.drops())
}

// digits prints a number with so many decimals, or with no more of them than it
// needs.
func (st style) digits(si float64, decimals int, drops bool) string {
	x := si/st.size + st.offset
	switch {
	case math.IsNaN(x):
		return "no figure"
	case math.IsInf(x, 0):
		return "unlimited"
	}
	if decimals != allDigits {
		x = Steady(x)
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(text, ".") && drops {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text + st.suffix
}

// drops reports whether trailing zeros are dropped: a force keeps them
// ("0.90kN"), since a load is stated to a precision.
func (st style) drops() bool { return st.suffix != "kN" && st.suffix != "GPa" && st.suffix != "MPa" }

// finest is how many more decimals Pair tries before it prints all digits that
// a figure has.
const finest = 6

// allDigits makes a number print in as many decimals as tell it from any other.
const allDigits = -1

// Pair prints two quantities of one unit to be read side by side: in the same
// multiple of the unit, that of the smaller, and with as many digits as it
// takes for two that differ never to look equal.
func (s System) Pair(a, b Value) (string, string) {
	if a.Unit != b.Unit {
		return s.Format(a), s.Format(b)
	}
	if s == Imperial && a.Unit == Metre {
		return inchPair(a.SI, b.SI)
	}
	sa, sb := s.style(a), s.style(b)
	if sa.suffix != sb.suffix {
		if math.Abs(a.SI) < math.Abs(b.SI) {
			sb = sa
		} else {
			sa = sb
		}
	}
	coarse, fine := min(sa.decimals, sb.decimals), max(sa.decimals, sb.decimals)
	if a.SI != b.SI && sa.print(a.SI, coarse) == sb.print(b.SI, coarse) {
		return apart(sa, a.SI, b.SI, fine)
	}
	return sa.print(a.SI, sa.decimals), sb.print(b.SI, sb.decimals)
}

// Alike prints quantities to be read side by side: forces of one unit in one
// multiple of it, in which the least has three digits, and with as many decimals.
func (s System) Alike(values []Value) []string {
	least := make(map[Unit]style)
	for _, v := range values {
		st := s.style(Value{v.SI / 10, v.Unit})
		if had, ok := least[v.Unit]; !ok || st.size < had.size {
			least[v.Unit] = st
		}
	}
	out := make([]string, len(values))
	for i, v := range values {
		switch v.Unit {
		case Newton, NewtonPerMetre:
			out[i] = least[v.Unit].digits(v.SI, least[v.Unit].decimals, false)
		default:
			out[i] = s.Format(v)
		}
	}
	return out
}

// apart prints two numbers that differ, with decimals or with as many more as
// it takes to see that they do.
func apart(st style, a, b float64, decimals int) (string, string) {
	for d := decimals; d <= decimals+finest; d++ {
		if pa, pb := st.print(a, d), st.print(b, d); pa != pb {
			return pa, pb
		}
	}
	return st.print(a, allDigits), st.print(b, allDigits)
}

// inches prints a length in feet and inches to a fraction of an inch:
// 13'-9 1/2", 5/8". What is too long to count in fractions is in inches.
func inches(m float64, parts int64) string {
	count := math.Round(math.Abs(Steady(m)) / Inch * float64(parts))
	if !(count < exact) {
		return style{Inch, 0, 0, `"`}.print(m, 0)
	}
	n := int64(count)
	sign := ""
	if m < 0 && n > 0 {
		sign = "-"
	}
	whole, rest, of := lowest(n, parts)
	text := strconv.FormatInt(whole%12, 10)
	switch {
	case rest > 0 && whole%12 == 0 && whole < 12:
		text = ""
	case rest > 0:
		text += " "
	}
	if rest > 0 {
		text += strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(of, 10)
	}
	if whole >= 12 {
		return sign + strconv.FormatInt(whole/12, 10) + "'-" + text + `"`
	}
	return sign + text + `"`
}

func inchPair(a, b float64) (string, string) {
	for _, parts := range []int64{16, 64} {
		nothing := func(m float64, text string) bool { return text == `0"` && math.Abs(m) >= leastShown }
		if pa, pb := inches(a, parts), inches(b, parts); (pa != pb || a == b) && !nothing(a, pa) && !nothing(b, pb) {
			return pa, pb
		}
	}
	return apart(style{size: Inch, suffix: `"`}, a, b, 3)
}

package report

import (
	"math"
	"strconv"
	"strings"

	"dryfit/spec/quantity"
)

// csvUnit is what numbers of a unit are written in.
type csvUnit struct {
	size float64
	name string
}

// csvUnitOf is the unit that a table in a system gives numbers of a quantity in.
func csvUnitOf(s quantity.System, u quantity.Unit) csvUnit {
	imperial := s == quantity.Imperial
	switch {
	case u == quantity.Metre && imperial:
		return csvUnit{0.0254, "in"}
	case u == quantity.Metre:
		return csvUnit{0.001, "mm"}
	case u == quantity.CubicMetre && imperial:
		return csvUnit{0.3048 * 0.3048 * 0.3048, "ft3"}
	case u == quantity.CubicMetre:
		return csvUnit{1, "m3"}
	case u == quantity.Kilogram && imperial:
		return csvUnit{0.45359237, "lb"}
	case u == quantity.Kilogram:
		return csvUnit{1, "kg"}
	case u == quantity.Newton && imperial:
		return csvUnit{4.4482216152605, "lbf"}
	case u == quantity.Newton:
		return csvUnit{1, "N"}
	case u == quantity.Fraction:
		return csvUnit{0.01, "%"}
	default:
		return csvUnit{1, ""}
	}
}

// head is what follows a column's name.
func (u csvUnit) head() string {
	if u.name == "" {
		return ""
	}
	return " (" + u.name + ")"
}

// csvDigits are those of a number in a table.
const csvDigits = 6

// number is a cell, without its unit; empty where there is no such figure.
func (u csvUnit) number(si float64) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return ""
	}
	x, err := strconv.ParseFloat(strconv.FormatFloat(quantity.Steady(si/u.size), 'g', csvDigits, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// plainCell puts an apostrophe before what a spreadsheet would take for a
// formula.
func plainCell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

package show

import (
	"math"
	"strconv"
	"strings"

	"dryfit/spec/quantity"
)

// CSVUnit is what numbers of a unit are written in.
type CSVUnit struct {
	size float64
	name string
}

// CSVUnitOf is the unit that a table in a system gives numbers of a quantity in.
func CSVUnitOf(s quantity.System, u quantity.Unit) CSVUnit {
	imperial := s == quantity.Imperial
	switch {
	case u == quantity.Metre && imperial:
		return CSVUnit{quantity.Inch, "in"}
	case u == quantity.Metre:
		return CSVUnit{0.001, "mm"}
	case u == quantity.CubicMetre && imperial:
		return CSVUnit{quantity.Foot * quantity.Foot * quantity.Foot, "ft3"}
	case u == quantity.CubicMetre:
		return CSVUnit{1, "m3"}
	case u == quantity.Kilogram && imperial:
		return CSVUnit{quantity.Pound, "lb"}
	case u == quantity.Kilogram:
		return CSVUnit{1, "kg"}
	case u == quantity.Newton && imperial:
		return CSVUnit{4.4482216152605, "lbf"}
	case u == quantity.Newton:
		return CSVUnit{1, "N"}
	case u == quantity.Fraction:
		return CSVUnit{0.01, "%"}
	default:
		return CSVUnit{1, ""}
	}
}

// Head is what follows a column's name.
func (u CSVUnit) Head() string {
	if u.name == "" {
		return ""
	}
	return " (" + u.name + ")"
}

// csvDigits are those of a number in a table.
const csvDigits = 6

// Number is a cell, without its unit; empty where there is no such figure.
func (u CSVUnit) Number(si float64) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return ""
	}
	x, err := strconv.ParseFloat(strconv.FormatFloat(quantity.Steady(si/u.size), 'g', csvDigits, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// PlainCell puts an apostrophe before what a spreadsheet would take for a
// formula.
func PlainCell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

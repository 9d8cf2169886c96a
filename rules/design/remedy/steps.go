package remedy

import (
	"math"
	"strconv"
	"strings"

	"dryfit/spec/quantity"
)

// ladder is the values that a quantity may be given, from small to large: what
// the trade buys, or the steps that it sets out.
type ladder struct {
	unit quantity.Unit
	size float64 // of one step, in SI; zero where there is a list
	list []rung
	text func(si float64) string
}

type rung struct {
	si   float64
	text string
}

// Steps in which lengths are set out, as parts of a millimetre and of an inch.
type step struct {
	metre float64
	parts int // of an inch
}

const inch = quantity.Inch

var (
	coarse = step{0.005, 4}
	whole  = step{0.001, 16}
	half   = step{0.0005, 32}
	tenth  = step{0.0001, 64}
)

// steps are those of the keys that are worked finer than the others: what is
// planed, and what is a tolerance or a play; and of those that are set out
// coarser.
var steps = map[string]step{
	"rib.lamination":   half,
	"room.tolerance":   tenth,
	"panels.form":      tenth,
	"seam.gap":         tenth,
	"seam.tolerance":   tenth,
	"strap.hole":       tenth,
	"strap.setting":    tenth,
	"panels.tolerance": tenth,

	"fitting.*.at.around": coarse,
	"fitting.*.at.along":  coarse,
}

// stocks are the sizes that are bought and not made, by the key.
var stocks = map[string]map[quantity.System][]string{
	"skin.thickness": {
		quantity.Metric:   {"3.5mm", "5mm", "6.5mm", "8mm", "9mm", "12mm", "15mm", "18mm"},
		quantity.Imperial: {"1/8in", "1/4in", "5/16in", "3/8in", "1/2in", "5/8in", "3/4in"},
	},
	"strap.thickness": { // sheet gauges and flat bar
		quantity.Metric:   {"0.8mm", "1mm", "1.2mm", "1.5mm", "2mm", "2.5mm", "3mm", "4mm", "5mm", "6mm"},
		quantity.Imperial: {"0.036in", "0.048in", "0.06in", "0.075in", "0.105in", "1/8in", "3/16in", "1/4in"},
	},
	"strap.width": {
		quantity.Metric:   {"15mm", "20mm", "25mm", "30mm", "35mm", "40mm", "50mm", "60mm", "80mm"},
		quantity.Imperial: {"5/8in", "3/4in", "1in", "1 1/4in", "1 1/2in", "2in", "2 1/2in", "3in"},
	},
	"strap.screws.diameter": {
		quantity.Metric:   {"3.5mm", "4mm", "4.5mm", "5mm", "6mm", "8mm"},
		quantity.Imperial: {"0.138in", "0.164in", "0.19in", "0.216in", "1/4in", "5/16in"},
	},
}

// sheets are the sizes that sheets are sold in; either edge may be bent.
var sheets = map[quantity.System][][2]string{
	quantity.Metric:   {{"1220mm", "2440mm"}, {"1220mm", "3050mm"}, {"1525mm", "3050mm"}},
	quantity.Imperial: {{"4ft", "8ft"}, {"4ft", "10ft"}, {"5ft", "10ft"}},
}

// stockNames are the nominal thicknesses of sawn stock that have a surfaced
// one.
var stockNames = []string{"3/4", "4/4", "5/4", "6/4", "8/4", "10/4", "12/4", "16/4"}

// units of the formats whose values are quantities, and their steps other than
// of lengths.
var units = map[string]quantity.Unit{
	"length": quantity.Metre, "length-zero": quantity.Metre, "length-signed": quantity.Metre,
	"share": quantity.Fraction, "humidity": quantity.Fraction, "mass": quantity.Kilogram,
	"force": quantity.Newton, "temperature": quantity.Celsius,
}

// ladderOf is that of a key whose value is a quantity.
func ladderOf(key, format string, in quantity.System) (ladder, bool) {
	unit, ok := units[format]
	if list := stocks[pattern(key)]; list != nil {
		return listed(unit, list[in]), true
	}
	switch {
	case !ok:
		return ladder{}, false
	case unit == quantity.Metre:
		return lengths(key, in), true
	case unit == quantity.Fraction:
		return ladder{unit: unit, size: 0.01, text: written("%", 0.01, 0)}, true
	case unit == quantity.Kilogram && in == quantity.Imperial:
		return ladder{unit: unit, size: quantity.Pound, text: written("lb", quantity.Pound, 0)}, true
	case unit == quantity.Kilogram:
		return ladder{unit: unit, size: 1, text: written("kg", 1, 0)}, true
	case unit == quantity.Newton && in == quantity.Imperial:
		return ladder{unit: unit, size: 4.4482216152605, text: written("lbf", 4.4482216152605, 0)}, true
	case unit == quantity.Newton:
		return ladder{unit: unit, size: 10, text: written("kN", 1000, 2)}, true
	default:
		return ladder{unit: unit, size: 1, text: written("C", 1, 0)}, true
	}
}

func lengths(key string, in quantity.System) ladder {
	s, ok := steps[pattern(key)]
	if !ok {
		s = whole
	}
	if in == quantity.Imperial {
		return ladder{unit: quantity.Metre, size: inch / float64(s.parts), text: func(si float64) string {
			return quantity.FeetText(int(math.Round(si/inch*float64(s.parts))), s.parts)
		}}
	}
	return ladder{unit: quantity.Metre, size: s.metre, text: written("mm", 0.001, 1)}
}

func written(suffix string, size float64, decimals int) func(float64) string {
	return func(si float64) string {
		text := strconv.FormatFloat(si/size, 'f', decimals, 64)
		if strings.Contains(text, ".") && suffix != "kN" {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		return text + suffix
	}
}

func listed(unit quantity.Unit, texts []string) ladder {
	l := ladder{unit: unit}
	for _, text := range texts {
		v, err := quantity.Parse(unit, text)
		if err != nil {
			panic(err) // a size in the table above is mistyped
		}
		l.list = append(l.list, rung{v.SI, text})
	}
	return l
}

// onStep keeps round-off from telling a value from the step that it is on.
const onStep = 1e-6

// from is the value that is some steps over si, or under it where they are
// negative.
func (l ladder) from(si float64, steps int) (rung, bool) {
	if l.list != nil {
		return l.listedFrom(si, steps)
	}
	at := si / l.size
	index := math.Floor(at+onStep) + float64(steps)
	if steps < 0 {
		index = math.Ceil(at-onStep) + float64(steps)
	}
	v := index * l.size
	return rung{v, l.text(v)}, true
}

func (l ladder) listedFrom(si float64, steps int) (rung, bool) {
	first := 0 // the first that is over si
	for first < len(l.list) && l.list[first].si <= si*(1+onStep) {
		first++
	}
	last := first - 1 // the last that is under it
	for last >= 0 && l.list[last].si >= si*(1-onStep) {
		last--
	}
	i := first + steps - 1
	if steps < 0 {
		i = last + steps + 1
	}
	if i < 0 || i >= len(l.list) {
		return rung{}, false
	}
	return l.list[i], true
}

// stepsTo is how many steps a value is away from si, at least as far as it.
func (l ladder) stepsTo(si, value float64) int {
	if l.list == nil {
		n := (value - si) / l.size
		if n < 0 {
			return int(math.Floor(n + onStep))
		}
		return int(math.Ceil(n - onStep))
	}
	n := 1
	if value < si {
		n = -1
	}
	for {
		r, ok := l.from(si, n)
		if !ok || n > 0 && r.si >= value-onStep*value || n < 0 && r.si <= value+onStep*value {
			return n
		}
		if n > 0 {
			n++
		} else {
			n--
		}
	}
}

package ruletest

import (
	"math/big"
	"strconv"
	"strings"

	"dryfit/spec"
	"dryfit/spec/quantity"
)

// eachText is a tree with each text written by a function of it and its path in
// the schema.
func eachText(v any, path string, f func(text, path string) string) any {
	switch v := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for name, x := range v {
			out[name] = eachText(x, strings.TrimPrefix(path+"."+spec.Key(name), "."), f)
		}
		return out
	case []any:
		var out []any
		for _, x := range v {
			out = append(out, eachText(x, path+".*", f))
		}
		return out
	case string:
		return f(v, path)
	default:
		return v
	}
}

// digits of a value in its other unit: it differs from what it was by less than
// a part in 1e12, and is not it.
const digits = 13

// inches, pounds and so on, in SI units.
var otherUnits = map[quantity.Unit][2]struct {
	name string
	size *big.Rat
}{
	quantity.Metre:                 {{"mm", big.NewRat(1, 1000)}, {"in", big.NewRat(127, 5000)}},
	quantity.Kilogram:              {{"kg", big.NewRat(1, 1)}, {"lb", big.NewRat(45359237, 100000000)}},
	quantity.Newton:                {{"N", big.NewRat(1, 1)}, {"lbf", big.NewRat(44482216152605, 1e13)}},
	quantity.Pascal:                {{"Pa", big.NewRat(1, 1)}, {"psi", big.NewRat(44482216152605, 6451600000)}},
	quantity.KilogramPerCubicMetre: {{"kg/m3", big.NewRat(1, 1)}, {"lb/ft3", big.NewRat(453592370000, 28316846592)}},
}

// inOtherUnits is a spec with each metric quantity in imperial units, and each
// imperial one in metric units.
func inOtherUnits(tree map[string]any) map[string]any {
	other := eachText(tree, "", func(text, path string) string {
		switch {
		case path == "project.units" && text == "metric":
			return "imperial"
		case path == "project.units":
			return "metric"
		}
		return otherUnit(text, properties()[path].Unit)
	})
	return other.(map[string]any)
}

func otherUnit(text string, unit quantity.Unit) string {
	q, err := quantity.Parse(unit, text)
	if err != nil {
		return text
	}
	exact, _ := new(big.Rat).SetString(strconv.FormatFloat(q.SI, 'e', -1, 64))
	if unit == quantity.Celsius {
		if strings.HasSuffix(text, "F") {
			return strconv.FormatFloat(q.SI, 'f', 12, 64) + "C"
		}
		return strconv.FormatFloat(q.SI*9/5+32, 'f', 12, 64) + "F"
	}
	pair, ok := otherUnits[unit]
	if !ok {
		return text
	}
	to := pair[1]
	for _, suffix := range []string{"in", "ft", "lb", "oz", "lbf", "psi", "ksi", "kip", "lb/ft3", `"`, "'"} {
		if strings.HasSuffix(text, suffix) {
			to = pair[0]
		}
	}
	v, _ := exact.Quo(exact, to.size).Float64()
	return plainly(v) + to.name
}

// plainly is a number with so many digits and without an exponent.
func plainly(v float64) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

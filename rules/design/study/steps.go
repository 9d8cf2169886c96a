package study

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"dryfit/spec/quantity"
)

// plain is a decimal number with a unit.
var plain = regexp.MustCompile(`^([+-]?\d+(?:\.\d+)?)\s*([^\d\s./'"][^\d]*\d?)$`)

// onStep keeps round-off from dropping the last value of a range, as a share of
// the step.
const onStep = 1e-9

// quantityRange steps through a range of quantities. In one unit it steps in
// decimals, so that the values read as their author would write them; lengths
// in several units step in those of FROM.
func quantityRange(u quantity.Unit, from, to, step string) ([]any, error) {
	a, b, by := plain.FindStringSubmatch(from), plain.FindStringSubmatch(to), plain.FindStringSubmatch(step)
	if a != nil && b != nil && by != nil && a[2] == b[2] && a[2] == by[2] {
		return decimalRange(from, to, step, [3]string{a[1], b[1], by[1]}, a[2])
	}
	if u == quantity.Celsius {
		return nil, fmt.Errorf("write %s..%s and its step in one unit, C or F", from, to)
	}
	var si [3]float64
	for i, text := range []string{from, to, step} {
		v, err := quantity.Parse(u, text)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", text, err)
		}
		si[i] = v.SI
	}
	if err := sensible(from, to, step, si[0], si[1], si[2]); err != nil {
		return nil, err
	}
	write := lengthText
	if u != quantity.Metre {
		if a == nil {
			return nil, fmt.Errorf("write %s..%s and its step in one unit", from, to)
		}
		one, err := quantity.Parse(u, "1"+a[2])
		if err != nil {
			return nil, err
		}
		write = func(v float64, _ bool) string { return decimalText(v/one.SI) + a[2] }
	}
	inches := strings.ContainsAny(from, `'"ft`) || strings.Contains(from, "in")
	var out []any
	for i := 0; si[0]+float64(i)*si[2] <= si[1]+onStep*si[2]; i++ {
		out = append(out, write(si[0]+float64(i)*si[2], inches))
	}
	return out, nil
}

// decimalRange steps exactly, in the decimals of its numbers.
func decimalRange(from, to, step string, numbers [3]string, unit string) ([]any, error) {
	var n [3]*big.Rat
	decimals := 0
	for i, text := range numbers {
		n[i], _ = new(big.Rat).SetString(text)
		if _, fraction, ok := strings.Cut(text, "."); ok {
			decimals = max(decimals, len(fraction))
		}
	}
	a, _ := n[0].Float64()
	b, _ := n[1].Float64()
	by, _ := n[2].Float64()
	if err := sensible(from, to, step, a, b, by); err != nil {
		return nil, err
	}
	var out []any
	for v := n[0]; v.Cmp(n[1]) <= 0; v = new(big.Rat).Add(v, n[2]) {
		text := v.FloatString(decimals)
		if strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		out = append(out, text+unit)
	}
	return out, nil
}

const (
	inch = quantity.Inch
	// parts of an inch that a drawing shows; what is not on one is a decimal.
	parts = 64
	// sameLength is far below what a shop can measure, and far above the
	// rounding of sums.
	sameLength = 1e-9
)

// lengthText writes a length as a spec does, in inches or in millimetres.
func lengthText(m float64, inches bool) string {
	if !inches {
		return decimalText(m*1000) + "mm"
	}
	n := math.Round(m / inch * parts)
	if math.Abs(n/parts*inch-m) > sameLength {
		return decimalText(m/inch) + "in"
	}
	return quantity.InchText(int(n), parts)
}

// decimalText prints a number to nine decimals at most.
func decimalText(x float64) string {
	const most = 1e9
	return strconv.FormatFloat(math.Round(x*most)/most, 'f', -1, 64)
}

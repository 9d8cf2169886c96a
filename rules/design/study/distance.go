package study

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"dryfit/spec/quantity"
)

// wished is the figure at its least or most, near a value or inside a range. How far
// it is off is the logarithm of the ratio, so that half and double are alike.
func (a Aim) wished(c Column, wish string) (Aim, error) {
	low, high, isRange := strings.Cut(wish, "..")
	switch {
	case wish == "least":
		a.Name, a.far = "least "+c.Name, func(x float64) float64 { return x }
		return a, nil
	case wish == "most":
		a.Name, a.far = "most "+c.Name, func(x float64) float64 { return -x }
		return a, nil
	case !isRange:
		high = low
	}
	from, err := c.wanted(low)
	if err != nil {
		return a, err
	}
	to, err := c.wanted(high)
	if err != nil {
		return a, err
	}
	if from > to {
		return a, fmt.Errorf("%s is a range that ends before it begins", wish)
	}
	a.Name = c.Name + " near " + wish
	if isRange {
		a.Name = c.Name + " in " + wish
	}
	a.far = func(x float64) float64 { return outside(x, from, to) }
	return a, nil
}

// lying is the ratio near a value with its long side one way; one that lies the other
// way counts by its inverse.
func (a Aim) lying(c Column, wish, way string) (Aim, error) {
	value, err := c.wanted(wish)
	switch {
	case err != nil:
		return a, err
	case value < 1:
		return a, fmt.Errorf("a ratio is at least 1; write the inverse of %s", wish)
	case way == "along":
	case way == "around":
		value = 1 / value
	default:
		return a, fmt.Errorf("the long side is along or around, not %q", way)
	}
	a.Name = "module ratio near " + wish + " " + way
	a.far = func(x float64) float64 { return outside(x, value, value) }
	return a, nil
}

// wanted reads a value of a figure, which is more than nothing.
func (c Column) wanted(text string) (float64, error) {
	q, err := quantity.Parse(c.Unit, text)
	if err != nil {
		return 0, fmt.Errorf("%s of %s: %w", text, c.Key, err)
	}
	if !(q.SI > 0) {
		return 0, errors.New("the value to be near must be greater than 0; write least for 0")
	}
	return q.SI, nil
}

// outside is how far a figure is out of a range, as the logarithm of the ratio.
func outside(x, from, to float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x <= 0: // a last gap may be less than nothing
		return math.Inf(1)
	case x < from:
		return math.Log(from / x)
	case x > to:
		return math.Log(x / to)
	default:
		return 0
	}
}

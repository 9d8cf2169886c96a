package study

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"dryfit/spec/quantity"
)

// Aim is what is wanted of one figure: the least or the most of it, a value to be near,
// or a range to be inside.
type Aim struct {
	Column int
	Text   string // as it was written
	Name   string // of the figure, with what is wanted of it

	far func(figure float64) float64
}

// longSide is the column of the ratio with its sign: over 1 the long side of a module
// lies along the vault, under 1 around it.
const longSide = "long-side"

// aim reads FIGURE or FIGURE=WISH: least, most, a value, a range LOW..HIGH, or for the
// ratio a value with the way its long side lies, 2:along or 2:around.
func (s *Study) aim(text string) (Aim, error) {
	figure, wish, given := strings.Cut(text, "=")
	figure, wish = strings.ReplaceAll(strings.TrimSpace(figure), " ", "-"), strings.TrimSpace(wish)
	if cut, ok := strings.CutPrefix(figure, "-"); ok && !given {
		return Aim{}, fmt.Errorf("%s is not weighed the other way round; give --aim %s=most", cut, cut)
	}
	ratio, way, signed := strings.Cut(wish, ":")
	if signed && figure == "ratio" {
		figure, wish = longSide, ratio
	}
	i, err := s.column(figure)
	if err != nil {
		return Aim{}, err
	}
	a := Aim{Column: i, Text: text}
	c := s.Columns[i]
	if !given {
		return a.best(c, s)
	}
	if signed {
		return a.lying(c, wish, way)
	}
	return a.wished(c, wish)
}

// best is the figure at its better end.
func (a Aim) best(c Column, s *Study) (Aim, error) {
	a.Name = c.Name
	switch c.Better {
	case Lower:
		a.far = func(x float64) float64 { return x }
	case Higher:
		a.far = func(x float64) float64 { return -x }
	default:
		return a, fmt.Errorf("%s is neither better high nor low; weigh %s, or give --aim %s=least, most, a value or LOW..HIGH", c.Key, strings.Join(s.weighable(), ", "), c.Key)
	}
	return a, nil
}

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
		return a, fmt.Errorf("a ratio is 1 at the least; write %s the other way round", wish)
	case way == "along":
	case way == "around":
		value = 1 / value
	default:
		return a, fmt.Errorf("the long side lies along or around, and not %q", way)
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
		return 0, errors.New("what a figure is to be near is more than 0; give least for none")
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

func (s *Study) weighable() []string {
	var keys []string
	for _, c := range s.Columns {
		if c.Better != Neither {
			keys = append(keys, c.Key)
		}
	}
	return keys
}

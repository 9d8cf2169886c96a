package study

import (
	"fmt"
	"strings"
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
		return Aim{}, fmt.Errorf("--weigh can't reverse the direction of %s; give --aim %s=most", cut, cut)
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
		return a, fmt.Errorf("%s has no better direction; weigh %s, or give --aim %s=least, most, a value or LOW..HIGH", c.Key, strings.Join(s.weighable(), ", "), c.Key)
	}
	return a, nil
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

package remedy

import (
	"fmt"
	"math"
	"slices"

	"dryfit/schema"
	"dryfit/spec/quantity"
)

// lists are the ways to turn a list: each element by itself, and, of stations,
// all of them together. What a step gives is always the whole list.
func lists(key string, now []any, p schema.Property) []dial {
	var out []dial
	shares := make([]float64, len(now))
	for i, v := range now {
		element := p
		element.Format = "share"
		if _, count := v.(int64); count {
			element.Format = ""
		}
		for _, d := range dialsFor(key, v, element) {
			at := d.at
			d.name = fmt.Sprint(i + 1)
			d.at = func(steps int) (any, bool) {
				v, ok := at(steps)
				list := slices.Clone(now)
				list[i] = v
				return list, ok && (!inOrder(now) || inOrder(list))
			}
			out = append(out, d)
		}
		text, _ := v.(string)
		share, err := quantity.Parse(quantity.Fraction, text)
		if err != nil {
			return out
		}
		shares[i] = share.SI
	}
	if len(shares) > 1 {
		out = append(out, inset(key, shares))
	}
	if len(shares) > 0 && key == "strap.stations" {
		out = append(out, number(key, shares))
	}
	return out
}

// inOrder reports whether stations go up along the arc; one that is moved does
// not overtake its neighbour then. What is no list of shares has no order.
func inOrder(list []any) bool {
	before := math.Inf(-1)
	for _, v := range list {
		text, _ := v.(string)
		share, err := quantity.Parse(quantity.Fraction, text)
		if err != nil || share.SI <= before {
			return false
		}
		before = share.SI
	}
	return true
}

// inset moves all stations in proportion, so that the first and the last come
// in from the ends or go out to them.
func inset(key string, shares []float64) dial {
	first := slices.Min(shares)
	return dial{
		key: key, name: "inset", up: int(100 * (0.5 - first)), down: int(100 * first),
		at: func(steps int) (any, bool) {
			to := first + float64(steps)/100
			if !(to >= 0 && to < 0.5 && first < 0.5) {
				return nil, false
			}
			moved := make([]float64, len(shares))
			for i, s := range shares {
				moved[i] = 0.5 + (s-0.5)*(0.5-to)/(0.5-first)
			}
			return percentages(moved)
		},
	}
}

// number gives other numbers of stations, at equal distances between the first
// and the last.
func number(key string, shares []float64) dial {
	first, last := slices.Min(shares), slices.Max(shares)
	if len(shares) == 1 {
		first, last = 0.25, 0.75
	}
	return dial{
		key: key, name: "number", up: 8, down: max(0, len(shares)-2), each: true,
		at: func(steps int) (any, bool) {
			n := len(shares) + steps
			if n < 2 {
				return nil, false
			}
			spread := make([]float64, n)
			for i := range spread {
				spread[i] = first + (last-first)*float64(i)/float64(n-1)
			}
			return percentages(spread)
		},
	}
}

// percentages writes shares to whole percents. Two that would be one are
// refused.
func percentages(shares []float64) (any, bool) {
	out := make([]any, len(shares))
	for i, s := range shares {
		out[i] = fmt.Sprintf("%.0f%%", math.Round(s*100))
		if s < 0 || s > 1 || slices.Contains(out[:i], out[i]) {
			return nil, false
		}
	}
	return out, true
}

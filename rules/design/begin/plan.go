package begin

import (
	"cmp"
	"math"
	"slices"
)

// overhang is what lies past an end strap, as a share of the run between two:
// less than a half, since the foot hangs free.
const overhang = 0.4

// evenly places n straps along the arc, alike from both feet, in whole
// percents.
func evenly(n int) []float64 {
	run := 1 / (float64(n-1) + 2*overhang)
	out := make([]float64, n)
	for i := range n / 2 {
		at := math.Round(100*(overhang*run+float64(i)*run)) / 100
		out[i], out[n-1-i] = at, 1-at
	}
	if n%2 == 1 {
		out[n/2] = 0.5
	}
	return out
}

// plan is a rib on its straps.
type plan struct {
	depth, setting float64
	straps         int
	cost           float64
}

// What a plan costs: a deeper rib, a strap more than its depth needs, and a
// strap that has to be set finer.
const (
	strapCost, settingCost = 0.4, 1.5
	slender                = 24 // clear run by depth of rib, a first guess that the rule corrects
	mostStraps             = 24
)

// plans lists ribs on straps, the plainest first.
func (d *drafter) plans() []plan {
	var out []plan
	for i, depth := range d.sizes.depths {
		least := max(2, int(math.Ceil(d.arc/(slender*depth)-2*overhang+1)))
		for more := range 3 {
			for k, setting := range d.sizes.settings {
				if n := least + more; n <= mostStraps {
					out = append(out, plan{depth, setting, n, float64(i) + strapCost*float64(more) + settingCost*float64(k)})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b plan) int { return cmp.Compare(a.cost, b.cost) })
	return out
}

// next is the entry of a list, which falls, after a value; ok is false at its
// end.
func next(list []float64, v float64) (float64, bool) {
	for _, x := range list {
		if x < v*(1-1e-9) {
			return x, true
		}
	}
	return v, false
}

// strips lists the thicknesses that divide a depth evenly, two strips or more.
func (s sizes) stripsOf(depth float64) []float64 {
	var out []float64
	for _, t := range s.strips {
		if n := depth / t; n > 1.5 && math.Abs(n-math.Round(n)) < 1e-6 {
			out = append(out, t)
		}
	}
	return out
}

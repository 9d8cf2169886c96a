package begin

import (
	"math"
	"slices"
)

// choice is all that a draft decides. Lengths are in m.
type choice struct {
	around, along         int
	depth, strip, skin    float64
	haunch                float64 // radius, of a three-centred vault
	stations              []float64
	setting, panel        float64 // plus or minus
	height, width, length float64 // of the room
	span, run, rise       float64 // of the vault, where they are worked from the room
	cover, above          float64
	people                int
}

// What makes a grid: coffers that are a little longer than wide, lie with the
// room, are not too many to take in, and leave one of them at the crown.
const (
	leastModule, mostModule = 0.32, 1.48
	goodRatio, mostRatio    = 1.2, 1.6
	goodCount               = 40
)

type grid struct {
	around, along int
	score         float64
}

// grids lists the divisions worth trying, the best first. The clear bay may not
// be over the sheet's straight edge.
func (d *drafter) grids() []grid {
	target := min(1.0, max(0.5, math.Sqrt(d.arc*d.length/goodCount)))
	var out []grid
	given := d.wanted.Around > 0 || d.wanted.Along > 0
	for _, around := range counts(d.wanted.Around, d.arc) {
		for _, along := range counts(d.wanted.Along, d.length) {
			ma, ml := d.arc/float64(around), d.length/float64(along)
			ratio := max(ma, ml) / min(ma, ml)
			if !given && (ma > mostModule || ml > mostModule || ratio > mostRatio || ml-d.sizes.width > d.sizes.sheet[0]) {
				continue
			}
			score := math.Abs(math.Log(math.Sqrt(ma*ml)/target)) + math.Abs(math.Log(ratio/goodRatio))
			if (d.length > d.span) != (ml > ma) {
				score += 0.5
			}
			if around%2 == 0 {
				score += 0.15
			}
			out = append(out, grid{around, along, score})
		}
	}
	slices.SortStableFunc(out, func(a, b grid) int {
		switch {
		case a.score < b.score:
			return -1
		case a.score > b.score:
			return 1
		default:
			return 0
		}
	})
	return out
}

// counts lists those into which a length may be divided: the one that is given, or
// all that leave a module.
func counts(given int, length float64) []int {
	if given > 0 {
		return []int{given}
	}
	var out []int
	for n := 1; n <= int(length/leastModule); n++ {
		out = append(out, n)
	}
	return out
}

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
	slices.SortStableFunc(out, func(a, b plan) int {
		switch {
		case a.cost < b.cost:
			return -1
		case a.cost > b.cost:
			return 1
		default:
			return 0
		}
	})
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

package begin

import (
	"cmp"
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
	slices.SortStableFunc(out, func(a, b grid) int { return cmp.Compare(a.score, b.score) })
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

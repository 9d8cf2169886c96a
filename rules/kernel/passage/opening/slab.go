package opening

import (
	"cmp"
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// slabPlaces are the places of the middle line, as shares of it, at which the
// part of the body within a wall is looked at.
var slabPlaces = []float64{0.5, 0.3, 0.12}

// tooWide proves, if it can, that no motion takes the body through an opening.
//
// Theorem. On any way from one side of an endless wall to the other, every point
// P of the body is at some instant in the wall's middle plane. What is then
// within half of the wall's thickness of that plane is in the opening, with its
// wrap; so is what is up to half of the wrap further out, with √3/2 of it. So if
// for one P that part is larger than the opening at every turn, no motion
// exists. Derived.
//
// Method. Cells of turns, P at x = 0. Of each ruling of the section's outline the
// part that is within the wall for the whole cell counts, and of each of its ends
// no less than what the cell leaves of it along the opening's sides.
func tooWide(b *passage.Body, d Door, budget *passage.Budget) (proven, ranOut bool) {
	for _, at := range knownOf(b).places() {
		proven, out := newSlabCover(b, d, at, 1).all(budget)
		if proven {
			return true, false
		}
		ranOut = ranOut || out
	}
	return false, ranOut
}

func newSlabCover(b *passage.Body, d Door, at slabPlace, lean float64) *slabCover {
	return &slabCover{b: b, d: d, half: d.Wall/2 + b.Wrap()/2, wraps: math.Sqrt(3) * b.Wrap(), lean: lean, slabPlace: at}
}

// slabPoints is about how many of the outline's corners are looked at: fewer
// prove less, and nothing wrong.
const slabPoints = 96

// placesInWall are those of the slabPlaces.
func placesInWall(b *passage.Body) []slabPlace {
	m := b.Middle()
	if len(m) == 0 {
		return nil
	}
	var out []slabPlace
	for _, share := range slabPlaces {
		out = append(out, placeInWall(b, m[int(share*float64(len(m)-1)+0.5)].At, b.Mirrored() && share == 0.5))
	}
	return out
}

func placeInWall(b *passage.Body, p space.Point, even bool) slabPlace {
	if even {
		p.X = 0
	}
	step := max(1, len(b.Section())/slabPoints)
	from := make([]slabPoint, 0, len(b.Section())/step+1)
	for i := 0; i < len(b.Section()); i += step {
		v := b.Section()[i].Minus(p)
		from = append(from, slabPoint{v, math.Hypot(v.X, v.Y)})
	}
	slices.SortStableFunc(from, func(a, b slabPoint) int { return cmp.Compare(a.far, b.far) })
	return slabPlace{p, from, even}
}

// within2 is the range of x from 0 to most with |x·u + c| + x·s ≤ k.
func within2(u, c, s, k, most float64) (lo, hi float64, ok bool) {
	lo, hi = 0, most
	for _, sign := range [2]float64{1, -1} {
		f, r := sign*u+s, k-sign*c // x·f ≤ r
		switch {
		case f > 0:
			hi = min(hi, r/f)
		case f < 0:
			lo = max(lo, r/f)
		case r < 0:
			return 0, 0, false
		}
	}
	return lo, hi, lo <= hi
}

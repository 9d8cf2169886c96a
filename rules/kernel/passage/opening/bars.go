package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
)

// plank is the two lesser sides of a straight bar that lies inside the body.
type plank struct{ less, more float64 }

// The bars that are looked for: about so many stations of the middle line, from
// a least length on by steps.
const (
	plankStations = 9
	plankFirst    = 0.03
	plankGrowth   = 1.08
)

// planks are the bars inside the body that matter: of each length the clear
// height of the section about a station, by the body's length. Those that are
// within another are left out.
func planks(b *passage.Body) []plank {
	var out []plank
	n := 2 * b.Half()
	add := func(l, t float64) {
		p := plank{min(l, t, n), l + t + n - min(l, t, n) - max(l, t, n)}
		for i := 0; i < len(out); i++ {
			if out[i].less >= p.less && out[i].more >= p.more {
				return
			}
			if out[i].less <= p.less && out[i].more <= p.more {
				out[i] = out[len(out)-1]
				out = out[:len(out)-1]
				i--
			}
		}
		out = append(out, p)
	}
	if isBox(b) {
		add(b.Wide(), b.High())
		return out
	}
	middle := b.Middle()
	for i := range plankStations {
		if len(middle) == 0 {
			break
		}
		at := middle[(2*i+1)*len(middle)/(2*plankStations)]
		for l := plankFirst; ; l *= plankGrowth {
			t := b.ClearHeight(at, l)
			if t <= 0 {
				break
			}
			add(l, t)
		}
	}
	return out
}

// isBox reports whether the section is a rectangle, level.
func isBox(b *passage.Body) bool {
	if len(b.Hull()) != 4 {
		return false
	}
	for _, p := range b.Section() {
		if math.Abs(p.X) < b.Wide()/2-passage.AlikeShare*b.Wide() && math.Abs(p.Y) < b.High()/2-passage.AlikeShare*b.High() {
			return false
		}
	}
	for _, p := range b.Hull() {
		if math.Abs(math.Abs(p.X)-b.Wide()/2) > passage.AlikeShare*b.Wide() || math.Abs(math.Abs(p.Y)-b.High()/2) > passage.AlikeShare*b.High() {
			return false
		}
	}
	return true
}

// Barred reports whether a bar inside the body does not go through an opening of a
// by h, in m, all in the wrap. True proves that no motion takes the body through;
// false proves nothing.
//
// Theorem. Let a straight bar d1 ≤ d2 ≤ d3 be inside a body. If d1 by d2 does not
// go into the opening, turned in its plane as need be, no motion whatever takes the
// body through. For let the bar's middle be in the plane of the opening, as it is
// at some instant. Seen by the duality of norms, the bar's section with the plane
// has along the opening's first side at least the width d1·cos ω + d2·sin ω, or d2
// alone, and along the second d1·sin ω + d2·cos ω, or d2 alone, ω the angle in the
// plane between that side and the bar's edge: so d1 by d2, turned by ω or not at
// all, goes into the opening. Derived.
func Barred(b *passage.Body, a, h float64) bool {
	a, h = a-2*b.Wrap(), h-2*b.Wrap()
	a, h = max(a, h), min(a, h)
	for _, p := range knownOf(b).bars() {
		if h <= 0 || !fits(p.more, p.less, a, h) {
			return true
		}
	}
	return false
}

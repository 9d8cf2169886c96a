package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// The leaning uprights: so many directions about each long side, and how much more than
// the least they lean.
const leaning = 12

var leanMore = [3]float64{0, 0.15, 0.4}

// leaningUps are the directions that are upright where a long side of the body leans as
// steeply as the height lets it, or somewhat less.
func (l *landing) leaningUps() (out []space.Vec) {
	for _, long := range []space.Vec{{Y: 1}, {Z: 1}, {X: 1}} {
		for k := range leaning {
			a := 2 * math.Pi * float64(k) / leaning
			out = append(out, l.leans(long, space.About(long, a)[0])...)
		}
	}
	return out
}

// leans are those of them that lean one way.
func (l *landing) leans(long, away space.Vec) (out []space.Vec) {
	steep := l.steepest(long, away)
	for _, more := range leanMore {
		if at := steep + more; steep > 0 && at < math.Pi/2 {
			s, c := math.Sincos(at)
			out = append(out, long.Times(c).Add(away.Times(s)))
		}
	}
	return out
}

// plainUp is a direction of the body that is upright on a landing, and what that way of
// carrying it is called.
type plainUp struct {
	up  space.Vec
	way passage.Way
}

// plainUps are the body's own axes, and those of its own chord, both ways up.
func plainUps(b *passage.Body) (out []plainUp) {
	ups := []plainUp{{space.Vec{X: 1}, passage.OnEdge}, {space.Vec{Z: 1}, passage.AsHung}, {space.Vec{Y: 1}, passage.OnFoot}}
	if b.Own().Angle != 0 {
		s, k := math.Sincos(b.Own().Angle)
		ups = append(ups, plainUp{space.Vec{Y: s, Z: k}, passage.OnOwnChord}, plainUp{space.Vec{Y: k, Z: -s}, passage.OnFoot})
	}
	for _, u := range ups {
		out = append(out, u, plainUp{u.up.Times(-1), u.way})
	}
	return out
}

// steepest is the least angle of a direction off the upright, towards another, at which
// the body is under the headroom; 0 if it is upright, or at no angle.
func (l *landing) steepest(long, away space.Vec) float64 {
	fits := func(at float64) bool {
		s, c := math.Sincos(at)
		return l.b.Width(long.Times(c).Add(away.Times(s))) <= l.s.Headroom-2*l.off
	}
	low, high := 0.0, math.Pi/2
	if fits(low) || !fits(high) {
		return 0
	}
	for range 20 {
		if mid := (low + high) / 2; fits(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

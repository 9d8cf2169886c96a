// Package outline draws the sections of bodies, for tests. Lengths are in m and angles in
// rad.
package outline

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Arc is a piece of a ring of an inner radius, drawn to half an angle on both sides in
// some steps, its chords on both circles.
func Arc(radius, thick, half float64, steps int) []space.Point {
	var out []space.Point
	for _, side := range [2]float64{1, -1} {
		r := radius + thick/2 - side*thick/2
		for i := range steps + 1 {
			s, c := math.Sincos(side * half * (2*float64(i)/float64(steps) - 1))
			out = append(out, space.Point{X: r * s, Y: r * c})
		}
	}
	return out
}

// Rectangle is one of p by q, from the origin on.
func Rectangle(p, q float64) []space.Point {
	return []space.Point{{}, {X: p}, {X: p, Y: q}, {Y: q}}
}

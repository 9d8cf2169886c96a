package passage

import "math"

// Strip is a curved strip between two radii about one centre, spanning half of
// its angle to each side.
type Strip struct {
	Inner, Outer float64
	Half         float64 // rad
}

// Threaded is what a strip needs to be pushed along its own circle through an
// opening with parallel jambs in a wall of thickness t.
type Threaded struct {
	Width float64 // of the opening
	Depth float64 // free on each side of the wall, from its face
	Side  float64 // free to the concave side of the opening, on each side of the wall
}

// Thread pushes a strip along its own circle, its centre on the middle plane of
// the wall. Inside the wall the strip reaches out to its outer radius and in to
// where the inner one meets the faces:
//
//	width = Ro − Ri·cos(min(2·φ, asin(t/(2·Ri))))
//
// which a piece shorter than the wall needs too, but for one so short that no
// part of it is at the middle while another is at a face. Such a piece is better
// pushed straight. A centre off the middle plane needs more. The parts that are not in the wall
// sweep the floor before it and beyond it: up to the whole strip's angle from
// the wall. Exact; derived.
func (s Strip) Thread(wall float64) Threaded {
	inside := 2 * s.Half
	if wall < 2*s.Inner {
		inside = min(2*s.Half, math.Asin(wall/(2*s.Inner)))
	}
	swept := 2 * s.Half
	return Threaded{
		Width: s.Outer - s.Inner*math.Cos(inside),
		Depth: max(0, s.Outer*math.Sin(min(swept, math.Pi/2))-wall/2),
		Side:  s.Outer - s.Inner*math.Cos(min(swept, math.Pi)),
	}
}

// Straight is the width that a strip needs when it is pushed straight along its
// chord instead: its own extent across it.
func (s Strip) Straight() float64 { return s.Outer - s.Inner*math.Cos(min(s.Half, math.Pi/2)) }

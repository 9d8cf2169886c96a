package passage_test

import (
	"math"
	"math/rand/v2"

	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/stair"
)

// anyStair is 900 to 1500 mm wide with 2 to 2.6 m of headroom and 8 to 17 steps; its landing
// is as wide as a flight at the least, as two at a half turn. All that a stair may state is
// known: corridors are past its ends, and a straight one is in the middle of its landing.
func anyStair(r *rand.Rand) stair.Stair {
	s := stair.Stair{
		Turn: stair.Turn(1 + r.IntN(3)), Width: draw(r, 0.9, 1.5), Headroom: draw(r, 2, 2.6),
		Rise: draw(r, 0.15, 0.19), Going: draw(r, 0.25, 0.3), Risers: 8 + r.IntN(10),
	}
	s.Length, s.Across = s.Width+draw(r, 0, 0.6), s.Width+draw(r, 0, 1.5)
	s.Corridors, s.Placed = true, s.Turn == stair.Straight
	s.Left = (s.Across - s.Width) / 2
	if s.Turn == stair.Half {
		s.Across = 2*s.Width + draw(r, 0, 0.6)
	}
	return s
}

// below is how far a place is over a solid that is below both 0 and the slope, from
// there on against Y.
func below(slope, y, z float64) float64 {
	cos := 1 / math.Hypot(1, slope)
	switch {
	case y >= 0:
		return z
	case y+slope*z > 0:
		return math.Hypot(y, z) * math.Copysign(1, z-slope*y)
	default:
		return (z - slope*y) * cos
	}
}

// offQuadrant is how far a place is off all that is below 0 both ways.
func offQuadrant(x, y float64) float64 {
	if x > 0 && y > 0 {
		return math.Hypot(x, y)
	}
	return max(x, y)
}

// flightWalls are floor and soffit of a flight that comes up to Y = 0, from the floor at
// its foot; its own soffit is lower by so much.
func flightWalls(s stair.Stair, lower, y, z float64) float64 {
	slope, deep := s.Rise/s.Going, s.Rise*float64(s.Risers)
	foot := (lower - deep) / slope
	return min(below(slope, y, z), z+deep, s.Headroom-z, below(slope, foot-y, s.Headroom-deep-z))
}

// stairWalls are outer walls and landing's end, the wall between the flights or the
// block inside the corner, and floors and soffits.
func stairWalls(s stair.Stair) func(space.Vec) float64 {
	return func(p space.Vec) float64 {
		switch s.Turn {
		case stair.Straight:
			return min(offQuadrant(p.X, p.Y), offQuadrant(s.Width-p.X, p.Y), beside(p.X, -s.Left, s.Across-s.Left), flightWalls(s, 0, p.Y, p.Z))
		case stair.Quarter:
			return min(cornerWalls(corner.Corner{Width: s.Width, Onward: s.Length, Height: math.Inf(1)})(space.Vec{X: p.X, Y: s.Length - p.Y, Z: 10}),
				overBoth(s, p.Y, s.Across-p.X, p.Z, p.Y < 0))
		default:
			wall := p.Y
			if off := max(s.Width-p.X, p.X-s.Across+s.Width); off > 0 {
				wall = math.Hypot(off, max(0, p.Y))
			}
			return min(beside(p.X, 0, s.Across), s.Length-p.Y, wall, overBoth(s, p.Y, p.Y, p.Z, p.X < s.Across/2))
		}
	}
}

// overBoth are floors and soffits of the flight that comes up, before y = 0, and of the
// one that goes on, past on = 0, which is the first one upside down with its first riser
// at the landing.
func overBoth(s stair.Stair, y, on, z float64, first bool) float64 {
	if first && y < 0 {
		return flightWalls(s, 0, y, z)
	}
	if on < 0 {
		return flightWalls(s, s.Rise, on, s.Headroom-z)
	}
	riser := math.Inf(1)
	if !first || s.Turn == stair.Quarter {
		riser = math.Hypot(on, max(0, z-s.Rise))
	}
	return min(z, s.Headroom-z, riser)
}

package turns

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// none is less than any margin.
var none = math.Inf(-1)

// Probe is a place of the body, and how far it is from the origin.
type Probe struct {
	space.Vec
	Square float64 // of that distance, in m²
}

// Bounds is what a coordinate of a place is at least and at most over a cell of
// turns, in m.
type Bounds struct{ Low, High float64 }

// TurnBounds are those of d·e, in m, over every unit vector e within an angle of one for which
// the product is m, l2 being the square of d's length: see space.Angle.Least.
func TurnBounds(a space.Angle, m, l2 float64) Bounds {
	side, across := m*a.Cos, math.Sqrt(max(0, l2-m*m))*a.Sin
	out := Bounds{side - across, side + across}
	c := a.Cos * math.Abs(a.Cos) * l2
	if m*math.Abs(m)+c < 0 {
		out.Low = -math.Sqrt(l2)
	}
	if c-m*math.Abs(m) < 0 {
		out.High = math.Sqrt(l2)
	}
	return out
}

// Both is what is within two bounds.
func (b Bounds) Both(c Bounds) Bounds { return Bounds{max(b.Low, c.Low), min(b.High, c.High)} }

// ProbeCoarse is how far the body with fewer corners may be from the true one, in m.
const ProbeCoarse = 0.004

// Seen is what the three coordinates of each probe are.
type Seen [][3]Bounds

package turns

import "dryfit/rules/kernel/passage/space"

// Reached is how far something certainly reaches along one side of an opening, in m:
// from Low up to High at the least, and nowhere where Low is above High.
type Reached struct{ High, Low float64 }

// Take counts a place that is m along the side, l2 the square of how far it is, turned by
// any angle up to a.
func (r *Reached) Take(m, l2 float64, a space.Angle) {
	if m*a.Cos > r.High || a.Cos < 0 {
		r.High = max(r.High, a.Least(m, l2))
	}
	if m*a.Cos < r.Low || a.Cos < 0 {
		r.Low = min(r.Low, -a.Least(-m, l2))
	}
}

// Add counts a place that is somewhere within bounds along the side.
func (r *Reached) Add(b Bounds) {
	if b.Low > r.High {
		r.High = b.Low
	}
	if b.High < r.Low {
		r.Low = b.High
	}
}

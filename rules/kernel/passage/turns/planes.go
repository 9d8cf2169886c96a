package turns

import (
	"math"

	"dryfit/rules/kernel/passage"
)

// Plane is a linear function of the shares, At + By·s, in m.
type Plane struct {
	At float64
	By Shares
}

// Most is its greatest value.
func (p *Plane) Most() float64 { return p.At + p.By.Most() }

// planes is how many planes are mixed at most.
const planes = 6

// Most is what is left at most over a cell, and at in the middle of it, in m, least being
// the plane that leaves the least at some shares. The bound is by a mean of planes, each of
// which is the least one where the mean before it is greatest. It ends where something is
// left. Any mean of planes bounds what is left, since the least of them does.
func Most(least func(*Shares) Plane) (most, at float64) {
	mean := least(&Shares{})
	at = mean.At
	if at >= 0 {
		return mean.Most(), at
	}
	for range planes {
		if most = mean.Most(); most < 0 {
			break
		}
		var far Shares
		for i, d := range mean.By {
			if d != 0 {
				far[i] = math.Copysign(1, d)
			}
		}
		next := least(&far)
		if next.At+next.By.Dot(&far) >= 0 {
			break
		}
		mean = mixed(mean, next)
		if mean.Most() > most-passage.Settled {
			break
		}
	}
	return mean.Most(), at
}

// mixed is the mean of two planes whose greatest value is the least: there one of
// its slopes is nothing, or it is one of the two.
func mixed(a, b Plane) Plane {
	best := a
	take := func(f float64) {
		if !(f > 0 && f <= 1) {
			return
		}
		m := Plane{At: a.At + f*(b.At-a.At)}
		for n := range m.By {
			m.By[n] = a.By[n] + f*(b.By[n]-a.By[n])
		}
		if m.Most() < best.Most() {
			best = m
		}
	}
	take(1)
	for n := range a.By {
		take(a.By[n] / (a.By[n] - b.By[n]))
	}
	return best
}

package hanging

import "math"

// Counts is the least share of the weight that a support carries to count as
// one: less can't be told from nothing, by the masses or by the solution.
const Counts = 0.005

// balance is the tipping margin of the solved case, at most 0.5: the distance of
// the mass centre from the nearer of the outermost supports that count, as a share
// of the distance between these; below 0 where the mass centre is outside of them.
// With fewer than two of them it is 0. Derived from the balance of moments.
func (r *runner) balance() float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for i, s := range r.brief.Springs {
		if abs(s.Force) >= Counts*r.rib.weight {
			x := r.rib.nodes[r.sprung[i]].X
			left, right = min(left, x), max(right, x)
		}
	}
	if !(right-left > apart) {
		return 0
	}
	return min(r.centre-left, right-r.centre) / (right - left)
}

// Tips reports whether the rib swings or tips on its supports: whether its tipping
// margin is 0 or less.
func (c *Case) Tips() bool { return c.Margin <= 0 }

// centre is the mass centre of the rib across the span.
func (r *rib) centre() float64 {
	moment, weight := 0.0, 0.0
	for _, l := range r.loads {
		moment -= l.Y*r.nodes[l.Node].X + l.Couple
		weight -= l.Y
	}
	for _, s := range r.spread {
		a, b := r.nodes[s.Element], r.nodes[s.Element+1]
		w := -s.Y * distance(a, b)
		moment += w * (a.X + b.X) / 2
		weight += w
	}
	return moment / weight
}

// hung reports whether the case has a tipping margin: with straps set, framing moved
// or a rib bent by a season, a slack strap catches again after millimetres. With lifts
// down it is that of the straps as first hung, but for the lifts that are left.
func (id ID) hung() bool {
	switch id.Kind {
	case StrapSet, FramingMoved, InSeason, LiftDown, LiftsDown:
		return false
	default:
		return true
	}
}

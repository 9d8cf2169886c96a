package engine

import (
	"cmp"
	"math"
	"slices"
)

// Worse lists the holds and queries of a spec that an earlier state of it did
// not have, or not as badly: more severe, more of them at one place, or further
// past their limit. What is accepted now is left out.
func Worse(earlier, now []Finding) []Finding { return PlacesOf(earlier).Worse(now) }

// Worse is [Worse] than the findings that the places are of.
func (p Places) Worse(now []Finding) []Finding {
	had := map[placed]int{} // so many of those at a place are still there
	var out []Finding
	for _, f := range now {
		if f.Accepted != nil || !f.weighs() {
			continue
		}
		at := placed{f.Rule, f.At}
		before := p[at][had[at]:]
		if len(before) == 0 || f.worse(before[0]) {
			out = append(out, f)
			continue
		}
		had[at]++
	}
	return out
}

// Places are the holds and queries of a spec by rule and place, the worst first, for who
// compares many states with one.
type Places map[placed][]Finding

type placed struct {
	rule *Rule
	at   string
}

// PlacesOf are the places of a list of findings.
func PlacesOf(list []Finding) Places {
	out := Places{}
	for _, f := range list {
		if f.weighs() {
			out[placed{f.Rule, f.At}] = append(out[placed{f.Rule, f.At}], f)
		}
	}
	for _, at := range out {
		slices.SortStableFunc(at, func(a, b Finding) int {
			x, _ := a.past()
			y, _ := b.past()
			return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(y, x))
		})
	}
	return out
}

// worse reports whether a finding says more than another, or its figure lies
// further past its limit by more than round-off.
func (f Finding) worse(than Finding) bool {
	if f.Severity != than.Severity {
		return f.Severity > than.Severity
	}
	now, ok := f.past()
	before, had := than.past()
	const roundOff = 1e-6 // as a share of the limit
	return ok && had && now > before+roundOff*math.Abs(f.Bound.SI)
}

func (f Finding) weighs() bool { return f.Severity == Hold || f.Severity == Query }

package compare

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// FindingChange is a finding that came, went, or is of the same rule and place
// and says another severity, measured value, limit or acceptance. Old and New
// are nil where there is none.
type FindingChange struct {
	Kind     Kind
	Old, New *engine.Finding
	// Unchecked marks one that went because its rule is no longer checked.
	Unchecked bool
}

// Finding is the new one, or the old one where it went.
func (f FindingChange) Finding() *engine.Finding {
	if f.New != nil {
		return f.New
	}
	return f.Old
}

// Coverage is a rule that is not checked any more (Added to those not checked),
// or is now (Removed from them), and what it lacks.
type Coverage struct {
	Kind   Kind
	Rule   *engine.Rule
	Needs  string
	Why    string
	Failed bool
}

func coverageOf(before, after *review.Assessment) []Coverage {
	var out []Coverage
	list := func(kind Kind, from, other []engine.NotChecked) {
		var last *engine.Rule
		for _, n := range from {
			there := slices.ContainsFunc(other, func(o engine.NotChecked) bool { return o.Rule.ID == n.Rule.ID && o.Failed == n.Failed })
			if !there && n.Rule != last {
				out, last = append(out, Coverage{kind, n.Rule, n.Key, n.Why, n.Failed}), n.Rule
			}
		}
	}
	list(Added, after.NotChecked, before.NotChecked)
	list(Removed, before.NotChecked, after.NotChecked)
	return out
}

func findingsOf(before, after *review.Assessment, k *keys, threshold float64) []FindingChange {
	partners := make([]*engine.Finding, len(after.Findings))
	used := make([]bool, len(before.Findings))
	// Those that say the same are partners first, then what is left of the same
	// rule and place.
	for _, words := range []bool{true, false} {
		for i := range after.Findings {
			f := &after.Findings[i]
			for j := range before.Findings {
				b := &before.Findings[j]
				if partners[i] != nil || used[j] || b.Rule.ID != f.Rule.ID || k.renumber(b.At) != f.At || words && b.Text != f.Text {
					continue
				}
				partners[i], used[j] = b, true
			}
		}
	}
	var out []FindingChange
	for i := range after.Findings {
		switch f, was := &after.Findings[i], partners[i]; {
		case was == nil:
			out = append(out, FindingChange{Kind: Added, New: f})
		case shifted(was, f, threshold):
			out = append(out, FindingChange{Kind: Changed, Old: was, New: f})
		}
	}
	for j := range before.Findings {
		if used[j] {
			continue
		}
		f := &before.Findings[j]
		unchecked := slices.ContainsFunc(after.NotChecked, func(n engine.NotChecked) bool { return n.Rule.ID == f.Rule.ID })
		out = append(out, FindingChange{Kind: Removed, Old: f, Unchecked: unchecked})
	}
	return out
}

func shifted(a, b *engine.Finding, threshold float64) bool {
	return a.Severity != b.Severity || (a.Accepted == nil) != (b.Accepted == nil) ||
		moved(a.Measured, b.Measured, threshold) || moved(a.Bound.Value, b.Bound.Value, threshold)
}

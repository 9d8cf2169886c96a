package review

import (
	"dryfit/rules"
	"dryfit/schema"
	"dryfit/spec"
)

// offer tries the candidates of each finding and keeps the first that clears
// it and brings no new hold or query.
func (s *Sheet) offer(o Options) {
	for i := range s.Findings {
		if s.Findings[i].Accepted != nil {
			continue
		}
		for _, candidate := range s.Findings[i].Offers {
			if s.passes(candidate, s.Findings[i], o) {
				s.Findings[i].Passes = &candidate
				break
			}
		}
	}
}

// passes runs all rules on the spec with one value changed.
func (s *Sheet) passes(offer rules.Offer, cured rules.Finding, o Options) bool {
	tree, ok := spec.With(s.Document.Tree, offer.Key, offer.Value)
	if !ok || !schema.Fits(tree) {
		return false // a count of nothing, a length below zero
	}
	_, outcome, faults := work(tree, o)
	if len(faults) > 0 {
		return false
	}
	for _, n := range outcome.NotChecked {
		if n.Rule == cured.Rule {
			return false // silent, but not because it passes
		}
	}
	for _, f := range outcome.Findings {
		if same(f, cured) || (weighs(f) && !s.has(f)) {
			return false
		}
	}
	return true
}

// same reports whether two findings are of one rule and one place.
func same(a, b rules.Finding) bool { return a.Rule == b.Rule && a.At == b.At }

func weighs(f rules.Finding) bool {
	return f.Severity == rules.Hold || f.Severity == rules.Query
}

func (s *Sheet) has(f rules.Finding) bool {
	for _, had := range s.Findings {
		if same(had, f) && weighs(had) && had.Severity >= f.Severity {
			return true
		}
	}
	return false
}

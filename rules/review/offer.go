package review

import (
	"fmt"

	"dryfit/rules"
	"dryfit/schema"
	"dryfit/spec"
)

// MostTried is how many changed specs one sheet tries. A spec that is wrong in
// more places is not put right one value at a time.
const MostTried = 64

// trials are the candidates that have been tried on one sheet.
type trials struct {
	sheet    *Sheet
	options  Options
	had      map[found]rules.Severity // the holds and queries before any change
	outcomes map[string]*rules.Outcome
}

// found is what two findings have in common that are of one rule and one place.
type found struct {
	rule *rules.Rule
	at   string
}

func placeOf(f rules.Finding) found { return found{f.Rule, f.At} }

// offer tries the candidates of each finding and keeps the first that clears
// it and brings no new hold or query.
func (s *Sheet) offer(o Options) {
	t := trials{s, o, map[found]rules.Severity{}, map[string]*rules.Outcome{}}
	for _, f := range s.Findings {
		if weighs(f) {
			t.had[placeOf(f)] = max(t.had[placeOf(f)], f.Severity)
		}
	}
	for i := range s.Findings {
		if s.Findings[i].Accepted != nil {
			continue
		}
		for _, candidate := range s.Findings[i].Offers {
			if t.passes(candidate, s.Findings[i]) {
				s.Findings[i].Passes = &candidate
				break
			}
		}
	}
}

// passes reports whether a change clears a finding, by all rules.
func (t *trials) passes(offer rules.Offer, cured rules.Finding) bool {
	outcome := t.with(offer)
	if outcome == nil {
		return false
	}
	for _, n := range outcome.NotChecked {
		if n.Rule == cured.Rule {
			return false // silent, but not because it passes
		}
	}
	for _, f := range outcome.Findings {
		if same(f, cured) || weighs(f) && t.had[placeOf(f)] < f.Severity {
			return false
		}
	}
	return true
}

// with runs all rules on the spec with one value changed; findings often offer
// the same. Nil where the change makes no ceiling, or enough was tried.
func (t *trials) with(offer rules.Offer) *rules.Outcome {
	name := fmt.Sprintf("%s = %v", offer.Key, offer.Value)
	if outcome, tried := t.outcomes[name]; tried || len(t.outcomes) >= MostTried {
		return outcome
	}
	t.outcomes[name] = nil
	tree, ok := spec.With(t.sheet.Document.Tree, offer.Key, offer.Value)
	if !ok || !schema.Fits(tree) {
		return nil // a count of nothing, a length below zero
	}
	if _, outcome, faults := work(tree, t.options); len(faults) == 0 {
		t.outcomes[name] = &outcome
	}
	return t.outcomes[name]
}

// same reports whether two findings are of one rule and one place.
func same(a, b rules.Finding) bool { return placeOf(a) == placeOf(b) }

func weighs(f rules.Finding) bool {
	return f.Severity == rules.Hold || f.Severity == rules.Query
}

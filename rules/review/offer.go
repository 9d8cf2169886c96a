package review

import (
	"cmp"
	"fmt"
	"slices"

	"dryfit/rules"
	"dryfit/rules/result/carrying"
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
	had      []rules.Finding // before any change
	outcomes map[string]*rules.Outcome
}

// offer tries the candidates of each finding, in the order in which a shop would
// rather change them, and keeps the first that clears it and makes nothing else
// worse.
func (s *Sheet) offer(o Options) {
	o.Search.Brief, o.Search.Memory = true, carrying.NewMemory()
	t := trials{s, o, slices.Clone(s.Findings), map[string]*rules.Outcome{}}
	order := o.Standards.Order()
	for i := range s.Findings {
		if s.Findings[i].Accepted != nil {
			continue
		}
		candidates := slices.Clone(s.Findings[i].Offers)
		slices.SortStableFunc(candidates, func(a, b rules.Offer) int { return cmp.Compare(order.Place(a.Key), order.Place(b.Key)) })
		for _, candidate := range candidates {
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
	if outcome == nil || !t.sheet.Reads(cured.Rule, offer.Key) {
		return false
	}
	for _, n := range outcome.NotChecked {
		if n.Rule == cured.Rule {
			return false // silent, but not because it passes
		}
	}
	again := func(f rules.Finding) bool { return same(f, cured) }
	return !slices.ContainsFunc(outcome.Findings, again) && len(rules.Worse(t.had, distinct(slices.Clone(outcome.Findings)))) == 0
}

// with runs the rules on the spec with one value changed, but for those that have
// not read it: they find what they found. Findings often offer the same. Nil where
// the change makes no ceiling, or enough was tried.
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
	o := t.options
	o.Rules = slices.DeleteFunc(slices.Clone(o.Rules), func(r *rules.Rule) bool { return !t.sheet.Reads(r, offer.Key) })
	if _, outcome, faults := work(tree, o); len(faults) == 0 {
		t.outcomes[name] = &outcome
	}
	return t.outcomes[name]
}

// Reads reports whether a rule has read a key, or one in it, for the sheet. Where
// it has not, no value of the key changes what it says.
func (s *Sheet) Reads(r *rules.Rule, key string) bool { return !spec.IDs(key).And(s.Inputs[r]).Empty() }

// same reports whether two findings are of one rule and one place.
func same(a, b rules.Finding) bool { return a.Rule == b.Rule && a.At == b.At }

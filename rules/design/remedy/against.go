package remedy

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/schema"
)

// tied are the keys that the findings name, that could be changed, and that
// may not be.
func (s *search) tied(list []engine.Finding) []string {
	var out []string
	everything := allowed{named: tables()}
	for _, k := range s.base.knobs(everything) {
		named := slices.ContainsFunc(list, func(f engine.Finding) bool { return names(f, k.key) })
		if named && !s.may.key(k.key) {
			out = append(out, k.key)
		}
	}
	return out
}

// needed is the cheapest set of changes, of keys that may change and of others,
// that would be an answer: those of the others.
func (s *search) needed() []Change {
	t := *s.trial
	t.limit = s.reviews + (s.limit-s.reviews)/2
	sub := newSearch(&t, allowed{named: tables()}, 1)
	sub.explore()
	s.reviews = t.reviews
	for _, st := range sub.distinct() {
		return slices.DeleteFunc(slices.Clone(st.changes), func(c Change) bool { return s.may.key(c.Key) })
	}
	return nil
}

// tables are the top tables of a spec that something is built by.
func tables() []string {
	var out []string
	for _, p := range schema.Properties() {
		if p.Type == "object" || p.Type == "array" {
			if p.Path != "project" && p.Path != "accept" && !slices.ContainsFunc(out, func(t string) bool { return under(p.Path, t) }) {
				out = append(out, p.Path)
			}
		}
	}
	return out
}

// acceptances is the rule that the review knows acceptances by.
const acceptances = "accept.in-force"

// against is a least set of rules that can't be satisfied together: one rule
// after the other is left out, and stays out where the others still find no
// answer.
func (s *search) against() []*engine.Rule {
	var set []*engine.Rule
	for _, r := range s.options.Rules {
		if s.stood[r] {
			set = append(set, r)
		}
	}
	for i := 0; i < len(set) && !s.over(); {
		rest := slices.Delete(slices.Clone(set), i, i+1)
		if len(rest) > 0 && !s.solvable(rest, (s.limit-s.reviews)/(len(set)-i)) {
			set = rest
			continue
		}
		i++
	}
	return set
}

// solvable reports whether an answer to some of the rules is found within a
// number of reviews.
func (s *search) solvable(list []*engine.Rule, reviews int) bool {
	t := *s.trial
	t.options.Rules = list
	for _, r := range s.options.Rules {
		if r.ID == acceptances && !slices.Contains(list, r) {
			t.options.Rules = append(slices.Clone(list), r) // what is accepted stays accepted
		}
	}
	t.limit = min(s.limit, t.reviews+reviews)
	sub := newSearch(&t, s.may, 1)
	sub.explore()
	s.reviews = t.reviews
	return len(sub.answers) > 0
}

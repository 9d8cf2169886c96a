package review

import (
	"cmp"
	"fmt"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/schema"
	"dryfit/spec"
)

// MostTried is how many changed specs one assessment tries. A spec that is wrong in
// more places is not put right one value at a time.
const MostTried = 64

// trials are the candidates that have been tried for one spec.
type trials struct {
	assessment *Assessment
	options    Options
	had        engine.Places // before any change
	outcomes   map[string]attempt
}

// attempt is what became of a candidate: whether it makes nothing worse, which
// rules are not checked with it, and which find something, and where.
type attempt struct {
	sound  bool
	silent map[*engine.Rule]bool
	found  map[place]bool
}

// place is a rule, and a key at which it finds something.
type place struct {
	rule *engine.Rule
	at   string
}

// offer tries the candidates of each finding, in the order in which a shop would
// rather change them, and keeps the first that clears it and makes nothing else
// worse.
func (s *Assessment) offer(o Options) {
	o.Search.Brief, o.Like = true, nil
	t := trials{s, o, engine.PlacesOf(s.Findings), map[string]attempt{}}
	order := o.Standards.Order()
	for i := range s.Findings {
		if s.Findings[i].Accepted != nil {
			continue
		}
		candidates := slices.Clone(s.Findings[i].Offers)
		slices.SortStableFunc(candidates, func(a, b engine.Offer) int { return cmp.Compare(order.Place(a.Key), order.Place(b.Key)) })
		for _, candidate := range candidates {
			if t.passes(candidate, s.Findings[i]) {
				s.Findings[i].Passes = &candidate
				break
			}
		}
	}
}

// passes reports whether a change clears a finding, by all rules. A rule that is
// silent since it was not checked has not passed.
func (t *trials) passes(offer engine.Offer, cured engine.Finding) bool {
	got := t.with(offer)
	return got.sound && t.assessment.Reads(cured.Rule, offer.Key) && !got.silent[cured.Rule] && !got.found[place{cured.Rule, cured.At}]
}

// with runs the rules on the spec with one value changed, but for those that have
// not read it: they find what they found. Findings often offer the same. Nothing is
// sound where the change makes no ceiling, or enough was tried.
func (t *trials) with(offer engine.Offer) attempt {
	name := fmt.Sprintf("%s = %v", offer.Key, offer.Value)
	if got, tried := t.outcomes[name]; tried || len(t.outcomes) >= MostTried {
		return got
	}
	t.outcomes[name] = attempt{}
	tree, ok := spec.With(t.assessment.Document.Tree, offer.Key, offer.Value)
	if !ok || !schema.FitsAsDoes(t.assessment.Document.Tree, tree) {
		return attempt{} // a count of nothing, a length below zero
	}
	if ceiling, faults := layout.Resolve(tree, t.options.Standards, t.assessment.Ceiling); len(faults) == 0 {
		ceiling.Take(t.assessment.Said.Done)
		t.outcomes[name] = t.run(ceiling)
	}
	return t.outcomes[name]
}

// run runs the rules that have read what a changed ceiling has otherwise. Those that look
// at the way in come last, since they cost most: they are spared where another finds
// something worse.
func (t *trials) run(c *layout.Ceiling) attempt {
	var first, last []*engine.Rule
	changed, route := c.Differ(t.assessment.Ceiling), spec.IDs("route")
	for _, r := range t.options.Rules {
		switch read := t.assessment.Inputs[r]; {
		case changed.And(read).Empty():
		case !route.And(read).Empty():
			last = append(last, r)
		default:
			first = append(first, r)
		}
	}
	std := t.options.Standards
	outcome := engine.Run(first, c, std, engine.Means{Search: t.options.Search, Frames: t.options.Frames, Like: t.assessment.Said.Unsaid()})
	if t.worse(outcome) {
		return attempt{}
	}
	outcome.Run(last, c, std)
	outcome = tried(c, outcome, t.options)
	if t.worse(outcome) {
		return attempt{}
	}
	return became(outcome)
}

func (t *trials) worse(o engine.Outcome) bool {
	return len(t.had.Worse(distinct(slices.Clone(o.Findings)))) > 0
}

// became keeps of an outcome what is asked of it; most of it is the ceiling, and
// what was worked out of that.
func became(o engine.Outcome) attempt {
	got := attempt{sound: true, silent: map[*engine.Rule]bool{}, found: make(map[place]bool, len(o.Findings))}
	for _, n := range o.NotChecked {
		got.silent[n.Rule] = true
	}
	for _, f := range o.Findings {
		got.found[place{f.Rule, f.At}] = true
	}
	return got
}

// Reads reports whether a rule has read a key, or one in it, for the spec. Where
// it has not, no value of the key changes what it says.
func (s *Assessment) Reads(r *engine.Rule, key string) bool {
	return !spec.IDs(key).And(s.Inputs[r]).Empty()
}

package remedy

import (
	"cmp"
	"context"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Effect is what changes bring about, beside what they are made for.
type Effect struct {
	Clears []engine.Finding // holds, queries and notes that are gone, as they were
	Brings []engine.Finding // findings that are new, or more severe than before
	Worse  []engine.Finding // holds and queries of before that lie further past their limits
	Stays  []*engine.Rule   // rules that may hold, hang on what was changed, and find nothing as before
	Mass   float64          // kg that each panel gains
	Panels int              // that there are more
}

// Clean reports whether no hold or query is brought about or made worse.
func (e Effect) Clean() bool {
	return len(e.Worse) == 0 && !slices.ContainsFunc(e.Brings, func(f engine.Finding) bool {
		return f.Severity == engine.Hold || f.Severity == engine.Query
	})
}

// effect compares two assessments of a spec, with some keys changed between them.
func effect(before, after *review.Assessment, list []*engine.Rule, keys []string) Effect {
	e := Effect{
		Clears: missing(before.Findings, after.Findings, false),
		Brings: missing(after.Findings, before.Findings, true),
	}
	for _, f := range engine.Worse(before.Findings, after.Findings) {
		brought := func(g engine.Finding) bool { return g.Rule == f.Rule && g.At == f.At }
		if !slices.ContainsFunc(e.Brings, brought) {
			e.Worse = append(e.Worse, f)
		}
	}
	if before.Ceiling != nil && after.Ceiling != nil {
		b, a := before.Ceiling.Panel, after.Ceiling.Panel
		e.Mass, e.Panels = a.Mass.Get()-b.Mass.Get(), a.Along.Get()*a.Around.Get()-b.Along.Get()*b.Around.Get()
	}
	for _, r := range list {
		if r.Severity == engine.Hold && len(r.Figures) > 0 && readsOne(before, r, keys) && quiet(before, r) && quiet(after, r) {
			e.Stays = append(e.Stays, r)
		}
	}
	return e
}

// missing are the findings that another assessment does not have, or not as severe.
func missing(of, from []engine.Finding, referred bool) []engine.Finding {
	var out []engine.Finding
	for _, f := range of {
		if f.Accepted != nil || f.Severity == engine.Refer && !referred {
			continue
		}
		had := func(g engine.Finding) bool {
			return g.Rule == f.Rule && g.At == f.At && (g.Severity >= f.Severity && g.Severity != engine.Refer || g.Severity == f.Severity)
		}
		twice := func(g engine.Finding) bool { return g.Rule == f.Rule && g.At == f.At && g.Severity == f.Severity }
		if !slices.ContainsFunc(from, had) && !slices.ContainsFunc(out, twice) {
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b engine.Finding) int { return rank(b.Severity) - rank(a.Severity) })
	return out
}

// rank puts what is referred last.
func rank(s engine.Severity) int {
	if s == engine.Refer {
		return 0
	}
	return int(s)
}

func readsOne(s *review.Assessment, r *engine.Rule, keys []string) bool {
	return slices.ContainsFunc(keys, func(key string) bool { return s.Reads(r, key) })
}

func quiet(s *review.Assessment, r *engine.Rule) bool {
	return !unchecked(s, r) && !slices.ContainsFunc(s.Findings, func(f engine.Finding) bool { return f.Rule == r })
}

// Cure is one key's nearest value that clears a finding, with those of others
// where it takes more than one.
type Cure struct {
	Change
	Also []Change
	Effect
}

// All is the changes of a cure.
func (c Cure) All() []Change { return append([]Change{c.Change}, c.Also...) }

// Cures is the nearest values of each key that clear one finding of a spec,
// with what else they change: those that make nothing worse first, then those
// that cost a shop less, then the smallest. Where no key does and makes nothing
// worse, two keys are looked for. Where the finding does not hang on a number
// there may be none.
func Cures(ctx context.Context, tree map[string]any, f engine.Finding, o Options) (cures []Cure, reviews int, err error) {
	may, err := allow(o.MayChange)
	if err != nil {
		return nil, 0, err
	}
	t := newTrial(ctx, tree, o)
	st := &state{tree: tree, assessment: t.assessment}
	least := min(f.Severity, engine.Query)
	for _, group := range nearer(st.assessment, f, t.base.knobs(may)) {
		for _, k := range group {
			cures = append(cures, t.curesBy(st, f, least, k)...)
		}
	}
	if !slices.ContainsFunc(cures, func(c Cure) bool { return c.Clean() }) {
		cures = append(cures, t.pairs(f, may)...)
	}
	slices.SortStableFunc(cures, func(a, b Cure) int {
		return cmp.Or(-boolCompare(a.Clean(), b.Clean()), cmp.Compare(Cost(a.All()), Cost(b.All())), cmp.Compare(Total(a.All()), Total(b.All())))
	})
	return cures, t.reviews, nil
}

// forPairs is the most reviews that a search for two keys takes.
const forPairs = 1500

// pairs are changes of two keys that clear a finding and make nothing worse.
func (t *trial) pairs(f engine.Finding, may allowed) []Cure {
	two := *t
	two.goal, two.limit = &f, min(t.limit, t.reviews+forPairs)
	s := newSearch(&two, may, 2)
	s.most = 2
	s.sweep()
	t.reviews = two.reviews
	var out []Cure
	for _, st := range s.distinct() {
		e := effect(t.assessment, st.assessment, t.options.Rules, keysOf(st.changes))
		if len(st.changes) == 2 && e.Clean() {
			out = append(out, Cure{st.changes[0], st.changes[1:], e})
		}
	}
	return out
}

// curesBy is the cures by one key. Of counts and words one that brings nothing
// is looked for first.
func (t *trial) curesBy(st *state, f engine.Finding, least engine.Severity, k knob) []Cure {
	clean := func(next *state) bool {
		return t.judge(next) && effect(t.assessment, next.assessment, nil, nil).Clean()
	}
	values := t.cures(st, f, least, k, clean)
	if len(values) == 0 {
		values = t.cures(st, f, least, k, nil)
	}
	var out []Cure
	seen := map[string]bool{}
	for _, v := range values {
		next, ok := t.change(st, k, v)
		if !ok || len(next.changes) == 0 || seen[canon(next.changes)] {
			continue
		}
		seen[canon(next.changes)] = true
		if !t.over() && t.judge(next) && t.cleared(f, next.assessment, least) {
			next = t.further(f, least, k, next)
			out = append(out, Cure{next.changes[0], nil, effect(t.assessment, next.assessment, t.options.Rules, []string{k.key})})
		}
	}
	return out
}

// further goes on with a key until its value makes nothing else worse, where it
// gets there: a fitting that is only just off a rib is still too near to it.
func (t *trial) further(f engine.Finding, least engine.Severity, k knob, st *state) *state {
	const most = 3
	t.goal = &f
	defer func() { t.goal = nil }()
	at := st
	for range most {
		worse := engine.Worse(t.assessment.Findings, at.assessment.Findings)
		if len(worse) == 0 {
			return at
		}
		var next *state
		for _, v := range t.cures(at, worse[0], engine.Query, k, nil) {
			to, ok := t.change(at, k, v)
			if ok && len(to.changes) > 0 && !t.over() && t.judge(to) && t.cleared(f, to.assessment, least) {
				next = to
				break
			}
		}
		if next == nil {
			return st
		}
		at = next
	}
	return st
}

func boolCompare(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	default:
		return -1
	}
}

// nearer groups what may be turned: what a finding names, and what else its rule
// has read. The rest changes nothing about it.
func nearer(s *review.Assessment, f engine.Finding, knobs []knob) [2][]knob {
	var out [2][]knob
	for _, k := range knobs {
		switch {
		case slices.ContainsFunc(f.NotBy, func(key string) bool { return under(k.key, key) }):
			// it would hide the fault
		case names(f, k.key):
			out[0] = append(out[0], k)
		case s.Reads(f.Rule, k.key):
			out[1] = append(out[1], k)
		}
	}
	return out
}

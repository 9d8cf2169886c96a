package remedy

import (
	"cmp"
	"context"
	"slices"

	"dryfit/rules"
	"dryfit/rules/review"
)

// Effect is what changes bring about, beside what they are made for.
type Effect struct {
	Clears []rules.Finding // holds, queries and notes that are gone, as they were
	Brings []rules.Finding // findings that are new, or more severe than before
	Stays  []*rules.Rule   // rules that may hold, hang on what was changed, and find nothing as before
	Mass   float64         // kg that each panel gains
	Panels int             // that there are more
}

// Clean reports whether no hold or query is brought about.
func (e Effect) Clean() bool {
	return !slices.ContainsFunc(e.Brings, func(f rules.Finding) bool {
		return f.Severity == rules.Hold || f.Severity == rules.Query
	})
}

// effect compares two sheets of a spec, with some keys changed between them.
func effect(before, after *review.Sheet, list []*rules.Rule, keys []string) Effect {
	e := Effect{
		Clears: missing(before.Findings, after.Findings, false),
		Brings: missing(after.Findings, before.Findings, true),
	}
	if before.Ceiling != nil && after.Ceiling != nil {
		b, a := before.Ceiling.Panel, after.Ceiling.Panel
		e.Mass, e.Panels = a.Mass.Get()-b.Mass.Get(), a.Along.Get()*a.Around.Get()-b.Along.Get()*b.Around.Get()
	}
	for _, r := range list {
		if r.Severity == rules.Hold && len(r.Figures) > 0 && readsOne(before, r, keys) && quiet(before, r) && quiet(after, r) {
			e.Stays = append(e.Stays, r)
		}
	}
	return e
}

// missing are the findings that another sheet does not have, or not as severe.
func missing(of, from []rules.Finding, referred bool) []rules.Finding {
	var out []rules.Finding
	for _, f := range of {
		if f.Accepted != nil || f.Severity == rules.Refer && !referred {
			continue
		}
		had := func(g rules.Finding) bool {
			return g.Rule == f.Rule && g.At == f.At && (g.Severity >= f.Severity && g.Severity != rules.Refer || g.Severity == f.Severity)
		}
		twice := func(g rules.Finding) bool { return g.Rule == f.Rule && g.At == f.At && g.Severity == f.Severity }
		if !slices.ContainsFunc(from, had) && !slices.ContainsFunc(out, twice) {
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b rules.Finding) int { return rank(b.Severity) - rank(a.Severity) })
	return out
}

// rank puts what is referred last.
func rank(s rules.Severity) int {
	if s == rules.Refer {
		return 0
	}
	return int(s)
}

func readsOne(s *review.Sheet, r *rules.Rule, keys []string) bool {
	return slices.ContainsFunc(keys, func(key string) bool { return reads(s, r, key) })
}

func quiet(s *review.Sheet, r *rules.Rule) bool {
	return !unchecked(s, r) && !slices.ContainsFunc(s.Findings, func(f rules.Finding) bool { return f.Rule == r })
}

// Cure is one key's nearest value that clears a finding.
type Cure struct {
	Change
	Effect
}

// Cures is the nearest values of each key that clear one finding of a spec,
// with what else they change: those that bring no hold or query first, then the
// smallest. Where the finding does not hang on a number there may be none.
func Cures(ctx context.Context, tree map[string]any, f rules.Finding, o Options) (cures []Cure, reviews int, err error) {
	may, err := allow(o.MayChange)
	if err != nil {
		return nil, 0, err
	}
	t := newTrial(ctx, tree, o)
	st := &state{tree: tree, sheet: t.sheet}
	least := min(f.Severity, rules.Query)
	for _, group := range nearer(st.sheet, f, t.base.knobs(may)) {
		for _, k := range group {
			cures = append(cures, t.curesBy(st, f, least, k)...)
		}
	}
	slices.SortStableFunc(cures, func(a, b Cure) int {
		return cmp.Or(-boolCompare(a.Clean(), b.Clean()), cmp.Compare(a.Size, b.Size))
	})
	return cures, t.reviews, nil
}

// curesBy is the cures by one key. Of counts and words one that brings nothing
// is looked for first.
func (t *trial) curesBy(st *state, f rules.Finding, least rules.Severity, k knob) []Cure {
	clean := func(next *state) bool {
		return t.judge(next) && effect(t.sheet, next.sheet, nil, nil).Clean()
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
		if !t.over() && t.judge(next) && cleared(f, next.sheet, least) {
			out = append(out, Cure{next.changes[0], effect(t.sheet, next.sheet, t.options.Rules, []string{k.key})})
		}
	}
	return out
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
func nearer(s *review.Sheet, f rules.Finding, knobs []knob) [2][]knob {
	var out [2][]knob
	for _, k := range knobs {
		switch {
		case names(f, k.key):
			out[0] = append(out[0], k)
		case reads(s, f.Rule, k.key):
			out[1] = append(out[1], k)
		}
	}
	return out
}

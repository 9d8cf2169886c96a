// Package remedy finds what would pass: for a finding the nearest value of each
// key that clears it, and for a spec the fewest and smallest changes that leave
// nothing that fails it. Every value is tried on the rules themselves. It does
// no input or output.
package remedy

import (
	"context"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/review"
	"dryfit/spec"
)

// Options is what a search works to.
type Options struct {
	Review review.Options // its Strict makes a query count as a hold does
	// MayChange is the keys and tables that may change; without any, all but
	// the fixed.
	MayChange []string
	// Limit is the most reviews that the search may take; zero: DefaultLimit.
	// A review of one rule counts as one of all.
	Limit int
	// Answers is how many different answers are wanted; zero: three.
	Answers int
}

// DefaultLimit is enough for most specs; a review takes about a millisecond.
const DefaultLimit = 20000

const defaultAnswers = 3

// trial runs rules on changed trees, and counts the runs.
type trial struct {
	ctx        context.Context
	options    review.Options
	base       base
	assessment *review.Assessment // the spec as it stands
	reviews    int
	limit      int
	goal       *engine.Finding // if set, all that is to be cleared
}

func newTrial(ctx context.Context, tree map[string]any, o Options) *trial {
	t := &trial{ctx: ctx, options: o.Review, limit: o.Limit, base: base{tree: tree}}
	if t.limit == 0 {
		t.limit = DefaultLimit
	}
	t.options.Offers = false
	t.options.Frames = new(hanging.Memory)
	if t.options.Search.Memory == nil {
		t.options.Search.Memory = carrying.NewMemory()
		review.Tree(tree, t.options) // a brief search takes what the whole one finds
	}
	t.options.Search.Brief = true
	t.assessment = t.run(tree)
	if t.assessment.Ceiling != nil {
		t.base.assumed = t.assessment.Ceiling.Assumed
		t.options.Like = t.assessment.Said
	}
	return t
}

// over reports whether the search has to end, and why.
func (t *trial) over() bool { return t.reviews >= t.limit || t.ctx.Err() != nil }

// run reviews a changed tree by all rules.
func (t *trial) run(tree map[string]any) *review.Assessment { return t.review(tree, t.options) }

// ask reviews a changed tree by the rule of one finding. Of one about a leg of the
// route no other leg is decided.
func (t *trial) ask(tree map[string]any, f engine.Finding) *review.Assessment {
	o := t.options
	o.Rules, o.Search.Only = []*engine.Rule{f.Rule}, carrying.LegOf(f.At)
	o.Like = o.Like.Unsaid()
	return t.review(tree, o)
}

func (t *trial) review(tree map[string]any, o review.Options) *review.Assessment {
	t.reviews++
	assessment, faults := review.Tree(tree, o)
	if len(faults) == 0 {
		return assessment
	}
	assessment = &review.Assessment{Standards: o.Standards} // of a ceiling that can't be
	for _, f := range faults {
		assessment.Problems = append(assessment.Problems, spec.Problem{Rule: "spec.geometry", Key: f.Key, Message: f.Text})
	}
	return assessment
}

// level is the least severity that is to be cleared.
func level(o review.Options) engine.Severity {
	if o.Strict {
		return engine.Query
	}
	return engine.Hold
}

// open are the findings of a spec that are to be cleared, the worst first, and
// the rules whose figure could not be computed.
func open(s *review.Assessment, least engine.Severity) []engine.Finding {
	var out []engine.Finding
	for _, f := range s.Findings {
		if f.Accepted == nil && f.Severity != engine.Refer && f.Severity >= least {
			out = append(out, f)
		}
	}
	for _, n := range s.NotChecked {
		if n.Failed {
			out = append(out, engine.Finding{Rule: n.Rule, At: n.Key, Severity: engine.Hold, Text: n.Why})
		}
	}
	slices.SortStableFunc(out, func(a, b engine.Finding) int { return int(b.Severity) - int(a.Severity) })
	return out
}

// standing is what is still to be cleared of a changed spec: what fails it; or,
// where there is a goal, that and what the changes have made worse.
func (t *trial) standing(s *review.Assessment) []engine.Finding {
	if t.goal == nil {
		return open(s, level(t.options))
	}
	var out []engine.Finding
	if f, still := t.again(*t.goal, s, min(t.goal.Severity, engine.Query)); still || unchecked(s, t.goal.Rule) {
		out = append(out, f)
	}
	for _, f := range engine.Worse(t.assessment.Findings, s.Findings) {
		if !slices.ContainsFunc(out, func(had engine.Finding) bool { return had.Rule == f.Rule && had.At == f.At && had.Text == f.Text }) {
			out = append(out, f)
		}
	}
	return out
}

// silent reports whether a rule that was checked is not any more. That it then
// finds nothing is no cure.
func (t *trial) silent(s *review.Assessment) bool {
	for _, n := range s.NotChecked {
		if !n.Failed && !partly(n) && !unchecked(t.assessment, n.Rule) {
			return true
		}
	}
	return false
}

// unchecked reports whether a rule has no outcome.
func unchecked(s *review.Assessment, r *engine.Rule) bool {
	return slices.ContainsFunc(s.NotChecked, func(n engine.NotChecked) bool { return n.Rule == r && !partly(n) })
}

// partly reports whether a rule lacks only what a list's element, such as a leg
// of the route, never said: no change could have taken it away.
func partly(n engine.NotChecked) bool {
	return n.Why == "" && !n.Failed && pattern(n.Key) != n.Key
}

// cleared reports whether a finding is gone from an assessment: its rule is checked
// there, and finds nothing as severe in its place.
func (t *trial) cleared(f engine.Finding, s *review.Assessment, least engine.Severity) bool {
	if len(s.Problems) > 0 || unchecked(s, f.Rule) {
		return false
	}
	_, still := t.again(f, s, least)
	return !still
}

// again is the finding as it stands in another assessment. What stands only because
// it got worse is gone where it is as it was.
func (t *trial) again(f engine.Finding, s *review.Assessment, least engine.Severity) (engine.Finding, bool) {
	among := s.Findings
	aside := t.goal != nil && (f.Rule != t.goal.Rule || f.At != t.goal.At)
	if aside || f.Severity < least {
		among, least = engine.Worse(t.assessment.Findings, among), engine.Query
	}
	for _, g := range among {
		if g.Rule == f.Rule && g.At == f.At && (g.Severity == f.Severity || g.Severity != engine.Refer && f.Severity != engine.Refer && g.Severity >= least) {
			return g, true
		}
	}
	return engine.Finding{}, false
}

// names reports whether a finding names a key.
func names(f engine.Finding, key string) bool {
	named := append([]string{f.At, f.Bound.Name}, f.Related...)
	for _, o := range f.Offers {
		named = append(named, o.Key)
	}
	return slices.ContainsFunc(named, func(n string) bool { return under(key, n) || under(n, key) })
}

// state is the spec with some changes.
type state struct {
	changes    []Change
	tree       map[string]any
	assessment *review.Assessment
	open       []engine.Finding
}

// change makes a state with one more change, without reviewing it.
func (t *trial) change(st *state, k knob, value any) (*state, bool) {
	return t.state(put(st.changes, t.changed(k, value)))
}

func (t *trial) changed(k knob, value any) Change {
	return Change{
		Key: k.key, Was: k.was, Assumed: k.assumed, Value: value,
		Place: t.options.Standards.Order().Place(k.key), Size: size(k.property, k.was, value),
	}
}

// state puts changes into the spec.
func (t *trial) state(changes []Change) (*state, bool) {
	tree := t.base.tree
	for _, c := range changes {
		var ok bool
		if tree, ok = t.base.with(tree, c.Key, c.Value); !ok {
			return nil, false
		}
	}
	return &state{changes: changes, tree: tree}, true
}

// judge reviews a state with all rules. It reports false for one that is no
// spec, or in which a rule falls silent.
func (t *trial) judge(st *state) bool {
	st.assessment = t.run(st.tree)
	if len(st.assessment.Problems) > 0 || t.silent(st.assessment) {
		return false
	}
	st.open = t.standing(st.assessment)
	lighten(st.assessment)
	return true
}

// lighten keeps of a state's ceiling what an effect is told by: many states wait
// to be taken further.
func lighten(s *review.Assessment) {
	from, to := &s.Ceiling.Panel, &layout.Ceiling{}
	to.Panel.Mass, to.Panel.Along, to.Panel.Around = from.Mass, from.Along, from.Around
	to.Panel.Mass.Get()
	to.Panel.Along.Get()
	to.Panel.Around.Get()
	s.Ceiling, s.Results = to, nil
}

// value is what a key has in a state.
func (t *trial) value(st *state, key string) any {
	if v, ok := spec.Lookup(st.tree, key); ok {
		return v
	}
	v, _, _ := t.base.now(key)
	return v
}

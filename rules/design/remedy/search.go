package remedy

import (
	"cmp"
	"context"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/spec/edit"
)

const (
	// mostKeys is the most keys that an answer changes.
	mostKeys = 4
	// width is how many states with the same number of changed keys are taken
	// further, the most promising first.
	width = 16
)

// Answer is a set of changes that leaves nothing to be cleared.
type Answer struct {
	Changes    []Change
	Effect     Effect
	Source     []byte             // the spec with the changes written into it
	Assessment *review.Assessment // a full review of that
	// Comments of the file that stand beside a changed value or state the old
	// one; nothing changes them.
	Comments []Comment
}

// Result is what a search found.
type Result struct {
	Assessment *review.Assessment // the spec as it stands
	Open       []engine.Finding
	Answers    []Answer // what a shop would rather do first
	Reviews    int
	// LimitReached and Interrupted say why a search ended early; Whole that it
	// left nothing out that it could reach.
	LimitReached, Interrupted, Whole bool
	// Alone are rules that nothing that may change satisfies. Against are rules that can't all be satisfied, though without any one of
	// them the others can, as far as the search reached. Only where there is no
	// answer.
	Alone, Against []*engine.Rule
	// Tied are the keys that findings hang on and that may not change. Needed
	// are changes with which there would be an answer, of keys that may not; none
	// where none was found.
	Tied   []string
	Needed []Change
}

// Search looks for the fewest and smallest changes of a spec that leave nothing
// that fails it. Path is for messages only. An error means that the options
// can't be followed.
func Search(ctx context.Context, path string, src []byte, o Options) (Result, error) {
	may, err := allow(o.MayChange)
	if err != nil {
		return Result{}, err
	}
	if o.Review.Search.Memory == nil {
		o.Review.Search.Memory = carrying.NewMemory()
	}
	plain := o.Review
	plain.Offers = false
	r := Result{Assessment: review.Spec(path, src, plain)}
	if r.Assessment.Ceiling == nil {
		return r, nil
	}
	r.Open = open(r.Assessment, level(o.Review))
	if len(r.Open) == 0 {
		r.Whole = true
		return r, nil
	}
	t := newTrial(ctx, r.Assessment.Document.Tree, o)
	all := t.limit
	t.limit -= t.limit / 4 // kept to say what stands against each other
	s := newSearch(t, may, cmp.Or(o.Answers, defaultAnswers))
	s.explore()
	r.LimitReached = t.reviews >= t.limit
	t.limit = all
	r.Answers = s.verified(path, src, r.Assessment)
	r.Whole = !s.cut && !t.over()
	if len(r.Answers) == 0 {
		r.Tied, r.Alone = s.tied(r.Open), s.alone
		r.Needed = s.needed()
		if len(s.alone) == 0 {
			r.Against = s.against()
		}
	}
	r.Reviews, r.Interrupted = t.reviews, ctx.Err() != nil
	return r, nil
}

type search struct {
	*trial
	knobs   []knob
	wanted  int
	seen    map[string]bool
	levels  [mostKeys + 1][]*state // by the number of keys changed
	answers []*state
	stood   map[*engine.Rule]bool // rules that stood open somewhere
	cut     bool                  // something was left out
	may     allowed
	alone   []*engine.Rule // whose finding nothing clears or eases
	most    int            // keys that an answer may change
}

func newSearch(t *trial, may allowed, wanted int) *search {
	return &search{
		trial: t, may: may, knobs: t.base.knobs(may), wanted: wanted, most: mostKeys,
		seen: map[string]bool{}, stood: map[*engine.Rule]bool{},
	}
}

// explore goes from the spec as it stands by cures of one finding at a time,
// through all sets of few keys before any of more.
func (s *search) explore() {
	if s.hopeless() {
		return
	}
	s.sweep()
}

// hopeless reports whether something stands in the spec that no key clears or
// eases. Nothing else need be tried then.
func (s *search) hopeless() bool {
	start := &state{tree: s.base.tree, assessment: s.assessment, open: open(s.assessment, level(s.options))}
	seen := map[*engine.Rule]bool{}
	for _, f := range start.open {
		if !seen[f.Rule] && !s.over() && !s.moves(start, f) {
			s.alone = append(s.alone, f.Rule)
		}
		seen[f.Rule] = true
	}
	return len(s.alone) > 0
}

// moves reports whether any key changes what a finding says.
func (s *search) moves(st *state, f engine.Finding) bool {
	for _, group := range nearer(st.assessment, f, s.knobs) {
		for _, k := range group {
			for _, d := range s.dials(st, k, k.was) {
				p := &probe{t: s.trial, st: st, f: f, least: level(s.options), k: k, d: d}
				for _, steps := range []int{1, -1, 2, d.up, -d.down, d.up / 4, -d.down / 4} {
					if steps > d.up || -steps > d.down || steps == 0 {
						continue
					}
					if r := p.read(steps); s.over() || r.valid && (r.cleared || !r.same) {
						return true
					}
				}
			}
		}
	}
	return false
}

func (s *search) sweep() {
	if start, ok := s.state(nil); ok {
		s.add(start)
	}
	full := s.limit
	for keys := range s.most + 1 {
		s.through(keys)
		if len(s.distinct()) >= s.wanted || s.over() {
			break
		}
		if len(s.answers) > 0 { // look for others a while longer
			s.limit = min(s.limit, s.reviews+max(500, s.reviews/2))
		}
	}
	s.limit = full
}

// through takes the states with a number of changed keys further.
func (s *search) through(keys int) {
	for n := 0; len(s.levels[keys]) > 0; n++ {
		if n >= width || s.over() {
			s.cut = true
			return
		}
		slices.SortFunc(s.levels[keys], promising)
		st := s.levels[keys][0]
		s.levels[keys] = s.levels[keys][1:]
		s.expand(st)
	}
}

// promising orders states: fewer rules open, then what costs a shop less, then
// less changed.
func promising(a, b *state) int {
	return cmp.Or(
		cmp.Compare(openRules(a), openRules(b)),
		cmp.Compare(Cost(a.changes), Cost(b.changes)),
		cmp.Compare(Total(a.changes), Total(b.changes)),
		cmp.Compare(canon(a.changes), canon(b.changes)),
	)
}

func openRules(st *state) int {
	seen := map[*engine.Rule]bool{}
	for _, f := range st.open {
		seen[f.Rule] = true
	}
	return len(seen)
}

// expand cures the first open finding of a state, by every key that it may.
func (s *search) expand(st *state) {
	f := st.open[0]
	groups := nearer(st.assessment, f, s.knobs)
	found := false
	for _, group := range groups {
		for _, k := range group {
			if s.over() {
				s.cut = true
				return
			}
			if len(st.changes) == s.most && !slices.Contains(keysOf(st.changes), k.key) {
				s.cut = true
				continue
			}
			for _, v := range s.cures(st, f, level(s.options), k, nil) {
				if next, ok := s.change(st, k, v); ok {
					found = true
					s.add(next)
				}
			}
		}
	}
	if !found {
		s.ease(st, f, groups[0])
	}
}

// ease goes part of the way where no key clears a finding by itself: every key
// that the finding names is turned far, if that brings it nearer to its limit.
// What is too far comes back when the answer is made smaller.
func (s *search) ease(st *state, f engine.Finding, named []knob) {
	for _, k := range named {
		if len(st.changes) == s.most && !slices.Contains(keysOf(st.changes), k.key) {
			continue
		}
		for _, d := range s.dials(st, k, s.value(st, k.key)) {
			p := &probe{t: s.trial, st: st, f: f, least: level(s.options), k: k, d: d}
			for _, steps := range []int{d.up, d.up / 4, -d.down / 4, -d.down} {
				if steps == 0 || s.over() {
					continue
				}
				if r := p.read(steps); r.valid && !r.same && !(r.gap >= gap(f)) {
					v, _ := d.at(steps)
					if next, ok := s.change(st, k, v); ok {
						s.add(next)
					}
				}
			}
		}
	}
}

// add reviews a state that was not seen before, and keeps it.
func (s *search) add(st *state) {
	name := canon(st.changes)
	if s.seen[name] {
		return
	}
	if s.over() {
		s.cut = true
		return
	}
	s.seen[name] = true
	if !s.judge(st) {
		return
	}
	for _, f := range st.open {
		s.stood[f.Rule] = true
	}
	if len(st.open) > 0 {
		s.levels[len(st.changes)] = append(s.levels[len(st.changes)], st)
		return
	}
	s.answers = append(s.answers, s.polish(st))
}

// distinct are the answers that change different keys: those that make least
// worse first, then the cheapest, and the least change of each; what needs another's keys and more is none.
func (s *search) distinct() []*state {
	sorted := slices.Clone(s.answers)
	worse := func(st *state) int { return len(engine.Worse(s.assessment.Findings, st.assessment.Findings)) }
	slices.SortFunc(sorted, func(a, b *state) int { return cmp.Or(cmp.Compare(worse(a), worse(b)), promising(a, b)) })
	var out []*state
	for _, st := range sorted {
		keys := keysOf(st.changes)
		wider := func(had *state) bool {
			return !slices.ContainsFunc(keysOf(had.changes), func(k string) bool { return !slices.Contains(keys, k) })
		}
		if !slices.ContainsFunc(out, wider) {
			out = append(out, st)
		}
	}
	return out
}

// verified writes the answers into the spec and reviews it as if it were new.
func (s *search) verified(path string, src []byte, before *review.Assessment) []Answer {
	var out []Answer
	for _, st := range s.distinct() {
		if len(out) == s.wanted {
			break
		}
		text, err := edit.Apply(src, s.written(st))
		if err != nil {
			continue
		}
		assessment := review.Spec(path, text, s.options)
		if assessment.Ceiling == nil || s.silent(assessment) || len(s.standing(assessment)) > 0 {
			continue
		}
		out = append(out, Answer{
			Changes: st.changes, Source: text, Assessment: assessment, Comments: beside(assessment.Document, st.changes),
			Effect: effect(before, assessment, s.options.Rules, keysOf(st.changes)),
		})
	}
	return out
}

// written is the changes as they are written into the spec: of a table that was
// assumed as one, all of it.
func (s *search) written(st *state) []edit.Change {
	var out []edit.Change
	for _, c := range st.changes {
		whole := s.base.whole(c.Key)
		twice := func(had edit.Change) bool { return had.Key == whole }
		if !slices.ContainsFunc(out, twice) {
			out = append(out, edit.Change{Key: whole, Value: s.value(st, whole)})
		}
	}
	return out
}

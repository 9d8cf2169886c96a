// Package review is the one path from the bytes of a spec to its assessment: what
// was found, what was not checked, what was assumed, and the verdict. It does
// no input or output.
package review

import (
	"cmp"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Options is what a review works to.
type Options struct {
	Rules     []*engine.Rule
	Standards *standards.Standards
	// On is the date that acceptances are judged on, 2027-06-30. Without it,
	// none is in force.
	On string
	// Strict lets a query fail the spec.
	Strict bool
	// LeftOut is why a rule is left out, "" where it is not; nil leaves none out.
	// A rule that refers is not, and of any other what it refers is still said.
	LeftOut func(*engine.Rule) string
	// Require is what must be checked or given, beside what the standards require.
	Require []standards.Requirement
	// Offers asks for what would pass. Each offer costs a run of the rules that read
	// its key.
	Offers bool
	// Search is how far the way in is searched.
	Search carrying.Search
	// Like is what was said, by the same options, of a tree that shares values with what is
	// reviewed, for who reviews changes of one tree; or nil.
	Like *engine.Precedent
	// Frames keeps the frames that were solved, for who reviews a spec many times;
	// nil keeps none.
	Frames *hanging.Memory
}

// Assessment is one spec with all that its review gives.
type Assessment struct {
	Path       string
	Document   *spec.Document // nil where the file could not be opened
	Standards  *standards.Standards
	Ceiling    *layout.Ceiling  // nil where the spec could not be resolved
	Results    *result.Results  // nil where there is no ceiling
	Project    *layout.Project  // what the spec calls itself; nil where there is no ceiling
	Problems   []spec.Problem   // of the file; where there are any, nothing else was checked
	Findings   []engine.Finding // by line, column, rule
	NotChecked []engine.NotChecked
	Awaited    []Awaited           // the absent keys that most rules wait for
	Loosened   []engine.Loosened   // built-in limits that the standards loosen, and that were used
	Inputs     engine.Inputs       // the keys that each rule has read
	Said       *engine.Precedent   // what the rules have said, for reviews of other specs; nil where there is no ceiling
	Assumed    []standards.Assumed // only what a rule that ran has read
	Counts     engine.Counts
	Verdict    engine.Verdict
	compared   bool // there is a baseline
}

// Spec reviews the bytes of one spec. Path is for messages only.
func Spec(path string, src []byte, o Options) *Assessment {
	assessment := &Assessment{Path: path, Standards: o.Standards}
	doc, problems := spec.Parse(path, src)
	assessment.Document = doc
	if len(problems) == 0 {
		if _, problem := spec.Format(doc); problem != nil {
			problems = append(problems, *problem)
		}
	}
	if len(problems) == 0 {
		problems = schema.Check(doc)
	}
	if len(problems) == 0 {
		problems = assessment.fill(o)
	}
	assessment.Problems = problems
	assessment.judge(o)
	return assessment
}

// Unreadable is the assessment of a file that could not be opened.
func Unreadable(path, message string, o Options) *Assessment {
	assessment := &Assessment{Path: path, Standards: o.Standards}
	assessment.Problems = []spec.Problem{{
		Rule: "file.read", Message: message,
		Position: spec.Position{Line: 1, Column: 1}, End: spec.Position{Line: 1, Column: 1},
	}}
	assessment.judge(o)
	return assessment
}

// Broken is the assessment of a standards file that can't be taken.
func Broken(path string, problems []spec.Problem) *Assessment {
	assessment := &Assessment{Path: path, Standards: standards.BuiltIn(), Problems: problems}
	assessment.judge(Options{})
	return assessment
}

// fill resolves the ceiling and runs the rules.
func (s *Assessment) fill(o Options) []spec.Problem {
	if o.Offers && o.Search.Memory == nil {
		o.Search.Memory = carrying.NewMemory() // what is offered mostly changes one leg of the way
	}
	if o.Offers && o.Frames == nil {
		o.Frames = new(hanging.Memory) // and often nothing of the frame
	}
	if o.Like != nil {
		o.Like.Ceiling.ShareSpec(s.Document.Tree)
	}
	faults := s.work(s.Document.Tree, o)
	if len(faults) > 0 {
		var problems []spec.Problem
		for _, f := range faults {
			problems = append(problems, s.Document.Problem("spec.geometry", f.Key, f.Text))
		}
		return problems
	}
	s.Findings = s.located(s.Findings)
	if o.Offers {
		s.offer(o)
	}
	if o.LeftOut != nil {
		s.leaveOut(o)
	}
	s.Awaited = awaited(s.Ceiling, s.NotChecked)
	s.Assumed = assumedBy(s.Ceiling, s.Inputs, s.NotChecked)
	return nil
}

// work is the whole computation on the tree of a spec that satisfies the
// schema. The findings have no places yet.
func (s *Assessment) work(tree map[string]any, o Options) []layout.Fault {
	ceiling, faults := layout.Resolve(tree, o.Standards, o.Like.Of())
	if len(faults) > 0 {
		return faults
	}
	if o.Like != nil {
		ceiling.Take(o.Like.Done)
	}
	outcome := engine.Run(o.Rules, ceiling, o.Standards, engine.Means{Search: o.Search, Frames: o.Frames, Like: o.Like})
	s.Said = outcome.Precedent(ceiling)
	outcome = tried(ceiling, outcome, o)
	project := ceiling.Project
	s.Ceiling, s.Results, s.Project, s.Inputs, s.NotChecked = ceiling, outcome.Results, &project, outcome.Inputs, outcome.NotChecked
	s.Loosened = append(outcome.Loosened, beyondPublished(ceiling, o.Standards)...)
	wrong := accept(ceiling, outcome, o)
	s.Findings = slices.Concat(outcome.Findings, required(tree, outcome, o), wrong)
	return nil
}

// located gives each finding its place and its fingerprint, and sorts them, those
// in the standards last; of
// two that say the same of one place, one is kept.
func (s *Assessment) located(findings []engine.Finding) []engine.Finding {
	for i := range findings {
		s.locate(&findings[i])
	}
	slices.SortStableFunc(findings, func(a, b engine.Finding) int {
		return cmp.Or(
			cmp.Compare(a.Origin.File, b.Origin.File),
			cmp.Compare(a.Start.Line, b.Start.Line),
			cmp.Compare(a.Start.Column, b.Start.Column),
			cmp.Compare(a.Rule.ID, b.Rule.ID),
			cmp.Compare(a.Text, b.Text),
		)
	})
	findings = slices.CompactFunc(findings, func(a, b engine.Finding) bool {
		return a.Rule == b.Rule && a.Origin == b.Origin && a.Start == b.Start && a.Text == b.Text
	})
	prints := engine.Fingerprints{}
	for i := range findings {
		f := &findings[i]
		key := spec.Unnumbered(s.Document.Tree, f.At)
		if !f.Origin.BuiltIn() {
			key = s.Standards.Route().Unnumbered(f.At)
		}
		f.Fingerprint = prints.Of(f.Rule.ID, key, f.Text)
	}
	return findings
}

// locate gives a finding its place: in the spec, or in the standards where these
// give what it is at.
func (s *Assessment) locate(f *engine.Finding) {
	if at, own := s.Standards.Place(f.At); own {
		f.Origin, f.Start, f.End = at.Origin, at.Start, at.End
		return
	}
	f.Range = s.Document.Locate(f.At)
	f.Start, f.End = s.Document.Position(f.Range.Start), s.Document.Position(f.Range.End)
}

// assumedBy lists the assumed keys that a rule with an outcome has read.
func assumedBy(c *layout.Ceiling, inputs engine.Inputs, without []engine.NotChecked) []standards.Assumed {
	var read record.Set
	for r, keys := range inputs {
		if !slices.ContainsFunc(without, func(n engine.NotChecked) bool { return n.Rule == r }) {
			read = read.Or(keys)
		}
	}
	var out []standards.Assumed
	for _, a := range c.Assumed {
		if !spec.IDs(a.Key).And(read).Empty() {
			out = append(out, a)
		}
	}
	return out
}

func (s *Assessment) judge(o Options) {
	c := engine.Counts{Unreadable: len(s.Problems), Assumed: len(s.Assumed), Before: engine.Before{Compared: s.compared}}
	for _, f := range s.Findings {
		if f.Accepted != nil {
			c.Accepted++
			continue
		}
		before := 0
		if f.Baseline == engine.AlreadyThere {
			before = 1
		}
		switch f.Severity {
		case engine.Hold:
			c.Held++
			c.Before.Held += before
		case engine.Query:
			c.Queried++
			c.Before.Queried += before
		case engine.Note:
			c.Noted++
		case engine.Refer:
			c.Referred++
		}
	}
	absent, uncomputed, before := unchecked(s.NotChecked)
	c.NotChecked, c.Families, c.Uncomputed, c.Before.Uncomputed = len(absent), engine.FamiliesOf(absent), uncomputed, before
	s.Counts, s.Verdict = c, c.Judge(o.Strict)
}

// unchecked are the rules that were not checked, or not in full, and apart from
// these the number of rules of which a figure could not be computed: that fails the
// spec, whatever else its rule has said, unless the baseline had it all before.
func unchecked(list []engine.NotChecked) (absent []*engine.Rule, failed, before int) {
	fails, fresh := map[*engine.Rule]bool{}, map[*engine.Rule]bool{}
	for _, n := range list {
		fails[n.Rule] = fails[n.Rule] || n.Failed
		fresh[n.Rule] = fresh[n.Rule] || n.Failed && !n.Before
	}
	for r, f := range fails {
		switch {
		case !f:
			absent = append(absent, r)
		case fresh[r]:
			failed++
		default:
			failed++
			before++
		}
	}
	return absent, failed, before
}

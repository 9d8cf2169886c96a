package report

import (
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// Entry is a finding, or a fault of the file, as most writers want it.
type Entry struct {
	Rule       string
	severity   engine.Severity
	Key        string
	Text       string // one sentence, with its full stop
	Basis      string // empty for a fault of the file
	Start, end spec.Position
	origin     standards.Origin // of a place in a standards file
	related    []string
	offer      *engine.Offer
	Passes     string // the offer, as a spec writes it
	Accepted   string // by whom, why, until when
	acceptance *layout.Acceptance
	print      string          // its fingerprint
	baseline   engine.Baseline // zero where there is none
}

// Entries are a spec's: faults of the file first, then findings, each in their
// order.
func Entries(s *review.Assessment) []Entry {
	var out []Entry
	prints := engine.Fingerprints{}
	for _, p := range s.Problems {
		out = append(out, Entry{
			Rule: p.Rule, severity: problemSeverity, Key: p.Key, Text: show.Sentence(p.Message), Start: p.Position, end: p.End,
			print: prints.Of(p.Rule, p.Key, p.Message), baseline: faultsAre(s),
		})
	}
	for _, f := range s.Findings {
		e := Entry{
			Rule: f.Rule.ID, severity: f.Severity, Key: f.At, Text: show.Sentence(f.Text), Basis: basis(f),
			Start: f.Start, end: f.End, origin: f.Origin, related: f.Related, print: f.Fingerprint, baseline: f.Baseline,
		}
		if f.Passes != nil {
			e.offer, e.Passes = f.Passes, f.Passes.Key+" = "+show.Written(f.Passes.Value)
		}
		if a := f.Accepted; a != nil {
			e.acceptance, e.Accepted = a, a.Reason+", by "+a.By+", until "+a.Until
		}
		out = append(out, e)
	}
	return out
}

// faultsAre what faults of a file are to a baseline: new, since they keep the
// file from being checked whoever made them.
func faultsAre(s *review.Assessment) engine.Baseline {
	if s.Counts.Before.Compared {
		return engine.New
	}
	return 0
}

// Place is where a finding stands: in the spec, or in a standards file.
func Place(f engine.Finding) string {
	if !f.Origin.BuiltIn() {
		return show.Shown(f.Origin.String())
	}
	return positionText(f.Start)
}

func positionText(at spec.Position) string {
	return fmt.Sprintf("line %d, column %d", at.Line, at.Column)
}

// Line is where the entry stands, in short.
func (e Entry) Line() string {
	if !e.origin.BuiltIn() {
		return show.Shown(e.origin.String())
	}
	return fmt.Sprintf("line %d", e.Start.Line)
}

// treeFile is a file's path in the repository; false of one that is not in the
// working tree, such as one of another revision.
func (r Report) treeFile(name string) (string, bool) {
	path := r.InRepository(name)
	return path, !filepath.IsAbs(path) && !strings.HasPrefix(path, "../") && !strings.Contains(path, ":")
}

// fileOf is the file that an entry stands in and its place there. One in standards
// that are not in the working tree is said in words at the spec's first line.
func (r Report) fileOf(s *review.Assessment, e Entry) (string, Entry) {
	if e.origin.BuiltIn() {
		return r.InRepository(s.Path), e
	}
	path, ok := r.treeFile(e.origin.File)
	if !ok {
		first := spec.Position{Line: 1, Column: 1}
		e.Text, e.Key, e.Start, e.end = e.origin.String()+": "+e.Said(), "", first, first
		return r.InRepository(s.Path), e
	}
	return path, e
}

// Said is the sentence with its key before it.
func (e Entry) Said() string {
	if e.Key == "" || strings.HasPrefix(e.Text, e.Key) {
		return e.Text
	}
	return e.Key + ": " + e.Text
}

// since is what the entry is to the baseline, after a comma; "" without one.
func (e Entry) since() string {
	if e.baseline == 0 {
		return ""
	}
	return ", " + e.baseline.String()
}

// fails reports whether the entry fails the spec. What the baseline had does not.
func (e Entry) fails(strict bool) bool {
	return e.Accepted == "" && e.baseline != engine.AlreadyThere && (e.severity == engine.Hold || strict && e.severity == engine.Query)
}

// InRepository is a path relative to the root of the repository, with forward
// slashes. One outside it stays as it was named.
func (r Report) InRepository(name string) string {
	if r.Folder == "" {
		return name
	}
	at := filepath.FromSlash(name)
	if !filepath.IsAbs(at) {
		at = filepath.Join(r.Folder, at)
	}
	root := r.Root
	if root == "" {
		root = r.Folder
	}
	rel, err := filepath.Rel(root, at)
	if err != nil || rel == ".." || strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
		return path.Clean(name)
	}
	return filepath.ToSlash(rel)
}

// lack is what keeps rules from an outcome: a key, or another reason.
type lack struct {
	reason
	Rules []string
}

type reason struct {
	key, why string // one of them
	failed   bool
	open     bool // a question without an answer, not a figure
	before   bool // the baseline could not compute it either
}

// Lacking groups the rules of a spec that were not checked, in their order.
func Lacking(list []engine.NotChecked) []lack {
	var out []lack
	at := map[reason]int{}
	for _, n := range list {
		why := reason{n.Key, n.Why, n.Failed, n.Lifts != "", n.Before}
		if n.Why != "" {
			why.key = ""
		}
		i, had := at[why]
		if !had {
			i = len(out)
			at[why] = i
			out = append(out, lack{reason: why})
		}
		if !slices.Contains(out[i].Rules, n.Rule.ID) { // of several elements
			out[i].Rules = append(out[i].Rules, n.Rule.ID)
		}
	}
	return out
}

// Said is the reason in words.
func (r reason) Said() string {
	switch {
	case r.open && r.before:
		return "not decided, " + engine.AlreadyThere.String() + ": " + r.why
	case r.open && r.failed:
		return "not decided: " + r.why
	case r.before:
		return "could not be computed, " + engine.AlreadyThere.String() + ": " + r.why
	case r.failed:
		return "could not be computed: " + r.why
	case r.why != "":
		return r.why
	default:
		return "needs " + r.key
	}
}

// waiting says how many rules an absent key keeps from being checked.
func waiting(a review.Awaited) string {
	if len(a.Rules) == 1 {
		return "1 rule needs it"
	}
	return fmt.Sprintf("%d rules need it", len(a.Rules))
}

// basis is what a finding rests on: the limit with its source where there is
// one, else the rule's own basis.
func basis(f engine.Finding) string {
	if f.Bound.Name != "" {
		return f.Bound.Name + ": " + f.Bound.Source
	}
	return f.Rule.Basis.Source.String()
}

// AssumedFrom names the standards that gave an assumed figure.
func AssumedFrom(a standards.Assumed) string {
	if a.Origin.BuiltIn() {
		return "built in: " + a.Source
	}
	return fmt.Sprintf("%s:%d", a.Origin.File, a.Origin.Line)
}

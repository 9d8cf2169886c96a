// Package submittal writes the page that a reviewer signs, and tells an old one
// from one of this spec.
package submittal

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Submittal is one spec as its reviewer gets it.
type Submittal struct {
	Assessment *review.Assessment // one that could be checked
	Seal       report.Seal
	Calcs      sums.Calcs
	Takeoff    making.Takeoff
	Drawings   []paper.Sheet       // composed for a page; those of one sheet follow each other
	Undrawn    []string            // sheets that could not be drawn, and why
	Name       func(string) string // a file's path as the page names it
}

var submittalPage = show.LeafOf("submittal.html.tmpl", "submittal.css", "submittal.js", svg.Style)

// HTML writes the page: one file that asks for nothing else.
func HTML(w io.Writer, s Submittal) error {
	return submittalPage().Execute(w, s.view())
}

func (s Submittal) view() submittalView {
	p := s.Assessment.Ceiling.Project
	verdict := s.Assessment.Verdict.String()
	out := submittalView{
		Furniture: submittalPage().Furniture.With(s.margins()), Actions: actions,
		Title: show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), Path: show.Shown(s.Seal.Spec.Path),
		Verdict: verdict, Class: show.Classes[verdict],
		Checked: fmt.Sprintf("checked on %s to the %s%s", s.Seal.On, show.Shown(s.Assessment.Standards.Name),
			map[bool]string{true: ", with --strict: a query fails"}[s.Seal.Strict]),
		Counts: countsOf(s.Assessment.Counts), Undrawn: s.Undrawn, Legend: sums.Legend(s.Assessment.Ceiling.Units), Seal: s.Seal,
		Caution: show.Caution,
	}
	s.sortFindings(&out)
	for _, l := range report.Lacking(s.Assessment.NotChecked) {
		out.Lacking = append(out.Lacking, pairView{listOf(l.Rules), show.Shown(l.Said())})
	}
	for _, a := range s.Assessment.Assumed {
		from := report.AssumedFrom(a)
		if !a.Origin.BuiltIn() {
			from = fmt.Sprintf("%s:%d", s.Name(a.Origin.File), a.Origin.Line)
		}
		out.Assumed = append(out.Assumed, pairView{show.Shown(a.Key + " = " + show.Written(a.Value)), show.Shown(from)})
	}
	for _, l := range s.Assessment.Loosened {
		out.Loosened = append(out.Loosened, pairView{show.Shown(l.Name), show.Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s",
			l.Used, l.BuiltIn, s.Name(l.Origin.File), l.Origin.Line, l.Source))})
	}
	out.Drawings, out.Sheets = s.figures()
	out.Subjects, out.Takeoff = subjectsOf(s.Calcs), groupsOf(s.Takeoff)
	return out
}

// actions are what a reviewer may do with a submittal (common practice).
var actions = []string{"no exception taken", "make the corrections noted", "revise and resubmit", "rejected"}

// countsOf lists what stands behind the verdict, zeros too where they matter.
func countsOf(c engine.Counts) []countView {
	out := []countView{
		{c.Held, "held", "hold"},
		{c.Queried, "queried", "query"},
		{c.Noted, "noted", "note"},
		{c.Referred, "referred", "refer"},
		{c.Accepted, "accepted", ""},
		{c.NotChecked, "not checked", ""},
		{c.Assumed, "assumed", ""},
	}
	if c.Uncomputed > 0 {
		out = append(out, countView{c.Uncomputed, "not computed", "hold"})
	}
	return out
}

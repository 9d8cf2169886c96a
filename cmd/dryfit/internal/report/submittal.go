package report

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Submittal is one spec as its reviewer gets it.
type Submittal struct {
	Sheet    *review.Sheet // one that could be checked
	Seal     Seal
	Calcs    Calcs
	Takeoff  Takeoff
	Drawings []paper.Sheet
	Undrawn  []string            // sheets that could not be drawn, and why
	Name     func(string) string // a file's path as the page names it
}

var submittalPage = leafOf("submittal.html.tmpl", "submittal.css", "submittal.js", svg.Style)

// SubmittalHTML writes the page: one file that asks for nothing else.
func SubmittalHTML(w io.Writer, s Submittal) error {
	return submittalPage().Execute(w, s.view())
}

// submittalView is what the template puts in its places. Texts are safe to
// show; the template escapes them.
type submittalView struct {
	furniture
	Title, Path, Verdict, Class, Checked string
	Counts                               []countView
	Groups                               []groupView
	Referred                             []referredView
	Accepted                             []findingView
	Lacking, Assumed, Loosened           []pairView
	Drawings                             []drawingView
	Undrawn                              []string
	Legend                               string
	Subjects                             []subjectView
	Takeoff                              []takeoffView
	Seal                                 Seal
	Caution                              string
}

type countView struct {
	N           int
	What, Class string
}

// groupView is the findings of one severity.
type groupView struct {
	Severity, Title string
	Findings        []findingView
}

type findingView struct {
	Number                                   int
	Severity, Rule, Place, Text              string
	Measured, Limit, Passes, Basis, Accepted string
	Details                                  []detailView
}

// detailView is the part of a drawing around a finding.
type detailView struct {
	Drawing, Title, Box string
}

// referredView is what goes to one addressee.
type referredView struct {
	To, Named string
	Findings  []findingView
}

type pairView struct{ What, Says string }

type subjectView struct {
	Title   string
	Figures []figureView
	Tables  []tableView
}

type figureView struct {
	Key, Name, Value string
	Assumed          bool
	Steps            []string
	Readers          string
}

type tableView struct {
	Title, Note string
	Head        []string
	Rows        [][]string
}

type takeoffView struct {
	Title string
	Rows  [][]string
}

func (s Submittal) view() submittalView {
	p := s.Sheet.Ceiling.Project
	verdict := s.Sheet.Verdict.String()
	out := submittalView{
		furniture: submittalPage().furniture,
		Title:     title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), Path: Shown(s.Seal.Spec.Path),
		Verdict: verdict, Class: classes[verdict],
		Checked: fmt.Sprintf("checked on %s to the %s%s", s.Seal.On, Shown(s.Sheet.Standards.Name),
			map[bool]string{true: ", strictly: a query fails"}[s.Seal.Strict]),
		Counts: countsOf(s.Sheet.Counts), Undrawn: s.Undrawn, Legend: legend(s.Sheet.Ceiling.Units), Seal: s.Seal,
		Caution: Caution,
	}
	s.sortFindings(&out)
	for _, l := range lacking(s.Sheet.NotChecked) {
		out.Lacking = append(out.Lacking, pairView{listOf(l.rules), Shown(l.said())})
	}
	for _, a := range s.Sheet.Assumed {
		from := AssumedFrom(a)
		if !a.Origin.BuiltIn() {
			from = fmt.Sprintf("%s:%d", s.Name(a.Origin.File), a.Origin.Line)
		}
		out.Assumed = append(out.Assumed, pairView{Shown(a.Key + " = " + Written(a.Value)), Shown(from)})
	}
	for _, l := range s.Sheet.Loosened {
		out.Loosened = append(out.Loosened, pairView{Shown(l.Name), Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s",
			l.Used, l.BuiltIn, s.Name(l.Origin.File), l.Origin.Line, l.Source))})
	}
	for _, d := range s.Drawings {
		out.Drawings = append(out.Drawings, drawn(d))
	}
	out.Subjects, out.Takeoff = subjectsOf(s.Calcs), groupsOf(s.Takeoff)
	return out
}

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

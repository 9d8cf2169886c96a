package submittal

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
)

// groups are the severities of the page, the worst first, with their headings.
// What is referred has a part of its own.
var groups = []struct {
	engine.Severity
	title string
}{
	{engine.Hold, "Held: can't be built, carried, raised or closed as specified"},
	{engine.Query, "Queried: buildable, but outside the standards"},
	{engine.Note, "Noted"},
}

// sortFindings puts each finding in its part of the page.
func (s Submittal) sortFindings(out *submittalView) {
	by := map[engine.Severity][]findingView{}
	for i, e := range report.Entries(s.Sheet) {
		f := s.Sheet.Findings[i] // there are no faults of the file before them
		v := s.finding(i+1, e, f)
		switch {
		case e.Accepted != "":
			out.Accepted = append(out.Accepted, v)
		case f.Severity == engine.Refer:
			s.refer(out, f, v)
		default:
			by[f.Severity] = append(by[f.Severity], v)
		}
	}
	for _, g := range groups {
		if len(by[g.Severity]) > 0 {
			out.Groups = append(out.Groups, groupView{g.Severity.String(), g.title, by[g.Severity]})
		}
	}
}

// refer files a finding under whom it is referred to.
func (s Submittal) refer(out *submittalView, f engine.Finding, v findingView) {
	to := f.Rule.RefersTo
	i := slices.IndexFunc(out.Referred, func(r referredView) bool { return r.To == to })
	if i < 0 {
		i = len(out.Referred)
		named := ""
		if to == engine.ToEngineer {
			named = show.Shown(s.Sheet.Ceiling.Project.Engineer.Get())
		}
		out.Referred = append(out.Referred, referredView{To: to, Named: named})
	}
	out.Referred[i].Findings = append(out.Referred[i].Findings, v)
}

func (s Submittal) finding(number int, e report.Entry, f engine.Finding) findingView {
	v := findingView{
		Number: number, Severity: f.Severity.String(), Rule: e.Rule,
		Place: show.Shown(e.Key) + ", " + e.Line(), Text: show.Shown(e.Text),
		Passes: show.Shown(e.Passes), Basis: show.Shown(e.Basis), Accepted: show.Shown(e.Accepted),
	}
	if f.Measured.Unit != 0 && f.Bound.Unit != 0 {
		v.Measured, v.Limit = s.Sheet.Ceiling.Units.Against(f.Measured, f.Bound.Value)
	}
	for _, d := range s.Drawings {
		if at, ok := d.Marks[number]; ok {
			v.Details = append(v.Details, detailView{d.Name, d.Title, around(d, at)})
		}
	}
	return v
}

// The part of a sheet that is shown beside a finding, in mm.
const (
	detailWidth  = 96
	detailHeight = 64
)

// around is the box of a drawing around a place, within the sheet.
func around(d paper.Sheet, at paper.Point) string {
	within := func(middle, size, whole float64) float64 {
		return math.Round(max(0, min(middle-size/2, whole-size))*100) / 100
	}
	return fmt.Sprintf("%g %g %d %d", within(at.X, detailWidth, d.Width), within(at.Y, detailHeight, d.Height), detailWidth, detailHeight)
}

func listOf(ids []string) string { return strings.Join(ids, ", ") }

// subjectsOf is the calculation sheet by its headings.
func subjectsOf(c sums.Calcs) []subjectView {
	var out []subjectView
	tables := map[string]cases{} // by what they are cases of
	for _, f := range c.Figures {
		of := kind(f.Subject)
		if _, made := tables[of]; of != "" && !made {
			tables[of] = casesOf(c, of)
			if len(tables[of].rows) > 0 {
				out = append(out, subjectView{Title: of + ", case by case", Cases: tables[of].view(of)})
			}
		}
		if tables[of].has(f) && len(tablesOf(c, f.Subject)) == 0 {
			continue
		}
		if len(out) == 0 || out[len(out)-1].Title != f.Subject {
			out = append(out, subjectView{Title: f.Subject, Tables: tablesOf(c, f.Subject)})
		}
		last := &out[len(out)-1]
		last.Figures = append(last.Figures, figureOf(c, f))
	}
	return out
}

// figureOf is a figure with how it follows, step by step.
func figureOf(c sums.Calcs, f figure.Figure) figureView {
	units := c.Ceiling.Units
	v := figureView{
		Key: f.Key, Name: show.Shown(f.Name), Value: f.Printed(units), Assumed: f.Assumed,
		Readers: listOf(sums.Readers(f.Key, c.Rules)),
	}
	switch arithmetic, result := f.Worked(units); {
	case f.Formula == "":
		v.Steps = []string{show.Shown(f.Method)}
	case arithmetic == "":
		v.Steps = []string{f.Symbol + " = " + f.Formula}
	default:
		v.Steps = []string{f.Symbol + " = " + f.Formula, "= " + arithmetic + " = " + result}
	}
	return v
}

func tablesOf(c sums.Calcs, subject string) []tableView {
	var out []tableView
	for _, t := range c.Tables {
		if t.Subject != subject {
			continue
		}
		out = append(out, tableView{Title: show.Shown(t.Title), Note: show.Shown(t.Note), Head: t.Head, Rows: sums.Cells(t, c.Ceiling.Units)})
	}
	return out
}

// groupsOf is the takeoff by its kinds of things.
func groupsOf(t making.Takeoff) []takeoffView {
	var out []takeoffView
	group := ""
	for _, r := range t.Rows() {
		if r.Group != group {
			group = r.Group
			out = append(out, takeoffView{Title: takeoffTitles[group]})
		}
		cells := r.Cells()[1:]
		for i := range cells {
			cells[i] = show.Shown(cells[i])
		}
		last := &out[len(out)-1]
		last.Rows = append(last.Rows, cells)
	}
	return out
}

var takeoffTitles = map[string]string{
	"piece": "Pieces", "lumber": "Lumber to buy", "sheet": "Sheets to buy", "hardware": "Hardware", "weight": "Weight",
}

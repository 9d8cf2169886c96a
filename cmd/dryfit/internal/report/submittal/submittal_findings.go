package submittal

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
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
	for i, e := range report.Entries(s.Assessment) {
		f := s.Assessment.Findings[i] // there are no faults of the file before them
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
			named = show.Shown(s.Assessment.Ceiling.Project.Engineer.Get())
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
		v.Measured, v.Limit = s.Assessment.Ceiling.Units.Against(f.Measured, f.Bound.Value)
	}
	for _, d := range s.Drawings {
		if at, ok := d.Marks[number]; ok {
			v.Details = append(v.Details, detailView{d.Name, d.Number, d.Title, around(d, at)})
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

package submittal

import (
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/model/figure"
)

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
			out = append(out, subjectOf(c, f.Subject))
		}
		last := &out[len(out)-1]
		last.add(figureOf(c, f))
	}
	return out
}

// subjectOf is a heading with its tables.
func subjectOf(c sums.Calcs, title string) subjectView {
	out := subjectView{Title: title, Tables: tablesOf(c, title)}
	for _, t := range out.Tables {
		if t.OnScreen {
			out.OnScreen++
		}
	}
	return out
}

// add puts a figure under those before it. Paper says once how several follow.
func (s *subjectView) add(f figureView) {
	if n := len(s.Figures); n > 0 {
		before := &s.Figures[n-1]
		before.Shares = slices.Equal(before.Steps, f.Steps) && before.Readers == f.Readers
	}
	s.Figures = append(s.Figures, f)
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
		out = append(out, tableView{
			Title: show.Shown(t.Title), Note: show.Shown(t.Note), Head: t.Head, Rows: sums.Cells(t, c.Ceiling.Units),
			OnScreen: strings.HasPrefix(t.Key, "hanging.frame."),
		})
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

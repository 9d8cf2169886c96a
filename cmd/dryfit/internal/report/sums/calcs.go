// Package sums writes the figures of a ceiling, and how each is worked.
package sums

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

// Calcs is the calculation sheet of one spec.
type Calcs struct {
	Path    string
	Ceiling *layout.Ceiling
	Figures []figure.Figure
	Tables  []figure.Table
	Frames  []hanging.Frame // for the JSON
	Rules   []*engine.Rule  // to name those that read a figure
}

// calcsText writes tables of figures.
type calcsText struct{ *show.Texter }

// CalcsText writes the sheet for people: each figure with its formula and the
// same with the numbers put in.
func CalcsText(w io.Writer, c Calcs) error {
	t := calcsText{show.NewTexter(w, false)}
	p := c.Ceiling.Project
	t.Line(show.Shown(c.Path))
	for _, l := range show.Wrap("calculation sheet: "+show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), show.TextWidth) {
		t.Line(l)
	}
	t.Line(Legend(c.Ceiling.Units))
	subject := ""
	for _, f := range c.Figures {
		if f.Subject != subject {
			t.tables(c, subject)
			subject = f.Subject
			t.Line("")
			t.Line(subject)
			t.Rule("─")
		}
		WriteFigure(t.Texter, f, c.Ceiling.Units, Readers(f.Key, c.Rules))
	}
	t.tables(c, subject)
	t.Line("")
	for _, l := range show.Wrap(show.Caution, show.TextWidth) {
		t.Line(l)
	}
	return t.Flush()
}

// Legend says which units the figures of a calculation sheet are in.
func Legend(s quantity.System) string {
	if s == quantity.Imperial {
		return "lengths in inches (for volumes: feet), angles in degrees; * depends on an assumed value"
	}
	return "lengths in mm (for volumes: m), angles in degrees; * depends on an assumed value"
}

// WriteFigure writes a figure: its value, how it is worked, and what it hangs on.
func WriteFigure(t *show.Texter, f figure.Figure, s quantity.System, readBy []string) {
	mark := " "
	if f.Assumed {
		mark = "*"
	}
	value := f.Printed(s)
	lead := mark + " " + f.Key
	for _, l := range show.Wrap(show.Shown(f.Name), show.TextWidth-show.WideLabel-16) {
		first := show.Pad(lead, show.WideLabel)
		t.Line(first + show.Pad(l, show.TextWidth-14-uniseg.StringWidth(first)) + value)
		lead, value = "", ""
	}
	for _, l := range steps(f, s) {
		t.Line(strings.Repeat(" ", show.WideLabel) + l)
	}
	if len(readBy) > 0 {
		for _, l := range show.Wrap("read by "+strings.Join(readBy, ", "), show.TextWidth-show.WideLabel) {
			t.Line(strings.Repeat(" ", show.WideLabel) + l)
		}
	}
}

// steps are the lines that show how a figure comes about.
func steps(f figure.Figure, s quantity.System) []string {
	if f.Formula == "" {
		return show.Wrap(show.Shown(f.Method), show.TextWidth-show.WideLabel)
	}
	arithmetic, result := f.Worked(s)
	lines := show.Wrap(f.Symbol+" = "+f.Formula, show.TextWidth-show.WideLabel)
	if arithmetic == "" {
		return lines
	}
	return append(lines, show.Wrap("= "+arithmetic+" = "+result, show.TextWidth-show.WideLabel)...)
}

// Readers are the rules that read a figure, by their IDs.
func Readers(key string, list []*engine.Rule) []string {
	var ids []string
	for _, r := range list {
		for _, f := range r.Figures {
			if f == key {
				ids = append(ids, r.ID)
			}
		}
	}
	return ids
}

// tables writes those that end a subject.
func (t calcsText) tables(c Calcs, subject string) {
	for _, table := range c.Tables {
		if table.Subject != subject || subject == "" {
			continue
		}
		t.Line("")
		t.indented(table.Title)
		t.columns(append([][]string{table.Head}, Cells(table, c.Ceiling.Units)...))
		if table.Note != "" {
			t.indented(table.Note)
		}
	}
}

func (t calcsText) indented(text string) {
	for _, l := range show.Wrap(show.Shown(text), show.TextWidth-2) {
		t.Line("  " + l)
	}
}

// Cells are the rows of a table as they print: all of its forces in the same
// multiple, and so on.
func Cells(t figure.Table, s quantity.System) (out [][]string) {
	var values []quantity.Value
	for _, r := range t.Rows {
		values = append(values, r.Values...)
	}
	printed := s.Alike(values)
	for _, r := range t.Rows {
		out = append(out, append([]string{show.Shown(r.Label)}, printed[:len(r.Values)]...))
		printed = printed[len(r.Values):]
	}
	return out
}

// columns writes the lines of a table: each figure as far to the right as its
// column goes, and the label in what is left of the width.
func (t calcsText) columns(rows [][]string) {
	wide, label := make([]int, len(rows[0])), show.TextWidth-2
	for i := range wide[1:] {
		for _, r := range rows {
			wide[i+1] = max(wide[i+1], 2+uniseg.StringWidth(r[i+1]))
		}
		label -= wide[i+1]
	}
	for _, r := range rows {
		lines := show.Wrap(r[0], label)
		out := "  " + lines[0] + strings.Repeat(" ", max(0, label-uniseg.StringWidth(lines[0])))
		for i, cell := range r[1:] {
			out += strings.Repeat(" ", wide[i+1]-uniseg.StringWidth(cell)) + cell
		}
		t.Line(out)
		for _, l := range lines[1:] {
			t.Line("    " + l)
		}
	}
}

type jsonTable struct {
	Key     string    `json:"key"`
	Title   string    `json:"title"`
	Subject string    `json:"subject"`
	Head    []string  `json:"head"`
	Rows    []jsonRow `json:"rows"`
	Note    string    `json:"note,omitempty"`
}

type jsonRow struct {
	Label  string      `json:"label"`
	Values []jsonValue `json:"values"`
}

type jsonValue struct {
	Value *show.JSONNumber `json:"value"`
	Unit  string           `json:"unit"`
}

func tablesJSON(tables []figure.Table) []jsonTable {
	out := []jsonTable{}
	for _, t := range tables {
		j := jsonTable{Key: t.Key, Title: t.Title, Subject: t.Subject, Head: append([]string{}, t.Head...), Rows: []jsonRow{}, Note: t.Note}
		for _, r := range t.Rows {
			row := jsonRow{Label: r.Label, Values: []jsonValue{}}
			for _, v := range r.Values {
				row.Values = append(row.Values, jsonValue{show.JSONNumberOf(v), v.Unit.String()})
			}
			j.Rows = append(j.Rows, row)
		}
		out = append(out, j)
	}
	return out
}

type jsonFigure struct {
	Key     string           `json:"key"`
	Symbol  string           `json:"symbol"`
	Name    string           `json:"name"`
	Subject string           `json:"subject"`
	Value   *show.JSONNumber `json:"value"` // in SI; null where there is none, as the radius of a flat ceiling
	Unit    string           `json:"unit"`
	Printed string           `json:"printed"`
	Formula string           `json:"formula,omitempty"`
	Method  string           `json:"method,omitempty"`
	Worked  string           `json:"worked,omitempty"`
	Inputs  []jsonInput      `json:"inputs"`
	Assumed bool             `json:"assumed"`
	Rules   []string         `json:"rules"`
}

type jsonInput struct {
	Symbol string           `json:"symbol"`
	Key    string           `json:"key,omitempty"`
	Value  *show.JSONNumber `json:"value"`
	Unit   string           `json:"unit"`
}

// CalcsJSON writes the sheet as one document, values in SI.
func CalcsJSON(w io.Writer, c Calcs) error {
	out := struct {
		Path    string       `json:"path"`
		Figures []jsonFigure `json:"figures"`
		Tables  []jsonTable  `json:"tables"`
		Model   *jsonModel   `json:"model,omitempty"`
	}{Path: c.Path, Figures: []jsonFigure{}, Tables: tablesJSON(c.Tables), Model: modelJSON(c.Frames)}
	for _, f := range c.Figures {
		j := jsonFigure{
			Key: f.Key, Symbol: f.Symbol, Name: f.Name, Subject: f.Subject, Value: show.JSONNumberOf(f.Value), Unit: f.Value.Unit.String(),
			Printed: f.Printed(c.Ceiling.Units), Formula: f.Formula, Method: f.Method,
			Inputs: []jsonInput{}, Assumed: f.Assumed, Rules: append([]string{}, Readers(f.Key, c.Rules)...),
		}
		if arithmetic, result := f.Worked(c.Ceiling.Units); arithmetic != "" {
			j.Worked = fmt.Sprintf("%s = %s", arithmetic, result)
		}
		for _, t := range f.Terms {
			j.Inputs = append(j.Inputs, jsonInput{t.Symbol, t.Key, show.JSONNumberOf(t.Value), t.Value.Unit.String()})
		}
		out.Figures = append(out.Figures, j)
	}
	return show.WriteJSON(w, out)
}

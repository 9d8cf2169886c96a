package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"

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
type calcsText struct{ *texter }

// CalcsText writes the sheet for people: each figure with its formula and the
// same with the numbers put in.
func CalcsText(w io.Writer, c Calcs) error {
	t := calcsText{newTexter(w, false)}
	p := c.Ceiling.Project
	t.line(Shown(c.Path))
	for _, l := range wrap("calculation sheet: "+title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), textWidth) {
		t.line(l)
	}
	t.line(legend(c.Ceiling.Units))
	subject := ""
	for _, f := range c.Figures {
		if f.Subject != subject {
			t.tables(c, subject)
			subject = f.Subject
			t.line("")
			t.line(subject)
			t.rule("─")
		}
		writeFigure(t.texter, f, c.Ceiling.Units, readers(f.Key, c.Rules))
	}
	t.tables(c, subject)
	t.line("")
	for _, l := range wrap(Caution, textWidth) {
		t.line(l)
	}
	return t.flush()
}

func legend(s quantity.System) string {
	if s == quantity.Imperial {
		return "lengths in inches (volumes from feet), angles in degrees; * hangs on what is assumed"
	}
	return "lengths in mm (volumes from m), angles in degrees; * hangs on what is assumed"
}

// writeFigure writes a figure: its value, how it is worked, and what it hangs on.
func writeFigure(t *texter, f figure.Figure, s quantity.System, readBy []string) {
	mark := " "
	if f.Assumed {
		mark = "*"
	}
	value := s.Format(f.Value)
	lead := mark + " " + f.Key
	for _, l := range wrap(Shown(f.Name), textWidth-wideLabel-16) {
		first := pad(lead, wideLabel)
		t.line(first + pad(l, textWidth-14-uniseg.StringWidth(first)) + value)
		lead, value = "", ""
	}
	for _, l := range steps(f, s) {
		t.line(strings.Repeat(" ", wideLabel) + l)
	}
	if len(readBy) > 0 {
		for _, l := range wrap("read by "+strings.Join(readBy, ", "), textWidth-wideLabel) {
			t.line(strings.Repeat(" ", wideLabel) + l)
		}
	}
}

// steps are the lines that show how a figure comes about.
func steps(f figure.Figure, s quantity.System) []string {
	if f.Formula == "" {
		return wrap(Shown(f.Method), textWidth-wideLabel)
	}
	arithmetic, result := f.Worked(s)
	lines := wrap(f.Symbol+" = "+f.Formula, textWidth-wideLabel)
	if arithmetic == "" {
		return lines
	}
	return append(lines, wrap("= "+arithmetic+" = "+result, textWidth-wideLabel)...)
}

func readers(key string, list []*engine.Rule) []string {
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
		t.line("")
		t.indented(table.Title)
		t.columns(append([][]string{table.Head}, cells(table, c.Ceiling.Units)...))
		if table.Note != "" {
			t.indented(table.Note)
		}
	}
}

func (t calcsText) indented(text string) {
	for _, l := range wrap(Shown(text), textWidth-2) {
		t.line("  " + l)
	}
}

// cells are the rows of a table as they print: all of its forces in the same
// multiple, and so on.
func cells(t figure.Table, s quantity.System) (out [][]string) {
	var values []quantity.Value
	for _, r := range t.Rows {
		values = append(values, r.Values...)
	}
	printed := s.Alike(values)
	for _, r := range t.Rows {
		out = append(out, append([]string{Shown(r.Label)}, printed[:len(r.Values)]...))
		printed = printed[len(r.Values):]
	}
	return out
}

// columns writes the lines of a table: each figure as far to the right as its
// column goes, and the label in what is left of the width.
func (t calcsText) columns(rows [][]string) {
	wide, label := make([]int, len(rows[0])), textWidth-2
	for i := range wide[1:] {
		for _, r := range rows {
			wide[i+1] = max(wide[i+1], 2+uniseg.StringWidth(r[i+1]))
		}
		label -= wide[i+1]
	}
	for _, r := range rows {
		lines := wrap(r[0], label)
		out := "  " + lines[0] + strings.Repeat(" ", max(0, label-uniseg.StringWidth(lines[0])))
		for i, cell := range r[1:] {
			out += strings.Repeat(" ", wide[i+1]-uniseg.StringWidth(cell)) + cell
		}
		t.line(out)
		for _, l := range lines[1:] {
			t.line("    " + l)
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
	Value *jsonNumber `json:"value"`
	Unit  string      `json:"unit"`
}

func tablesJSON(tables []figure.Table) []jsonTable {
	out := []jsonTable{}
	for _, t := range tables {
		j := jsonTable{Key: t.Key, Title: t.Title, Subject: t.Subject, Head: append([]string{}, t.Head...), Rows: []jsonRow{}, Note: t.Note}
		for _, r := range t.Rows {
			row := jsonRow{Label: r.Label, Values: []jsonValue{}}
			for _, v := range r.Values {
				row.Values = append(row.Values, jsonValue{number(v), v.Unit.String()})
			}
			j.Rows = append(j.Rows, row)
		}
		out = append(out, j)
	}
	return out
}

type jsonFigure struct {
	Key     string      `json:"key"`
	Symbol  string      `json:"symbol"`
	Name    string      `json:"name"`
	Subject string      `json:"subject"`
	Value   *jsonNumber `json:"value"` // in SI; null where there is none, as the radius of a flat ceiling
	Unit    string      `json:"unit"`
	Printed string      `json:"printed"`
	Formula string      `json:"formula,omitempty"`
	Method  string      `json:"method,omitempty"`
	Worked  string      `json:"worked,omitempty"`
	Inputs  []jsonInput `json:"inputs"`
	Assumed bool        `json:"assumed"`
	Rules   []string    `json:"rules"`
}

type jsonInput struct {
	Symbol string      `json:"symbol"`
	Key    string      `json:"key,omitempty"`
	Value  *jsonNumber `json:"value"`
	Unit   string      `json:"unit"`
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
			Key: f.Key, Symbol: f.Symbol, Name: f.Name, Subject: f.Subject, Value: number(f.Value), Unit: f.Value.Unit.String(),
			Printed: c.Ceiling.Units.Format(f.Value), Formula: f.Formula, Method: f.Method,
			Inputs: []jsonInput{}, Assumed: f.Assumed, Rules: append([]string{}, readers(f.Key, c.Rules)...),
		}
		if arithmetic, result := f.Worked(c.Ceiling.Units); arithmetic != "" {
			j.Worked = fmt.Sprintf("%s = %s", arithmetic, result)
		}
		for _, t := range f.Terms {
			j.Inputs = append(j.Inputs, jsonInput{t.Symbol, t.Key, number(t.Value), t.Value.Unit.String()})
		}
		out.Figures = append(out.Figures, j)
	}
	return writeJSON(w, out)
}

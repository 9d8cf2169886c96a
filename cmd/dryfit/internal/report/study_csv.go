package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"

	"dryfit/rules/study"
	"dryfit/spec/quantity"
)

// StudyRows writes the options of a study one by one, as they come.
type StudyRows interface {
	Row(study.Row) error
	// End is called once, after the last row.
	End(Study) error
}

// StudyCSV writes a table for a spreadsheet: a line an option, its figures as
// numbers in the unit that the head names. Where marked, the last columns say
// which no other beats, and what the rest lose.
type StudyCSV struct {
	study  Study
	out    *csv.Writer
	marked bool
}

// NewStudyCSV begins the table.
func NewStudyCSV(w io.Writer, s Study, marked bool) (*StudyCSV, error) {
	c := &StudyCSV{study: s, out: csv.NewWriter(w), marked: marked}
	c.out.UseCRLF = true
	cells := []string{"option"}
	for _, d := range s.Vary {
		cells = append(cells, d.Key)
	}
	for _, column := range s.Columns {
		cells = append(cells, column.Name+c.unit(column.Unit).head())
	}
	cells = append(cells, "verdict", "why it can't be made")
	if marked {
		cells = append(cells, "unbeaten", "what it loses")
	}
	return c, c.write(cells)
}

// csvUnit is what numbers of a unit are written in.
type csvUnit struct {
	size float64
	name string
}

func (u csvUnit) head() string {
	if u.name == "" {
		return ""
	}
	return " (" + u.name + ")"
}

func (c *StudyCSV) unit(u quantity.Unit) csvUnit {
	imperial := c.study.Units() == quantity.Imperial
	switch {
	case u == quantity.Metre && imperial:
		return csvUnit{0.0254, "in"}
	case u == quantity.Metre:
		return csvUnit{0.001, "mm"}
	case u == quantity.Kilogram && imperial:
		return csvUnit{0.45359237, "lb"}
	case u == quantity.Kilogram:
		return csvUnit{1, "kg"}
	case u == quantity.Newton && imperial:
		return csvUnit{4.4482216152605, "lbf"}
	case u == quantity.Newton:
		return csvUnit{1, "N"}
	case u == quantity.Fraction:
		return csvUnit{0.01, "%"}
	default:
		return csvUnit{1, ""}
	}
}

// Row writes one option.
func (c *StudyCSV) Row(r study.Row) error {
	s := c.study
	cells := []string{strconv.Itoa(r.Index)}
	for _, v := range s.Values(r.Index) {
		cells = append(cells, fmt.Sprint(v))
	}
	for i, column := range s.Columns {
		cells = append(cells, c.number(i, r, column.Unit))
	}
	why := ""
	if !r.Made() {
		why = r.Key + ": " + r.Reason
	}
	cells = append(cells, verdict(r), why)
	if c.marked {
		mark, loses := "", ""
		if s.Front.Has(r.Index) {
			mark = "unbeaten"
		} else if r.Made() {
			loses = s.Loses(s.Front, r)
		}
		cells = append(cells, mark, loses)
	}
	return c.write(cells)
}

// csvDigits are those of a number in the table, as many as a study keeps.
const csvDigits = 6

func (c *StudyCSV) number(column int, r study.Row, u quantity.Unit) string {
	if !r.Made() || math.IsNaN(r.Figures[column]) || math.IsInf(r.Figures[column], 0) {
		return ""
	}
	x, err := strconv.ParseFloat(strconv.FormatFloat(quantity.Steady(r.Figures[column]/c.unit(u).size), 'g', csvDigits, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// write writes cells of which none that is not a number begins a formula.
func (c *StudyCSV) write(cells []string) error {
	for i, cell := range cells {
		if _, err := strconv.ParseFloat(cell, 64); err != nil {
			cells[i] = plainCell(Safe(cell))
		}
	}
	return c.out.Write(cells)
}

// End ends the table; it has no room for more.
func (c *StudyCSV) End(Study) error {
	c.out.Flush()
	return c.out.Error()
}

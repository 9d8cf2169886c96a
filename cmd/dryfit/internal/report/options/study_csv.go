package options

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
	"dryfit/spec/quantity"
)

// StudyRows writes the options of a study one by one, as they come.
type StudyRows interface {
	// Row is called once for each option, in order.
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

	columns []int // the chosen, or all
}

// NewStudyCSV begins the table.
func NewStudyCSV(w io.Writer, s Study, marked bool) (*StudyCSV, error) {
	c := &StudyCSV{study: s, out: csv.NewWriter(w), marked: marked}
	c.out.UseCRLF = true
	if c.columns = s.Chosen; len(c.columns) == 0 {
		for i := range s.Columns {
			c.columns = append(c.columns, i)
		}
	}
	cells := []string{"option"}
	for _, d := range s.Vary {
		cells = append(cells, d.Key)
	}
	for _, i := range c.columns {
		column := s.Columns[i]
		cells = append(cells, column.Name+c.unit(column.Unit).Head())
	}
	cells = append(cells, "verdict", "found by", "why it can't be made")
	if marked {
		cells = append(cells, "unbeaten", "what it loses")
	}
	return c, c.write(cells)
}

func (c *StudyCSV) unit(u quantity.Unit) show.CSVUnit { return show.CSVUnitOf(c.study.Units(), u) }

// Row writes one option.
func (c *StudyCSV) Row(r study.Row) error {
	s := c.study
	cells := []string{strconv.Itoa(r.Index)}
	for _, v := range s.Values(r.Index) {
		cells = append(cells, fmt.Sprint(v))
	}
	for _, i := range c.columns {
		cells = append(cells, c.number(i, r, s.Columns[i].Unit))
	}
	why := ""
	if !r.Made() {
		why = r.Key + ": " + r.Reason
	}
	cells = append(cells, verdict(r), r.Found(), why)
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

func (c *StudyCSV) number(column int, r study.Row, u quantity.Unit) string {
	if !r.Made() {
		return ""
	}
	return c.unit(u).Number(r.Figures[column])
}

// write writes cells of which none that is not a number begins a formula.
func (c *StudyCSV) write(cells []string) error {
	for i, cell := range cells {
		if _, err := strconv.ParseFloat(cell, 64); err != nil {
			cells[i] = show.PlainCell(show.Safe(cell))
		}
	}
	return c.out.Write(cells)
}

// End ends the table; it has no room for more.
func (c *StudyCSV) End(Study) error {
	c.out.Flush()
	return c.out.Error()
}

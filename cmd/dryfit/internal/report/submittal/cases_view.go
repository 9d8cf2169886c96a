package submittal

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/sums"
)

// casesView is what several subjects have alike, as tables: a row a case, and a
// column a figure.
type casesView struct {
	Tables  []tableView
	Columns []columnView
}

// columnView is how the figures of a column follow.
type columnView struct {
	Name, Key, Follows, Readers string
	Assumed                     bool
	Shares                      bool // what is said of the next one is said of it too
}

// view is the tables, of even width.
func (c cases) view(of string) casesView {
	var out casesView
	tables := (len(c.columns) + mostColumns - 1) / mostColumns
	for k := range tables {
		columns := c.columns[k*len(c.columns)/tables : (k+1)*len(c.columns)/tables]
		title := fmt.Sprintf("%s, table %d of %d", of, k+1, tables)
		out.Tables = append(out.Tables, c.table(of, title, columns))
	}
	for _, k := range c.columns {
		next := c.follows(k)
		if n := len(out.Columns); n > 0 {
			before := &out.Columns[n-1]
			before.Shares = before.Follows == next.Follows && before.Readers == next.Readers
		}
		out.Columns = append(out.Columns, next)
	}
	return out
}

// table has the cases of some columns; a case that has none of them is left out.
func (c cases) table(of, title string, columns []column) tableView {
	t := tableView{Title: title, Head: []string{"case"}}
	for _, k := range columns {
		t.Head = append(t.Head, show.Shown(k.name))
	}
	for _, row := range c.rows {
		cells := []string{show.Shown(strings.TrimPrefix(row, of+": "))}
		for _, k := range columns {
			cells = append(cells, c.cell(row, k))
		}
		if slices.ContainsFunc(cells[1:], func(s string) bool { return s != "" }) {
			t.Rows = append(t.Rows, cells)
		}
	}
	return t
}

func (c cases) cell(row string, k column) string {
	f, ok := c.at[row][k]
	switch {
	case !ok:
		return ""
	case strings.HasSuffix(f.Method, "; slack"):
		return "slack"
	default:
		return f.Printed(c.Ceiling.Units)
	}
}

// follows says how the figures of a column follow: what is alike in all cases. The
// case's own part of a key is a star.
func (c cases) follows(k column) columnView {
	v := columnView{Name: show.Shown(k.name)}
	var follows, readers []string
	for _, row := range c.rows {
		f, ok := c.at[row][k]
		if !ok {
			continue
		}
		v.Key = strings.SplitN(f.Key, ".", 2)[0] + ".*." + k.rest
		v.Assumed = v.Assumed || f.Assumed
		how, _, _ := strings.Cut(f.Method, ", case ")
		if f.Formula != "" {
			how = f.Symbol + " = " + f.Formula
		}
		follows = appendNew(follows, show.Shown(how))
		for _, id := range sums.Readers(f.Key, c.Rules) {
			readers = appendNew(readers, id)
		}
	}
	v.Follows, v.Readers = strings.Join(follows, "; "), listOf(readers)
	return v
}

func appendNew(list []string, s string) []string {
	if s == "" || slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

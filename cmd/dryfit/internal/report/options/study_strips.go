package options

import (
	"fmt"
	"strings"

	"github.com/rivo/uniseg"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
)

// strip is one column of the table as it is printed: two lines of head, then a cell
// for each row.
type strip struct {
	lines []string
	width int
	left  bool
}

// newStrip parts the head in two where it has a space or, of a key, a dot.
func newStrip(head string, cells []string) strip {
	above, below, two := strings.Cut(head, " ")
	if !two {
		above, below, two = strings.Cut(head, ".")
		above += "."
	}
	if !two {
		above, below = "", head
	}
	out := strip{lines: append([]string{above, below}, cells...)}
	for _, l := range out.lines {
		out.width = max(out.width, uniseg.StringWidth(l))
	}
	return out
}

// strips are the varied keys and the figures.
func (s Study) strips(rows []study.Row, columns []int) (out []strip) {
	for k, d := range s.Vary {
		var cells []string
		for _, r := range rows {
			cells = append(cells, show.Shown(fmt.Sprint(s.Values(r.Index)[k])))
		}
		out = append(out, newStrip(d.Key, cells))
	}
	for _, i := range columns {
		var cells []string
		for _, r := range rows {
			cells = append(cells, s.cell(i, r))
		}
		out = append(out, newStrip(s.Columns[i].Head, cells))
	}
	return out
}

// parts divides strips into parts that fit: the first in its own room. A strip that
// alone is too wide is a part by itself.
func parts(strips []strip, first, room int) [][]strip {
	out, used := [][]strip{nil}, 0
	for _, s := range strips {
		last := len(out) - 1
		if last > 0 {
			first = room
		}
		if n := len(out[last]); n > 0 && (used+between+s.width > first || n == mostColumns) {
			out, used, last = append(out, nil), 0, last+1
		}
		out[last] = append(out[last], s)
		used += between + s.width
	}
	return out
}

// strips writes columns side by side, with a line under their heads.
func (t studyText) strips(list []strip) {
	total := -between
	for _, s := range list {
		total += between + s.width
	}
	for n := range list[0].lines {
		var b strings.Builder
		for i, s := range list {
			if i > 0 {
				b.WriteString(strings.Repeat(" ", between))
			}
			blank := strings.Repeat(" ", s.width-uniseg.StringWidth(s.lines[n]))
			if s.left {
				b.WriteString(s.lines[n])
			} else {
				b.WriteString(blank + s.lines[n])
			}
		}
		t.Line(strings.TrimRight(b.String(), " "))
		if n == 1 {
			t.Line(strings.Repeat("─", total))
		}
	}
}

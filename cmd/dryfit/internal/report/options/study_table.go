package options

import (
	"fmt"

	"dryfit/rules/design/study"
)

const (
	// tableWidth is how many characters a table takes at most; what does not fit is
	// told below it, under the same options.
	tableWidth = 100
	// mostColumns is how many figures and keys stand side by side.
	mostColumns = 12
	between     = 2
)

// table writes the rows, numbers to the right. The verdict stands in the first part
// of a table that is too wide for one.
func (t studyText) table(s Study, rows []study.Row, columns []int) {
	var number, verdicts []string
	for _, r := range rows {
		mark := " "
		if s.Front.Has(r.Index) {
			mark = "*"
		}
		number, verdicts = append(number, mark+fmt.Sprint(r.Index)), append(verdicts, verdict(r))
	}
	option, last := newStrip("option", number), newStrip("verdict", verdicts)
	last.left = true
	room := tableWidth - option.width
	for i, part := range parts(s.strips(rows, columns), room-between-last.width, room) {
		strips := append([]strip{option}, part...)
		if i == 0 {
			strips = append(strips, last)
		} else {
			t.Line("")
		}
		t.strips(strips)
	}
}

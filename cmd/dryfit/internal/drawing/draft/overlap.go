package draft

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Overlaps lists the texts of a sheet that meet another text or a line, or that
// leave the paper: none, if the sheet can be read.
func Overlaps(s paper.Sheet) []string {
	var out []string
	var texts []paper.Text
	r := newRoom()
	for item := range paper.Ungrouped(s.Items) {
		if t, ok := item.(paper.Text); ok {
			texts = append(texts, t)
		}
		for _, line := range strokes(item) {
			r.draw(line)
		}
	}
	sheet := box{0, 0, s.Width, s.Height}
	for _, t := range texts {
		b := boxOf(t)
		switch {
		case t.Text == "":
			continue
		case !b.within(sheet):
			out = append(out, fmt.Sprintf("%q leaves the sheet", t.Text))
		case !r.free(b):
			out = append(out, fmt.Sprintf("%q at %.1f, %.1f meets a line or a text", t.Text, t.At.X, t.At.Y))
		}
		r.write(b)
	}
	return out
}

package submittal

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// figures are the drawings in the order in which they take the fewest pages, and the
// sheets that they are of with what is noted of each: what several note stands once.
func (s Submittal) figures() (drawn []drawingView, sheets []sheetView) {
	var noted []pairView
	for _, d := range s.Drawings {
		if len(sheets) == 0 || sheets[len(sheets)-1].Name != sheetOf(d) {
			sheets = append(sheets, sheetView{Name: d.Name, Number: d.Number, Title: d.Title})
		}
		last := &sheets[len(sheets)-1]
		for _, n := range d.Rest {
			if note := (pairView{n.Title, said(n)}); note.Says != "" && !slices.Contains(noted, note) {
				noted, last.Notes = append(noted, note), append(last.Notes, note)
			}
		}
	}
	times := map[string]int{}
	for _, d := range packed(s.Drawings) {
		page := "upright"
		if !upright(d) {
			page = "lying"
		}
		v := drawingView{show.Drawn(d), page, ""}
		if v.Region = v.Title; times[v.Title] > 0 {
			v.Region = fmt.Sprintf("%s, figure %d", v.Title, times[v.Title]+1)
		}
		times[v.Title]++
		drawn = append(drawn, v)
	}
	return drawn, sheets
}

// sheetOf is the name of the sheet that a figure is of.
func sheetOf(d paper.Sheet) string {
	name, _, _ := strings.Cut(d.Name, "-")
	return name
}

// upright reports whether a figure is for an upright page.
func upright(d paper.Sheet) bool { return d.Width <= widestUpright }

// What an upright page of A4 or Letter has room for, and what the caption over a figure
// takes of it, in mm.
const (
	pageRoom    = 252
	captionHigh = 9
)

// packed moves a figure up to the upright page of one before it where it has room there,
// if none that it has to come after is passed over.
func packed(list []paper.Sheet) (out []paper.Sheet) {
	list = slices.Clone(list)
	for len(list) > 0 {
		first := list[0]
		out, list = append(out, first), list[1:]
		room := pageRoom - captionHigh - first.Height
		for i := 0; upright(first) && i < len(list); i++ {
			d := list[i]
			passed := slices.ContainsFunc(list[:i], func(o paper.Sheet) bool { return o.Name == d.After })
			if takes := captionHigh + d.Height; upright(d) && !passed && takes <= room {
				room -= takes
				out, list = append(out, d), slices.Delete(list, i, i+1)
				i--
			}
		}
	}
	return out
}

// widestUpright is how wide, in mm, a figure on an upright page of A4 or Letter is.
const widestUpright = 190

// said is what a note says, in one run.
func said(n paper.Note) string {
	var b strings.Builder
	for i, line := range n.Lines {
		switch line = show.Shown(line); {
		case i == 0:
		case strings.HasSuffix(b.String(), "."):
			b.WriteString(" ")
		default:
			b.WriteString("; ")
		}
		b.WriteString(line)
	}
	return b.String()
}

package sheet

import (
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Notes are the sheets of what the columns of some sheets have no room for: none,
// where all had. A line that several sheets leave out stands there once. The first of
// them has a place among all sheets of a set; 0 is none.
func Notes(in Input, drawn []paper.Sheet, place int) []paper.Sheet {
	all := gathered(drawn)
	if len(all) == 0 {
		return nil
	}
	size := draft.Size{Width: drawn[0].Width, Height: drawn[0].Height} // one paper for a set
	for _, imperial := range []bool{false, true} {
		for _, s := range draft.Series(imperial) {
			if s.Width == size.Width {
				size = s
			}
		}
	}
	var out []paper.Sheet
	for rows := size.Rows(all); len(rows) > 0; {
		s := &Subject{Name: "notes", Title: "Notes", About: "Notes that do not fit on the other sheets.", Kind: "notes", Place: place}
		if len(out) > 0 {
			s.Name = fmt.Sprintf("notes-%d", len(out)+1)
			s.Place = place + min(place, 1)*len(out)
		}
		frame := in.frame(s, size, 0)
		frame.Notes = nil
		board := draft.New(frame)
		board.In("notes", func() { rows = board.Rows(rows) })
		out = append(out, board.Finish())
	}
	return out
}

// gathered are the notes that sheets leave out, those of one title together.
func gathered(drawn []paper.Sheet) (notes []paper.Note) {
	for _, s := range drawn {
		for _, n := range s.Rest {
			at := slices.IndexFunc(notes, func(m paper.Note) bool { return m.Title == n.Title })
			if at < 0 {
				at = len(notes)
				notes = append(notes, paper.Note{Title: n.Title})
			}
			for _, line := range n.Lines {
				if !slices.Contains(notes[at].Lines, line) {
					notes[at].Lines = append(notes[at].Lines, line)
				}
			}
		}
	}
	return notes
}

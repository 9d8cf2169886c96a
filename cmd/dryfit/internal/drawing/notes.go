package drawing

import (
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Notes are the sheets of what the columns of some sheets have no room for: none,
// where all had. A line that several sheets leave out stands there once.
func Notes(in Input, drawn []paper.Sheet) []paper.Sheet {
	return in.notes(drawn, 0)
}

// notes are those sheets, the first of which has a place among all; 0 is none.
func (in Input) notes(drawn []paper.Sheet, place int) []paper.Sheet {
	notes := gathered(drawn)
	if len(notes) == 0 {
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
	for rows := size.Rows(notes); len(rows) > 0; {
		s := &subject{name: "notes", title: "Notes", about: "What the other sheets have no room to list.", kind: "notes", place: place}
		if len(out) > 0 {
			s.name = fmt.Sprintf("notes-%d", len(out)+1)
			s.place = place + min(place, 1)*len(out)
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

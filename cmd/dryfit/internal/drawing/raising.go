package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/hoist"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/raising"
)

// raisingName is the sheet of the raising plan.
const raisingName = "raising"

// NoPlanError says why there is no raising plan, and so no sheet of it.
type NoPlanError struct{ Why string }

// Error names the sheet and the reason.
func (e *NoPlanError) Error() string {
	return "the " + raisingName + " sheet is not drawn: there is no raising plan: " + e.Why
}

// raisingSheet is the frames of raising a panel.
func raisingSheet(in sheet.Input) (*sheet.Subject, error) {
	frames, err := raisingFrames(in)
	if err != nil {
		return nil, err
	}
	out := raisingOf(in, hoist.Of(in.Ceiling(), frames))
	out.About = fmt.Sprintf("%d frames of raising a panel of %d, from the floor to its straps, with what carries it, the people and what is kept clear.", len(frames), in.Ceiling().Panel.Count.Get())
	return out, nil
}

// raisingParts are the figures of the frames: two a page, one under the other, where
// they have room.
func raisingParts(in sheet.Input, page draft.Size) (out []*sheet.Subject, err error) {
	frames, err := raisingFrames(in)
	if err != nil {
		return nil, err
	}
	for first := 0; first < len(frames); {
		last := min(first+2, len(frames))
		s := raisingPart(in, frames, first, last)
		if math.IsInf(s.FillScale(page), 1) {
			last = first + 1
			s = raisingPart(in, frames, first, last)
		}
		first, out = last, append(out, s)
	}
	return out, nil
}

// raisingPart is the figure of the frames from first to before last.
func raisingPart(in sheet.Input, frames []raising.Frame, first, last int) *sheet.Subject {
	s := raisingOf(in, hoist.Stacked(in.Ceiling(), frames, first, last))
	which := fmt.Sprintf("Frames %d and %d of %d. ", first+1, last, len(frames))
	if last == first+1 {
		which = fmt.Sprintf("Frame %d of %d. ", last, len(frames))
	}
	s.About = which + "What carries the panel, the people and what is kept clear. Before all else, read “" + beforeAllElse + "” in the notes after the drawings."
	return s
}

// raisingFrames are those of the plan, or why there is none.
func raisingFrames(in sheet.Input) ([]raising.Frame, error) {
	if in.Assessment.Verdict == engine.Failed {
		return nil, &NoPlanError{"the check fails the spec"}
	}
	plan := in.Assessment.Results.Raising()
	if why := plan.None(in.Ceiling()); why != "" {
		return nil, &NoPlanError{why}
	}
	frames := in.Assessment.Results.Frames()
	if len(frames) > mostFrames {
		return nil, &sheet.LimitError{Sheet: raisingName, Why: fmt.Sprintf("would show %d frames, and shows at most %d; dryfit raise prints all", len(frames), mostFrames)}
	}
	return frames, nil
}

const beforeAllElse = "Read first"

// raisingOf is the sheet of some frames.
func raisingOf(in sheet.Input, s *hoist.Arrangement) *sheet.Subject {
	return &sheet.Subject{
		Name: raisingName, Title: "Raising plan",
		Wide: s.Wide(), High: s.High(), Right: s.Beside() + markRoom, Below: s.Below(), LeastWide: s.LeastWide(), Tall: s.Down, Best: s.Best(),
		Shows: []string{"lift", "crew"},
		Notes: []paper.Note{{Title: beforeAllElse, Lines: raisingNotes(in)}},
		Draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			places := map[int]paper.Point{}
			for table, at := range s.Draw(b, v) {
				in.At(places, at, table)
			}
			return places
		},
	}
}

// mostFrames is how many a sheet shows: past them they are too small.
const mostFrames = 22

// raisingNotes are what is read before the frames, and how these are drawn.
func raisingNotes(in sheet.Input) []string {
	c, plan := in.Ceiling(), in.Assessment.Results.Raising()
	out := append(raising.Safety(c),
		"Each force is of both edge ribs together, of the heaviest panel; dryfit raise prints the forces after each loss.",
		"Hatched: keep clear. This is the plan of the panel and a strip around it as wide as the panel's top is high above the floor, up to the walls. dryfit chose it, because no drop zone is published. Only the numbered people are inside; dryfit also chose their distance from the panel.",
		"A circle with a cross is the mass centre. Dashed: where the panel was before. Dash and dots: panels that already hang. Masts and forks are not drawn to scale. If the dots of two people would touch, one is smaller without a number, or left out.")
	return append(out, plan.NotJudged(c)...)
}

package drawing

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/hoist"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/raising"
)

// raisingName is the sheet of the raising plan.
const raisingName = "raising"

// NoPlanError says why there is no raising plan, and so no sheet of it.
type NoPlanError struct{ Why string }

func (e *NoPlanError) Error() string {
	return "the " + raisingName + " sheet is not drawn: there is no raising plan: " + e.Why
}

// raisingSheet is the frames of raising a panel.
func raisingSheet(in Input) (*subject, error) {
	c, plan := in.ceiling(), in.Sheet.Results.Raising()
	if in.Sheet.Verdict == engine.Failed {
		return nil, &NoPlanError{"the check fails the spec"}
	}
	if why := plan.None(c); why != "" {
		return nil, &NoPlanError{why}
	}
	frames := in.Sheet.Results.Frames()
	if len(frames) > mostFrames {
		return nil, &LimitError{raisingName, fmt.Sprintf("would show %d frames, and shows at most %d; dryfit raise prints all", len(frames), mostFrames)}
	}
	s := hoist.Of(c, frames)
	return &subject{
		name: raisingName, title: "Raising plan",
		about: fmt.Sprintf("%d frames of raising a panel of %d, from the floor to its straps, with what carries it, the people and what is kept clear.", len(frames), c.Panel.Count.Get()),
		wide:  s.Wide(), high: s.High(), right: s.Beside(), below: s.Below(), leastWide: s.LeastWide(), leastHigh: s.LeastHigh(), best: s.Best(),
		shows: []string{"lift", "crew"},
		notes: []paper.Note{{Title: "Before all else", Lines: raisingNotes(in)}},
		draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			places := map[int]paper.Point{}
			for table, at := range s.Draw(b, v) {
				in.at(places, at, table)
			}
			return places
		},
	}, nil
}

// mostFrames is how many a sheet shows: past them they are too small.
const mostFrames = 18

// raisingNotes are what is read before the frames, and how these are drawn.
func raisingNotes(in Input) []string {
	c, plan := in.ceiling(), in.Sheet.Results.Raising()
	out := append(raising.Safety(c),
		"Each force is of both edge ribs together, of the heaviest panel; dryfit raise prints the forces after each loss.",
		"Hatched: keep clear. It is the plan of the panel and around it the height of its top above the floor, ended at the walls: a choice of this program, for no drop zone is published. Only those who are numbered are inside; how far they stand from the panel is a choice too.",
		"A circle with a cross is the mass centre. Dashed: where the panel was before. Dash and dots: what hangs already. Masts and forks are not drawn to scale. Where the dots of two people would meet, one is smaller and has no number, or is left out.")
	return append(out, plan.NotJudged(c)...)
}

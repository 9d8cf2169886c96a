package sheet

import (
	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/spec/quantity"
)

// Compose chooses the paper and the scale, draws, and lets the board place the
// rest. Its errors are a *LimitError and a *FitError, and one for a paper of no known name.
func Compose(in Input, o Options, s *Subject) (paper.Sheet, error) {
	imperial := in.Ceiling().Units == quantity.Imperial
	s = s.roomy(imperial, o)
	size, scale, err := s.fit(imperial, o)
	if err != nil {
		return paper.Sheet{}, err
	}
	board := draft.New(in.frame(s, size, scale))
	low, high := board.Area()
	v := draft.View{Scale: scale}
	spareX := high.X - low.X - s.Left - s.Right - s.across(scale)
	spareY := high.Y - low.Y - s.Above - s.Below - s.down(scale)
	v.Origin = paper.Point{X: low.X + s.Left + spareX/2, Y: high.Y - s.Below - spareY/2}
	places := s.Draw(board, v)
	for _, n := range in.bites(s.Shows) {
		if at, ok := places[n]; ok {
			board.Mark(n, at)
		}
	}
	out := board.Finish()
	out.Number = show.Shown(in.number(s.Place))
	return out, nil
}

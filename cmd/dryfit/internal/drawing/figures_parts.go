package drawing

import (
	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// partsOf are the figures of a sheet on a page, where it is more than one, or another one.
var partsOf = map[string]func(Input, draft.Size) ([]*subject, error){
	"plan": planParts, "panel": panelParts, "straps": strapsParts, "route": routeParts, raisingName: raisingParts,
}

// planParts are the figures of the plan: the row in the measured room is one of its own.
func planParts(in Input, _ draft.Size) ([]*subject, error) {
	s, err := in.planWith(nil)
	row := in.row()
	if err != nil || row == nil {
		return []*subject{s}, err
	}
	return []*subject{s, row.subject()}, nil
}

// subject is the row alone.
func (d *rowOf) subject() *subject {
	return &subject{
		name: "plan", title: "The room as measured", about: "The row of panels between the walls as they were measured.",
		wide: d.long(), left: 10, right: 10, above: 4, below: 4, leastWide: d.wide(), leastHigh: d.high(),
		shows: []string{"survey"}, notes: d.notes(),
		draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			places := map[int]paper.Point{}
			d.draw(b, paper.Point{X: v.Origin.X, Y: v.Origin.Y - d.high()}, v.Scale, places)
			return places
		},
	}
}

// strapsParts is the diagram with its legend under the right margin too.
func strapsParts(in Input, _ draft.Size) ([]*subject, error) {
	s, err := straps(in)
	if err == nil {
		s.leastWide -= s.right
	}
	return []*subject{s}, err
}

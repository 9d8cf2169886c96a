package section

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/model/layout"
)

// ShownFloor is how far below the springing the floor is drawn.
func ShownFloor(c *layout.Ceiling) float64 {
	return min(c.Room.Height.Get(), tallest*c.Vault.Span.Get())
}

// Lines are the vault and the room across.
func Lines(c *layout.Ceiling, v draft.View) []paper.Item {
	b := draft.Blank("", "", "", draft.Size{})
	d := &sectionOf{c: c, b: b, v: v, framing: math.NaN()}
	d.vault()
	span, floor := c.Vault.Span.Get(), -ShownFloor(c)
	wall := (c.Room.Width.Get() - span) / 2
	for _, y := range []float64{-wall, span + wall} { // in two, so that the lower half is the same where the rise is not
		b.Line(v.At(y, c.Vault.Crown.Get()), v.At(y, 0), pen.Edge)
		b.Line(v.At(y, 0), v.At(y, floor), pen.Edge)
	}
	b.Line(v.At(-wall, floor), v.At(span+wall, floor), pen.Edge)
	b.Line(v.At(-wall, 0), v.At(span+wall, 0), pen.Edge)
	return b.Finish().Items
}

package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/rules/model/layout"
)

// shownFloor is how far below the springing the floor is drawn.
func shownFloor(c *layout.Ceiling) float64 {
	return min(c.Room.Height.Get(), tallest*c.Vault.Span.Get())
}

// sectionLines are the vault and the room across.
func sectionLines(c *layout.Ceiling, v draft.View) []paper.Item {
	b := draft.Blank("", "", "", draft.Size{Width: overlayWide, Height: overlayWide})
	d := &sectionOf{c: c, b: b, v: v, framing: math.NaN()}
	d.vault()
	span, floor := c.Vault.Span.Get(), -shownFloor(c)
	wall := (c.Room.Width.Get() - span) / 2
	for _, y := range []float64{-wall, span + wall} { // in two, so that the lower half is the same where the rise is not
		b.Line(v.At(y, c.Vault.Crown.Get()), v.At(y, 0), edge)
		b.Line(v.At(y, 0), v.At(y, floor), edge)
	}
	b.Line(v.At(-wall, floor), v.At(span+wall, floor), edge)
	b.Line(v.At(-wall, 0), v.At(span+wall, 0), edge)
	return b.Finish().Items
}

// planLines are the members and the seams as seen from below.
func planLines(c *layout.Ceiling, v draft.View) []paper.Item {
	b := draft.Blank("", "", "", draft.Size{Width: overlayWide, Height: overlayWide})
	d := &planOf{c: c, b: b, near: c.NearGap()}
	d.v = v
	d.members()
	d.seams()
	return b.Finish().Items
}

// viewLines are the edges of the members' undersides and of the walls, none of which
// hides another.
func viewLines(c *layout.Ceiling, low, high paper.Point) (out []paper.Item) {
	for _, i := range picture.View(c, low, high) {
		if p, ok := i.(paper.Poly); ok && p.Pen != paper.None {
			out = append(out, p)
		}
	}
	return out
}

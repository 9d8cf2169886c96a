package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
)

// onEdge is how far from an edge, in m, a point lies that is on it but for round-off.
const onEdge = 1e-9

// lay turns a figure of the section, or its like, into corners on paper.
func lay(v draft.View, r curve.Region) []paper.Point {
	out := make([]paper.Point, 0, len(r))
	for _, p := range r {
		out = append(out, v.At(p.Y, p.Z))
	}
	return out
}

// rectangle is one in the model, from corner to corner.
func rectangle(v draft.View, x0, y0, x1, y1 float64) []paper.Point {
	return []paper.Point{v.At(x0, y0), v.At(x1, y0), v.At(x1, y1), v.At(x0, y1)}
}

// circle is a whole one.
func circle(c paper.Point, r float64, s paper.Stroke) paper.Arc {
	return paper.Arc{C: c, R: r, To: 2 * math.Pi, Stroke: s}
}

// onArc reports whether the intrados is one arc of a circle.
func onArc(c *layout.Ceiling) bool {
	return c.Vault.Shape().OneArc
}

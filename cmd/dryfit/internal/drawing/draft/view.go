package draft

import (
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// View lays a model on the sheet, which is in m with y upward.
type View struct {
	Origin paper.Point // where the model's origin lies
	Scale  float64     // 20 is 1:20
}

// At is where a point of the model lies.
func (v View) At(x, y float64) paper.Point {
	return paper.Point{X: v.Origin.X + v.Size(x), Y: v.Origin.Y - v.Size(y)}
}

// Size is a length of the model on paper, in mm.
func (v View) Size(m float64) float64 { return m * 1000 / v.Scale }

// Rectangle is one in the model, from corner to corner.
func (v View) Rectangle(x0, y0, x1, y1 float64) []paper.Point {
	return []paper.Point{v.At(x0, y0), v.At(x1, y0), v.At(x1, y1), v.At(x0, y1)}
}

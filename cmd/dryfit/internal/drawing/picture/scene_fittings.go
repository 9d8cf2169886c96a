package picture

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// fittingTone is that of a fitting's face.
const fittingTone = paper.Paper + 8

// fittings paints those of a coffer on its back, as far as they are seen through its
// mouth. What stands in the coffer is painted over them.
func (s *scene) fittings(i, j int, step func(int) float64, x0, x1 float64) {
	if !s.eye.lit {
		return
	}
	for _, f := range s.c.Fitting.Get() {
		if at := f.Coffer.Get(); at[0] != j+1 || at[1] != i+1 {
			continue
		}
		face := s.fittingFace(f, i, j)
		for k := range s.steps {
			mouth := s.eye.project([]space{s.at(x0, step(k), 0), s.at(x1, step(k), 0), s.at(x1, step(k+1), 0), s.at(x0, step(k+1), 0)})
			if len(mouth) > 2 {
				s.add(face, mouth, fittingTone, paper.None)
			}
		}
	}
}

// fittingFace is the outline of a fitting on the back of its coffer.
func (s *scene) fittingFace(f layout.Fitting, i, j int) (out []space) {
	c := s.c
	x, a := (c.RibAt(i)+c.RibAt(i+1))/2, (float64(j)+0.5)*c.Grid.ModuleAround.Get()
	if f.At.Given() {
		x, a = x+f.At.Along.Get(), a+f.At.Around.Get()
	}
	depth := c.Skin.Setback.Get()
	if !f.Diameter.Given() {
		l, w := f.Length.Get()/2, f.Width.Get()/2
		return []space{s.at(x-l, a-w, depth), s.at(x+l, a-w, depth), s.at(x+l, a+w, depth), s.at(x-l, a+w, depth)}
	}
	const corners = 24
	for k := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / corners)
		out = append(out, s.at(x+f.Diameter.Get()/2*cos, a+f.Diameter.Get()/2*sin, depth))
	}
	return out
}

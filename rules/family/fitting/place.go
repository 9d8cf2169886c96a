package fitting

import (
	"fmt"
	"math"

	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// place is a fitting of the spec in its coffer.
type place struct {
	layout.Fitting
	c      *layout.Ceiling
	number int // in the spec, from 1
}

// shape is a fitting in its coffer's own coordinates: from its centre, around
// the arc toward the right springing and along the axis toward the far end.
type shape struct {
	around, along float64
	halfA, halfL  float64 // half its size each way
	round         bool
}

// places are the fittings of a ceiling.
func places(c *layout.Ceiling) []place {
	var out []place
	for i, f := range c.Fitting.Get() {
		out = append(out, place{Fitting: f, c: c, number: i + 1})
	}
	return out
}

func (f place) shape() shape {
	s := shape{around: f.At.Around.Get(), along: f.At.Along.Get()}
	if f.Diameter.Given() {
		s.round, s.halfA, s.halfL = true, f.Diameter.Get()/2, f.Diameter.Get()/2
	} else {
		s.halfA, s.halfL = f.Width.Get()/2, f.Length.Get()/2
	}
	return s
}

// coffer is which one it is in.
func (f place) coffer() (around, along int) {
	at := f.Coffer.Get()
	return at[0], at[1]
}

// key is that of the fitting, or of a part of it.
func (f place) key(parts ...any) string {
	return spec.Key(append([]any{"fitting", f.number}, parts...)...)
}

// where names the coffer.
func (f place) where() string {
	around, along := f.coffer()
	return fmt.Sprintf("coffer %d, %d", around, along)
}

// beyond reports whether there is no such coffer.
func (f place) beyond() bool {
	around, along := f.coffer()
	return around > f.c.Grid.Around.Get() || along > f.c.Grid.Along.Get()
}

// clear is the size of a coffer between its rails and between its ribs, at the
// intrados, where it is least.
func (f place) clear() (around, along float64) {
	return f.c.Grid.ModuleAround.Get() - f.c.Rail.Width.Get(), f.c.Clear()
}

// gap is the clear distance between two fittings in one coffer; negative where
// they overlap.
func gap(a, b shape) float64 {
	da, dl := math.Abs(a.around-b.around), math.Abs(a.along-b.along)
	switch {
	case a.round && b.round:
		return math.Hypot(da, dl) - a.halfA - b.halfA
	case a.round:
		return beside(da-b.halfA, dl-b.halfL) - a.halfA
	case b.round:
		return beside(da-a.halfA, dl-a.halfL) - b.halfA
	default:
		return beside(da-a.halfA-b.halfA, dl-a.halfL-b.halfL)
	}
}

// beside is the distance to a rectangle of a point that is so far beyond its
// sides each way; negative inside.
func beside(da, dl float64) float64 {
	if da <= 0 && dl <= 0 {
		return math.Max(da, dl)
	}
	return math.Hypot(math.Max(0, da), math.Max(0, dl))
}

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

// side is one of the four members around a coffer, and how far the fitting
// stays clear of it: negative where it reaches over it.
type side struct {
	member string // "rib", "rail"
	way    string
	clear  float64
	along  bool // lies in the axis's direction from the fitting: a rib
	after  bool // on the far or right side
}

func (f place) sides() [4]side {
	a, l := f.clear()
	at := f.shape()
	return [4]side{
		{"rail", "toward the left springing", a/2 + at.around - at.halfA, false, false},
		{"rail", "toward the right springing", a/2 - at.around - at.halfA, false, true},
		{"rib", "toward the near end", l/2 + at.along - at.halfL, true, false},
		{"rib", "toward the far end", l/2 - at.along - at.halfL, true, true},
	}
}

// nearest is the member that the fitting comes nearest to, or reaches over most.
func (f place) nearest() side {
	sides := f.sides()
	near := sides[0]
	for _, s := range sides[1:] {
		if s.clear < near.clear {
			near = s
		}
	}
	return near
}

// inTheWay lists what else is at the rib that a fitting reaches over: the seam,
// its tenons, the straps on a panel's edge rib.
func (f place) inTheWay(s side) []string {
	around, rib := f.coffer() // the rib from 0 at the near end
	if !s.after {
		rib--
	}
	if inPanel := max(1, f.c.Grid.Along.Get()/f.c.Panel.Along.Get()); !s.along || rib%inPanel != 0 {
		return nil // a rail, or a rib within a panel
	}
	at := f.shape()
	centre := (float64(around)-0.5)*f.c.Grid.ModuleAround.Get() + at.around
	var out []string
	meets := func(name string, n int, place, half float64) {
		if math.Abs(place-centre) < at.halfA+half {
			out = append(out, fmt.Sprintf("%s %d", name, n))
		}
	}
	if rib > 0 && rib < f.c.Grid.Along.Get() {
		out = append(out, "the seam in it")
		for n, t := range f.tenons() {
			meets("tenon", n+1, t, f.c.Seam.Tenon.Width.Get()/2)
		}
	}
	strap := f.c.Strap
	for k, t := range strap.Stations.Get() {
		meets("strap", k+1, t*f.c.Vault.Arc.Get(), strap.Width.Get()/2)
	}
	return out
}

// tenons are where those of a seam lie along the whole arc, piece by piece.
func (f place) tenons() (out []float64) {
	arc := f.c.Panel.Arc.Get()
	for piece := range f.c.Panel.Around.Get() {
		for _, t := range f.c.TenonStations(arc) {
			out = append(out, float64(piece)*arc+t)
		}
	}
	return out
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

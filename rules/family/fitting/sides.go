package fitting

import (
	"fmt"
	"math"
)

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

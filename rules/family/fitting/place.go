package fitting

import (
	"fmt"
	"math"

	"dryfit/rules/layout"
	"dryfit/spec"
)

// place is a fitting in its coffer, in the coffer's own coordinates: from its
// centre, around the arc toward the right springing and along the axis toward
// the far end.
type place struct {
	spec.Fitting
	c             *layout.Ceiling
	number        int // in the spec, from 1
	around, along float64
	halfA, halfL  float64 // half its size each way
	round         bool
}

// places are the fittings of a ceiling.
func places(c *layout.Ceiling) []place {
	var out []place
	for i, f := range c.Spec.Fitting {
		p := place{Fitting: f, c: c, number: i + 1}
		if f.Size.Diameter != nil {
			p.round, p.halfA = true, float64(*f.Size.Diameter)/2
			p.halfL = p.halfA
		} else {
			p.halfA, p.halfL = float64(*f.Size.Width)/2, float64(*f.Size.Length)/2
		}
		if f.At != nil {
			p.around, p.along = float64(f.At.Around), float64(f.At.Along)
		}
		out = append(out, p)
	}
	return out
}

// key is that of the fitting, or of a part of it.
func (f place) key(parts ...any) string {
	return spec.Key(append([]any{"fitting", f.number}, parts...)...)
}

// where names the coffer.
func (f place) where() string { return fmt.Sprintf("coffer %d, %d", f.Coffer[0], f.Coffer[1]) }

// beyond reports whether there is no such coffer.
func (f place) beyond() bool { return f.Coffer[0] > f.c.Grid.Around || f.Coffer[1] > f.c.Grid.Along }

// clear is the size of a coffer between its rails and between its ribs, at the
// intrados, where it is least.
func (f place) clear() (around, along float64) {
	return f.c.Grid.ModuleAround - f.c.Rail.Width, f.c.Clear()
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
	return [4]side{
		{"rail", "toward the left springing", a/2 + f.around - f.halfA, false, false},
		{"rail", "toward the right springing", a/2 - f.around - f.halfA, false, true},
		{"rib", "toward the near end", l/2 + f.along - f.halfL, true, false},
		{"rib", "toward the far end", l/2 - f.along - f.halfL, true, true},
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
	rib := f.Coffer[1] // from 0 at the near end
	if !s.after {
		rib--
	}
	if inPanel := max(1, f.c.Grid.Along/f.c.Panel.Along); !s.along || rib%inPanel != 0 {
		return nil // a rail, or a rib within a panel
	}
	centre := (float64(f.Coffer[0])-0.5)*f.c.Grid.ModuleAround + f.around
	var out []string
	meets := func(name string, n int, at, half float64) {
		if math.Abs(at-centre) < f.halfA+half {
			out = append(out, fmt.Sprintf("%s %d", name, n))
		}
	}
	if rib > 0 && rib < f.c.Grid.Along {
		out = append(out, "the seam in it")
		stations := f.c.TenonStations(f.c.Panel.Arc)
		for piece := range f.c.Panel.Around {
			for k, t := range stations {
				meets("tenon", piece*len(stations)+k+1, float64(piece)*f.c.Panel.Arc+t, f.c.Seam.Tenon.Width/2)
			}
		}
	}
	if strap := f.c.Spec.Strap; strap != nil {
		half := 0.0
		if strap.Width != nil {
			half = float64(*strap.Width) / 2
		}
		for k, t := range strap.Stations {
			meets("strap", k+1, float64(t)*f.c.Vault.Arc, half)
		}
	}
	return out
}

// gap is the clear distance between two fittings in one coffer; negative where
// they overlap.
func gap(a, b place) float64 {
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

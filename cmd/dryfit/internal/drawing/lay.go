package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/layout"
)

// lay turns a figure of the section, or its like, into corners on paper.
func lay(v draft.View, r layout.Region) []paper.Point {
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
	p := c.Spec.Vault.Profile
	return p == "segmental" || p == "semicircular"
}

// ribAt is where along the axis the middle of a rib lies, from 0 at the near
// end of the vault; the gaps at the seams are counted.
func ribAt(c *layout.Ceiling, i int) float64 {
	x := float64(i) * c.Grid.ModuleAlong
	if !c.Grid.HalfEnds {
		x += c.Rib.Width / 2
	}
	return x + c.Seam.Gap*(float64(seamsBefore(c, i))+half(isSeam(c, i)))
}

func half(yes bool) float64 {
	if yes {
		return 0.5
	}
	return 0
}

// isSeam reports whether two panels meet at a rib.
func isSeam(c *layout.Ceiling, i int) bool {
	return i > 0 && i < c.Grid.Along && math.Abs(remainder(float64(i), c.Panel.Modules)) < 1e-9
}

func remainder(x, by float64) float64 { return x - by*math.Round(x/by) }

// seamsBefore counts the seams nearer than a rib.
func seamsBefore(c *layout.Ceiling, i int) int {
	n := 0
	for k := 1; k < i; k++ {
		if isSeam(c, k) {
			n++
		}
	}
	return n
}

// nearEnd is where the vault begins, from the near end wall: the last gap.
func nearEnd(c *layout.Ceiling) float64 {
	gap := 0.0
	if c.Spec.Close.FirstGap != nil {
		gap = float64(*c.Spec.Close.FirstGap)
	} else {
		gap = (float64(c.Spec.Room.Length) - c.BuiltLength()) / 2
	}
	return float64(c.Spec.Room.Length) - gap - c.BuiltLength()
}

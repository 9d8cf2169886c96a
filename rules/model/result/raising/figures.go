package raising

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// centre is the mass centre of the panel without its straps, which are fixed when it
// is up.
func centre(p layout.Panel) curve.Point {
	mass, at := p.Mass.Get(), p.Centre.Get()
	y, z := mass*at.Y, mass*at.Z
	for _, piece := range p.Pieces.Get() {
		if piece.Kind == layout.Hanger {
			m := piece.Mass * float64(piece.Count)
			mass, y, z = mass-m, y-m*piece.Centre.Y, z-m*piece.Centre.Z
		}
	}
	return curve.Point{Y: y / mass, Z: z / mass}
}

// Figures are those of turning a panel down from its edge on to its feet, and of
// where its mass is. How the pieces of a split arch are turned is not worked out.
func Figures(c *layout.Ceiling) []figure.Figure {
	l := c.Lines("raising")
	panel := c.Panel
	across := c.Number("raise.centre.across", func() float64 { return centre(panel).Y })
	up := c.Number("raise.centre.up", func() float64 { return centre(panel).Z })
	along := c.Number("raise.centre.along", func() float64 { return panel.EndLength.Get() / 2 })
	weight := c.Number("", func() float64 { return panel.Mass.Get() * gravity })
	newtons := func(v layout.Number) figure.Measure { return layout.Measured(v, quantity.Newton) }
	w := func() figure.Term { return layout.Term("W", newtons(weight)) }
	l.Add("raise.centre.across", "y_G", "mass centre across the span, from the left springing", func(f *figure.Figure) figure.Measure {
		f.Method = "moments of the heaviest panel's pieces and fittings; its straps, fixed when it is up, are left out"
		return layout.Metres(across)
	})
	l.Add("raise.centre.up", "z_G", "mass centre above the springing", func(f *figure.Figure) figure.Measure {
		f.Method = "moments of the heaviest panel's pieces and fittings; its straps, fixed when it is up, are left out"
		return layout.Metres(up)
	})
	l.Add("raise.centre.along", "x_G", "mass centre along the panel", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "l/2", []figure.Term{layout.Term("l", layout.Metres(panel.EndLength))}
		return layout.Metres(along)
	})
	if panel.Around.Get() > 1 {
		return l.List
	}
	l.Add("raise.turn.lift", "F_t", "lift at the crown that begins to turn it down from its edge, its straps weighed with it", func(f *figure.Figure) figure.Measure {
		f.Formula = "W*z/H"
		f.Terms = []figure.Term{w(), layout.Term("z", layout.Metres(up)), layout.Term("H", layout.Metres(panel.Height))}
		return newtons(c.Number("", func() float64 { return weight.Get() * up.Get() / panel.Height.Get() }))
	})
	l.Add("raise.turn.balance", "θ_t", "angle of its axis from upright at which it balances on its feet", func(f *figure.Figure) figure.Measure {
		f.Formula = "atan(z/x)"
		f.Terms = []figure.Term{layout.Term("z", layout.Metres(up)), layout.Term("x", layout.Metres(along))}
		return layout.Angle(c.Number("", func() float64 { return math.Atan2(up.Get(), along.Get()) }))
	})
	l.Add("raise.turn.hold", "F_h", "greatest hold-back at the crown after that, its straps weighed with it", func(f *figure.Figure) figure.Measure {
		f.Formula = "W*x/H"
		f.Terms = []figure.Term{w(), layout.Term("x", layout.Metres(along)), layout.Term("H", layout.Metres(panel.Height))}
		return newtons(c.Number("", func() float64 { return weight.Get() * along.Get() / panel.Height.Get() }))
	})
	return l.List
}

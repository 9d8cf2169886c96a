package raising

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// bare is the mass of pieces without straps, which are fixed when the panel is up, and
// the centre of it.
func bare(pieces []layout.Piece) (mass float64, centre curve.Point) {
	for _, piece := range pieces {
		if piece.Kind == layout.Hanger {
			continue
		}
		m := piece.Mass * float64(piece.Count)
		mass, centre.Y, centre.Z = mass+m, centre.Y+m*piece.Centre.Y, centre.Z+m*piece.Centre.Z
	}
	return mass, curve.Point{Y: centre.Y / mass, Z: centre.Z / mass}
}

// turned is what the figures of turning the panel share.
type turned struct {
	*calcs.Lines
	c                         *layout.Ceiling
	across, up, along, weight layout.Number
}

// Figures are those of turning the panel down from its edge onto its feet, of
// where its mass is, of standing it on its feet and of sliding it home: in m, N and
// rad. None without lifts. The frames have those of the pieces of a split arch; how a flat
// panel, which has no crown, is turned is not computed. Derived: each force balances
// the weight in moments about the feet.
func Figures(c *layout.Ceiling) []figure.Figure {
	t := turnedOf(c)
	t.Where(func() bool { return len(c.Lift.Stations.Get()) > 0 }, func() {
		t.centre()
		t.Where(func() bool { return c.Panel.Around.Get() == 1 }, func() {
			t.Where(func() bool { return c.Vault.HalfAngle.Get() != 0 }, t.turn)
			t.stand()
		})
		t.slides()
	})
	return t.List
}

func turnedOf(c *layout.Ceiling) turned {
	panel := c.Panel
	centre := layout.Derive(c, func() curve.Point {
		_, at := bare(panel.Pieces.Get())
		return at
	})
	return turned{
		Lines: calcs.New(c, "raising"), c: c,
		across: c.Number("raise.centre.across", func() float64 { return centre.Get().Y }),
		up:     c.Number("raise.centre.up", func() float64 { return centre.Get().Z }),
		along:  c.Number("raise.centre.along", func() float64 { return panel.EndLength.Get() / 2 }),
		weight: c.Number("raise.weight", func() float64 {
			mass, _ := bare(panel.Pieces.Get())
			return mass * quantity.Gravity
		}),
	}
}

// centre is where the mass is.
func (t turned) centre() {
	method := "moments of the heaviest panel's pieces and fittings; its straps, fixed when it is up, are left out"
	t.Add("raise.centre.across", "y_G", "mass centre across the span, from the left springing", func(f *figure.Figure) figure.Measure {
		f.Method = method
		return calcs.Metres(t.across)
	})
	t.Add("raise.centre.up", "z_G", "mass centre above the springing", func(f *figure.Figure) figure.Measure {
		f.Method = method
		return calcs.Metres(t.up)
	})
	t.Add("raise.centre.along", "x_G", "mass centre along the panel", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "l/2", []figure.Term{calcs.Term("l", calcs.Metres(t.c.Panel.EndLength))}
		return calcs.Metres(t.along)
	})
	t.Add("raise.weight", "W_b", "weight of the heaviest panel as it is turned, without its straps", func(f *figure.Figure) figure.Measure {
		f.Formula = "(m - m_s)*g"
		mass := t.c.Panel.Mass
		straps := t.c.Number("", func() float64 { return mass.Get() - t.weight.Get()/quantity.Gravity })
		f.Terms = []figure.Term{
			calcs.Term("m", calcs.Measured(mass, quantity.Kilogram)), calcs.Term("m_s", calcs.Measured(straps, quantity.Kilogram)),
			calcs.Term("g", figure.Measure{Value: quantity.Value{SI: quantity.Gravity, Unit: quantity.NewtonPerKilogram}}),
		}
		return newtons(t.weight)
	})
}

func newtons(v layout.Number) figure.Measure { return calcs.Measured(v, quantity.Newton) }

// turn is what it takes to turn the panel about its feet.
func (t turned) turn() {
	t.share("raise.turn.lift", "F_t", "upward force at the crown that begins to turn it down from its edge", "W_b*z/H", "z", t.up)
	t.Add("raise.turn.balance", "θ_t", "angle of its axis from upright at which it balances on its feet", func(f *figure.Figure) figure.Measure {
		f.Formula = "atan(z/x)"
		f.Terms = []figure.Term{calcs.Term("z", calcs.Metres(t.up)), calcs.Term("x", calcs.Metres(t.along))}
		return calcs.Angle(t.c.Number("", func() float64 { return math.Atan2(t.up.Get(), t.along.Get()) }))
	})
	t.share("raise.turn.hold", "F_h", "greatest force at the crown to hold it back, past its balance", "W_b*x/H", "x", t.along)
}

// share is a force at the crown that balances the weight at an arm about the feet.
func (t turned) share(key, symbol, name, formula, of string, arm layout.Number) {
	t.Add(key, symbol, name, func(f *figure.Figure) figure.Measure {
		height := t.c.Panel.Height
		f.Formula = formula
		f.Terms = []figure.Term{calcs.Term("W_b", newtons(t.weight)), calcs.Term(of, calcs.Metres(arm)), calcs.Term("H", calcs.Metres(height))}
		return newtons(t.c.Number("", func() float64 { return t.weight.Get() * arm.Get() / height.Get() }))
	})
}

package raising

import (
	"slices"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// slide is how far an inner panel stands off before it slides on its forks onto its
// neighbour's tenons; nothing without seams.
func slide(c *layout.Ceiling) layout.Number {
	return c.Number("raise.slide", func() float64 {
		if c.Seam.Count.Get() == 0 || !c.Seam.Tenon.Length.Given() {
			return 0
		}
		return c.Seam.Tenon.Length.Get()/2 + standOff(c)
	})
}

func standOff(c *layout.Ceiling) float64 { return c.Limit(standOffLimit, StandOff) }

// overLifts are the heights of the underside over each lift under a whole arch that
// stands on its feet.
func overLifts(c *layout.Ceiling) (out []float64) {
	intrados := c.Vault.Intrados.Get()
	for _, s := range c.Lift.Stations.Get() {
		out = append(out, intrados.At(s*c.Panel.Arc.Get()).Z)
	}
	return out
}

// blocks is how high the feet of a whole arch have to stand for the stowed forks to
// pass under it.
func blocks(c *layout.Ceiling) layout.Number {
	return c.Number("raise.blocks", func() float64 { return max(0, c.Lift.Stowed.Get()-slices.Min(overLifts(c))) })
}

// foot is what the panel puts on the foot that carries more of it when it stands.
func (t turned) foot() layout.Number {
	return t.c.Number("raise.foot", func() float64 {
		b, y := t.c.Vault.Span.Get(), t.across.Get()
		return t.weight.Get() * max(y, b-y) / b
	})
}

// stand is what it takes to stand the panel on its feet and to slide it home.
func (t turned) stand() {
	c := t.c
	t.Where(func() bool { return c.Vault.HalfAngle.Get() > 0 }, func() {
		t.Add("raise.foot", "F_f", "load on the more loaded foot when it stands on both", func(f *figure.Figure) figure.Measure {
			f.Formula = "W_b*max(y_G, b - y_G)/b"
			f.Terms = []figure.Term{calcs.Term("W_b", newtons(t.weight)), calcs.Term("y_G", calcs.Metres(t.across)), calcs.Term("b", calcs.Metres(c.Vault.Span))}
			return newtons(t.foot())
		})
	})
	t.Where(func() bool { return c.Lift.Stowed.Given() }, func() {
		t.Add("raise.blocks", "h_b", "height of the blocks under its feet, for the stowed forks to go under it; add the thickness of a saddle", func(f *figure.Figure) figure.Measure {
			least := c.Number("", func() float64 { return slices.Min(overLifts(c)) })
			f.Formula = "max(0, h_s - z_l)"
			f.Terms = []figure.Term{calcs.Term("h_s", calcs.Metres(c.Lift.Stowed)), calcs.Term("z_l", calcs.Metres(least))}
			return calcs.Metres(blocks(c))
		})
	})
}

// slides is how far an inner panel slides.
func (t turned) slides() {
	c := t.c
	t.Where(func() bool { return slide(c).Get() > 0 }, func() {
		t.Add("raise.slide", "s_r", "slide of an inner panel on its forks, onto its neighbour's tenons", func(f *figure.Figure) figure.Measure {
			off := figure.Measure{Value: quantity.Length(standOff(c)).Value()}
			f.Formula, f.Terms = "l_t/2 + s_c", []figure.Term{calcs.Term("l_t", calcs.Metres(c.Seam.Tenon.Length)), calcs.Term("s_c", off)}
			return calcs.Metres(slide(c))
		})
	})
}

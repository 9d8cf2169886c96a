// Package calcs is the calculation sheet of the layout: each figure with the formula
// or the method by which it follows from others, and the lines with which the results
// add their own.
package calcs

import (
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
)

// Figures is the calculation sheet of the layout: every figure with how it
// follows, each after those that it needs.
func Figures(c *layout.Ceiling) []figure.Figure {
	l := New(c, "")
	vaultFigures(c, l)
	gridFigures(c, l)
	panelFigures(c, l)
	skinFigures(c, l)
	climateFigures(c, l)
	massFigures(c, l)
	seamFigures(c, l)
	strapFigures(c, l)
	lookFigures(c, l)
	return l.List
}

func vaultFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "vault"
	v := c.Vault
	curveLines(c, l)
	l.Add("vault.thickness", "T", "thickness from the intrados to the extrados", func(f *figure.Figure) figure.Measure {
		f.Formula = "max(d, a + n*t)"
		f.Terms = []figure.Term{
			Term("d", Metres(c.Rib.Depth)), Term("a", Metres(c.Skin.Setback)),
			Term("n", Whole(c.Skin.Layers)), Term("t", Metres(c.Number("skin.layer", c.Skin.Actual))),
		}
		return Metres(v.Thickness)
	})
	l.Add("vault.crown-height", "z_c", "height of the extrados at the axis, above the springing", func(f *figure.Figure) figure.Measure {
		rise, thick := Term("h", Metres(v.Rise)), Term("T", Metres(v.Thickness))
		f.Formula, f.Terms = "h + T", []figure.Term{rise, thick}
		if v.Shape().Kinked() {
			f.Formula = "sqrt((R + T)^2 - (R - s/2)^2)"
			f.Terms = []figure.Term{Term("R", Metres(v.Radius)), thick, Term("s", Metres(v.Span))}
		}
		return Metres(v.Crown)
	})
	l.Add("vault.width", "B", "width of the whole vault over its feet", func(f *figure.Figure) figure.Measure {
		f.Method = "measured on the section, the feet cut " + v.Cut.Get()
		return Metres(v.Width)
	})
	l.Add("vault.built-length", "L_b", "length of all panels and their seam gaps", func(f *figure.Figure) figure.Measure {
		f.Formula = "L + n*g"
		f.Terms = []figure.Term{Term("L", Metres(v.Length)), Term("n", Whole(c.Seam.Count)), Term("g", Metres(c.Seam.Gap))}
		return Metres(c.Number("", c.BuiltLength))
	})
	l.Add("vault.rise-ratio", "h/s", "ratio of rise to span", func(f *figure.Figure) figure.Measure {
		f.Formula = "h / s"
		f.Terms = []figure.Term{Term("h", Metres(v.Rise)), Term("s", Metres(v.Span))}
		return Ratio(c.Number("", func() float64 { return v.Rise.Get() / v.Span.Get() }))
	})
}

func gridFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "grid"
	g := c.Grid
	l.Add("grid.module-around", "m_r", "module around, on the intrados", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "A / n", []figure.Term{Term("A", Metres(c.Vault.Arc)), Term("n", Whole(g.Around))}
		return Metres(g.ModuleAround)
	})
	l.Add("grid.module-along", "m_l", "module along, between rib centre lines", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "L / n", []figure.Term{Term("L", Metres(c.Vault.Length)), Term("n", Whole(g.Along))}
		if !g.HalfEnds.Get() {
			f.Formula = "(L - w) / n"
			f.Terms = append(f.Terms, Term("w", Metres(c.Rib.Width)))
		}
		return Metres(g.ModuleAlong)
	})
	around, along := Term("m_r", Metres(g.ModuleAround)), Term("m_l", Metres(g.ModuleAlong))
	l.Add("grid.module-ratio", "k", "ratio of the module's longer side to its shorter side", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "max(m_r, m_l) / min(m_r, m_l)", []figure.Term{around, along}
		return Ratio(c.Number("", g.Ratio))
	})
	l.Add("grid.long-side", "k_l", "module along divided by module around; above 1 the long side is along the vault", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "m_l / m_r", []figure.Term{along, around}
		return Ratio(c.Number("", func() float64 { return g.ModuleAlong.Get() / g.ModuleAround.Get() }))
	})
	l.Add("grid.count", "N", "number of coffers", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "a * b", []figure.Term{Term("a", Whole(g.Around)), Term("b", Whole(g.Along))}
		return Whole(c.Count("", func() int { return g.Around.Get() * g.Along.Get() }))
	})
}

func panelFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "panels"
	p := c.Panel
	l.Add("panel.count", "P", "number of panels", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "a * b", []figure.Term{Term("a", Whole(p.Along)), Term("b", Whole(p.Around))}
		return Whole(p.Count)
	})
	l.Add("panel.length", "l", "length of an inner panel along the axis", func(f *figure.Figure) figure.Measure {
		f.Formula = "m_l * n / a"
		f.Terms = []figure.Term{Term("m_l", Metres(c.Grid.ModuleAlong)), Term("n", Whole(c.Grid.Along)), Term("a", Whole(p.Along))}
		return Metres(p.Length)
	})
	l.Add("panel.end-length", "l_e", "length of a panel at an end of the vault", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "l", []figure.Term{Term("l", Metres(p.Length))}
		if !c.Grid.HalfEnds.Get() {
			f.Formula = "l + e*w/2"
			f.Terms = append(f.Terms, Term("e", Whole(c.Count("", c.VaultEnds))), Term("w", Metres(c.Rib.Width)))
		}
		return Metres(p.EndLength)
	})
	boxFigures(c, l)
	l.Add("panel.side-gap", "g_s", "least gap on each side of the arch: widest arch, narrowest room", func(f *figure.Figure) figure.Measure {
		f.Formula = "(W - τ - B - p - f*k) / 2"
		f.Terms = []figure.Term{
			Term("W", Metres(c.Room.Width)), Term("τ", Metres(c.Room.Tolerance)), Term("B", Metres(c.Vault.Width)),
			Term("p", Metres(p.Tolerance)), Term("f", Metres(p.Form)), Term("k", Ratio(c.Vault.Spread)),
		}
		return Metres(c.Number("", c.SideGap))
	})
}

// boxFigures are the width and the height of the panel's box.
func boxFigures(c *layout.Ceiling, l *Lines) {
	p, v := c.Panel, c.Vault
	l.Add("panel.width", "b", "width of the panel's box as hung", func(f *figure.Figure) figure.Measure {
		span, thick := Term("s", Metres(v.Span)), Term("T", Metres(v.Thickness))
		phi := Term("φ", Angle(v.HalfAngle))
		switch {
		case p.Around.Get() > 1:
			f.Method = "measured on the section of one piece of the arch"
		case v.Cut.Get() == "plumb":
			f.Formula, f.Terms = "s", []figure.Term{span}
		case v.Cut.Get() == "radial":
			f.Formula, f.Terms = "s + 2*T*sin(φ)", []figure.Term{span, thick, phi}
		default:
			f.Formula, f.Terms = "s + 2*T/sin(φ)", []figure.Term{span, thick, phi}
		}
		return Metres(p.Width)
	})
	l.Add("panel.height", "H", "height of the panel's box as hung", func(f *figure.Figure) figure.Measure {
		if p.Around.Get() > 1 {
			f.Method = "measured on the section of the panel"
		} else {
			f.Formula, f.Terms = "z_c", []figure.Term{Term("z_c", Metres(v.Crown))}
		}
		return Metres(p.Height)
	})
}

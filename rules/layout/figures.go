package layout

import (
	"math"

	"dryfit/rules/figure"
)

// Figures is the calculation sheet of the layout: every figure with how it
// follows, each after those that it needs.
func (c *Ceiling) Figures() []figure.Figure {
	l := c.Lines("")
	c.vaultFigures(l)
	c.gridFigures(l)
	c.panelFigures(l)
	c.skinFigures(l)
	c.climateFigures(l)
	c.massFigures(l)
	c.seamFigures(l)
	c.strapFigures(l)
	return l.List
}

func (c *Ceiling) vaultFigures(l *Lines) {
	l.Subject = "vault"
	v := c.Vault
	c.radiusFigure(l)
	c.arcFigures(l)
	l.Add("vault.thickness", "T", "from the intrados to the extrados", func(f *figure.Figure) figure.Measure {
		f.Formula = "max(d, a + n*t)"
		f.Terms = []figure.Term{
			Term("d", Metres(c.Rib.Depth)), Term("a", Metres(c.Skin.Setback)),
			Term("n", Whole(c.Skin.Layers)), Term("t", Metres(c.Skin.Thickness)),
		}
		return Metres(v.Thickness)
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
	l.Add("vault.rise-ratio", "h/s", "rise by span", func(f *figure.Figure) figure.Measure {
		f.Formula = "h / s"
		f.Terms = []figure.Term{Term("h", Metres(v.Rise)), Term("s", Metres(v.Span))}
		return Ratio(c.Number("", func() float64 { return v.Rise.Get() / v.Span.Get() }))
	})
}

// radiusFigure is the radius at the crown, by the profile.
func (c *Ceiling) radiusFigure(l *Lines) {
	v := c.Vault
	if v.Profile.Get() == "three-centred" {
		l.Add("vault.haunch-radius", "r", "radius of the haunches", func(f *figure.Figure) figure.Measure {
			f.Method = "given, or from the rise and the crown radius: (2·R·h − s²/4 − h²)/(2·(R − s/2))"
			return Metres(c.haunch())
		})
	}
	l.Add("vault.radius", "R", "radius of the intrados at the crown", func(f *figure.Figure) figure.Measure {
		span, rise := Term("s", Metres(v.Span)), Term("h", Metres(v.Rise))
		switch f.Terms = []figure.Term{span, rise}; v.Profile.Get() {
		case "flat":
			f.Method, f.Terms = "a flat ceiling has none", nil
		case "segmental", "semicircular":
			f.Formula = "(s^2 + 4*h^2) / (8*h)"
		case "pointed":
			f.Formula, f.Terms = "(h^2 + s^2/4) / s", []figure.Term{rise, span}
		case "three-centred":
			f.Formula = "(s^2/4 + h^2 - s*r) / (2*(h - r))"
			f.Terms = append(f.Terms, Term("r", Metres(c.haunch())))
		default:
			f.Formula = "(s/2)^2 / h"
		}
		return Metres(v.Radius)
	})
}

// haunch is the radius of the haunches of a three-centred vault.
func (c *Ceiling) haunch() Number { return c.Number("vault.haunch-radius", c.Vault.TightestRadius.Get) }

// crownAngle is half the angle of the crown's arc of a three-centred vault.
func (c *Ceiling) crownAngle() Number {
	v := c.Vault
	return c.Number("vault.crown-angle", func() float64 {
		return math.Atan2(v.Span.Get()/2-v.TightestRadius.Get(), v.Radius.Get()-v.Rise.Get())
	})
}

// arcFigures are the slope at the springing, the length of the arc and its
// tightest radius, by the profile.
func (c *Ceiling) arcFigures(l *Lines) {
	v := c.Vault
	span, rise := Term("s", Metres(v.Span)), Term("h", Metres(v.Rise))
	if v.Profile.Get() == "three-centred" {
		l.Add("vault.crown-angle", "β", "half the angle of the crown's arc", func(f *figure.Figure) figure.Measure {
			f.Formula = "atan((s/2 - r) / (R - h))"
			f.Terms = []figure.Term{Term("s", Metres(v.Span)), Term("r", Metres(c.haunch())), Term("R", Metres(v.Radius)), Term("h", Metres(v.Rise))}
			return Angle(c.crownAngle())
		})
	}
	l.Add("vault.half-angle", "φ", "slope of the intrados at the springing", func(f *figure.Figure) figure.Measure {
		switch v.Profile.Get() {
		case "flat":
			f.Method = "level"
		case "segmental", "semicircular":
			f.Formula, f.Terms = "2*atan(2*h/s)", []figure.Term{Term("h", Metres(v.Rise)), Term("s", Metres(v.Span))}
		case "pointed":
			f.Method = "a pointed vault's arcs begin upright"
		case "three-centred":
			f.Method = "upright"
		default:
			f.Method = "an ellipse begins upright"
		}
		return Angle(v.HalfAngle)
	})
	l.Add("vault.arc-length", "A", "length of the intrados", func(f *figure.Figure) figure.Measure {
		r := Term("R", Metres(v.Radius))
		switch v.Profile.Get() {
		case "flat":
			f.Formula, f.Terms = "s", []figure.Term{span}
		case "segmental", "semicircular":
			f.Formula, f.Terms = "2*R*φ*pi/180", []figure.Term{r, Term("φ", Angle(v.HalfAngle))}
		case "pointed":
			f.Formula, f.Terms = "2*R*acos(1 - s/(2*R))*pi/180", []figure.Term{r, span}
		case "three-centred":
			f.Formula = "2*(R*β + r*(90 - β))*pi/180"
			f.Terms = []figure.Term{r, Term("β", Angle(c.crownAngle())), Term("r", Metres(c.haunch()))}
		default:
			f.Method = "half the perimeter of an ellipse, integrated"
		}
		return Metres(v.Arc)
	})
	l.Add("vault.tightest-radius", "R_t", "tightest radius of the intrados", func(f *figure.Figure) figure.Measure {
		f.Method = "the least of the radii above"
		if v.Profile.Get() == "elliptical" {
			f.Method = ""
			f.Formula, f.Terms = "min(h^2 / (s/2), R)", []figure.Term{rise, span, Term("R", Metres(v.Radius))}
		}
		return Metres(v.TightestRadius)
	})
}

func (c *Ceiling) gridFigures(l *Lines) {
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
	l.Add("grid.module-ratio", "k", "longer side of the module by the shorter", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "max(m_r, m_l) / min(m_r, m_l)", []figure.Term{around, along}
		return Ratio(c.Number("", g.Ratio))
	})
	l.Add("grid.long-side", "k_l", "module along by module around; over 1 the long side lies along the vault", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "m_l / m_r", []figure.Term{along, around}
		return Ratio(c.Number("", func() float64 { return g.ModuleAlong.Get() / g.ModuleAround.Get() }))
	})
	l.Add("grid.count", "N", "coffers", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "a * b", []figure.Term{Term("a", Whole(g.Around)), Term("b", Whole(g.Along))}
		return Whole(c.Count("", func() int { return g.Around.Get() * g.Along.Get() }))
	})
}

// Ratio is the longer side of the module by the shorter.
func (g Grid) Ratio() float64 {
	around, along := g.ModuleAround.Get(), g.ModuleAlong.Get()
	return max(around, along) / min(around, along)
}

func (c *Ceiling) panelFigures(l *Lines) {
	l.Subject = "panels"
	p := c.Panel
	l.Add("panel.count", "P", "panels", func(f *figure.Figure) figure.Measure {
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
			f.Terms = append(f.Terms, Term("e", Whole(c.Count("", c.vaultEnds))), Term("w", Metres(c.Rib.Width)))
		}
		return Metres(p.EndLength)
	})
	c.boxFigures(l)
	l.Add("panel.side-gap", "g_s", "left beside the arch at its widest, on each side, in the room at its tightest", func(f *figure.Figure) figure.Measure {
		f.Formula = "(W - τ - B - p - f*k) / 2"
		f.Terms = []figure.Term{
			Term("W", Metres(c.Room.Width)), Term("τ", Metres(c.Room.Tolerance)), Term("B", Metres(c.Vault.Width)),
			Term("p", Metres(p.Tolerance)), Term("f", Metres(p.Form)), Term("k", Ratio(c.Vault.Spread)),
		}
		return Metres(c.Number("", c.SideGap))
	})
}

// boxFigures are the width and the height of the panel's box.
func (c *Ceiling) boxFigures(l *Lines) {
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
		if p.Around.Get() > 1 || v.Profile.Get() == "pointed" {
			f.Method = "measured on the section of the panel"
		} else {
			f.Formula, f.Terms = "h + T", []figure.Term{Term("h", Metres(v.Rise)), Term("T", Metres(v.Thickness))}
		}
		return Metres(p.Height)
	})
}

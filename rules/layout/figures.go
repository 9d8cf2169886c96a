package layout

import (
	"math"

	"dryfit/rules/figure"
	"dryfit/spec/quantity"
)

// sheet collects figures under a subject.
type sheet struct {
	c       *Ceiling
	subject string
	list    []figure.Figure
}

func (s *sheet) under(subject string) { s.subject = subject }

// add puts a figure on the sheet. It is assumed where one of its terms is.
func (s *sheet) add(f figure.Figure) {
	f.Subject = s.subject
	for _, t := range f.Terms {
		f.Assumed = f.Assumed || s.isAssumed(t.Key)
	}
	s.list = append(s.list, f)
}

func (s *sheet) isAssumed(key string) bool {
	if key == "" {
		return false
	}
	if _, assumed := s.c.AssumedAt(key); assumed {
		return true
	}
	for _, f := range s.list {
		if f.Key == key {
			return f.Assumed
		}
	}
	return false
}

func metres(m float64) quantity.Value { return quantity.Length(m).Value() }
func count(n int) quantity.Value      { return quantity.Value{SI: float64(n), Unit: quantity.One} }
func ratio(x float64) quantity.Value  { return quantity.Value{SI: x, Unit: quantity.One} }
func angle(a float64) quantity.Value  { return quantity.Angle(a).Value() }

func term(symbol, key string, v quantity.Value) figure.Term {
	return figure.Term{Symbol: symbol, Key: key, Value: v}
}

// Figures is the calculation sheet of the layout: every figure with how it
// follows, each after those that it needs.
func (c *Ceiling) Figures() []figure.Figure {
	s := &sheet{c: c}
	c.vaultFigures(s)
	c.gridFigures(s)
	c.panelFigures(s)
	c.skinFigures(s)
	c.climateFigures(s)
	c.massFigures(s)
	c.seamFigures(s)
	c.strapFigures(s)
	return s.list
}

func (c *Ceiling) vaultFigures(s *sheet) {
	s.under("vault")
	v := c.Vault
	span, rise := term("s", "vault.span", metres(v.Span)), term("h", "vault.rise", metres(v.Rise))
	c.radiusFigures(s, span, rise)
	s.add(figure.Figure{
		Key: "vault.thickness", Symbol: "T", Name: "from the intrados to the extrados", Value: metres(v.Thickness),
		Formula: "max(d, a + t)",
		Terms: []figure.Term{
			term("d", "rib.depth", metres(c.Rib.Depth)), term("a", "skin.setback", metres(c.Skin.Setback)),
			term("t", "skin.thickness", metres(c.Skin.Total())),
		},
	})
	s.add(figure.Figure{
		Key: "vault.width", Symbol: "B", Name: "width of the whole vault over its feet", Value: metres(c.Vault.Width),
		Method: "measured on the section, the feet cut " + v.Cut,
	})
	s.add(figure.Figure{
		Key: "vault.built-length", Symbol: "L_b", Name: "length of all panels and their seam gaps", Value: metres(c.BuiltLength()),
		Formula: "L + n*g", Terms: []figure.Term{
			term("L", "vault.length", metres(v.Length)), term("n", "", count(c.Seam.Count)), term("g", "seam.gap", metres(c.Seam.Gap)),
		},
	})
	s.add(figure.Figure{
		Key: "vault.rise-ratio", Symbol: "h/s", Name: "rise by span", Value: ratio(v.Rise / v.Span),
		Formula: "h / s", Terms: []figure.Term{rise, span},
	})
}

// radiusFigures are the radius, the slope at the springing and the length of
// the arc, by the profile.
func (c *Ceiling) radiusFigures(s *sheet, span, rise figure.Term) {
	v := c.Vault
	radius := figure.Figure{Key: "vault.radius", Symbol: "R", Name: "radius of the intrados at the crown", Value: metres(v.Radius)}
	half := figure.Figure{Key: "vault.half-angle", Symbol: "φ", Name: "slope of the intrados at the springing", Value: angle(v.HalfAngle)}
	arc := figure.Figure{Key: "vault.arc-length", Symbol: "A", Name: "length of the intrados", Value: metres(v.Arc)}
	r, phi := term("R", "vault.radius", metres(v.Radius)), term("φ", "vault.half-angle", angle(v.HalfAngle))
	switch c.Spec.Vault.Profile {
	case "flat":
		radius.Method = "a flat ceiling has none"
		half.Method = "level"
		arc.Formula, arc.Terms = "s", []figure.Term{span}
	case "segmental", "semicircular":
		radius.Formula, radius.Terms = "(s^2 + 4*h^2) / (8*h)", []figure.Term{span, rise}
		half.Formula, half.Terms = "2*atan(2*h/s)", []figure.Term{rise, span}
		arc.Formula, arc.Terms = "2*R*φ*pi/180", []figure.Term{r, phi}
	case "pointed":
		radius.Formula, radius.Terms = "(h^2 + s^2/4) / s", []figure.Term{rise, span}
		half.Method = "a pointed vault's arcs begin upright"
		arc.Formula, arc.Terms = "2*R*acos(1 - s/(2*R))*pi/180", []figure.Term{r, span}
	case "three-centred":
		haunch := term("r", "vault.haunch-radius", metres(v.TightestRadius))
		s.add(figure.Figure{Key: "vault.haunch-radius", Symbol: "r", Name: "radius of the haunches", Value: metres(v.TightestRadius), Method: "given, or from the rise and the crown radius: (2·R·h − s²/4 − h²)/(2·(R − s/2))"})
		radius.Formula, radius.Terms = "(s^2/4 + h^2 - s*r) / (2*(h - r))", []figure.Term{span, rise, haunch}
		half.Method = "upright"
		crown := math.Atan2(v.Span/2-v.TightestRadius, v.Radius-v.Rise)
		s.add(radius)
		s.add(figure.Figure{
			Key: "vault.crown-angle", Symbol: "β", Name: "half the angle of the crown's arc", Value: angle(crown),
			Formula: "atan((s/2 - r) / (R - h))", Terms: []figure.Term{span, haunch, r, rise},
		})
		arc.Formula = "2*(R*β + r*(90 - β))*pi/180"
		arc.Terms = []figure.Term{r, term("β", "vault.crown-angle", angle(crown)), haunch}
	default:
		radius.Formula, radius.Terms = "(s/2)^2 / h", []figure.Term{span, rise}
		half.Method = "an ellipse begins upright"
		arc.Method = "half the perimeter of an ellipse, integrated"
	}
	if c.Spec.Vault.Profile != "three-centred" {
		s.add(radius)
	}
	s.add(half)
	s.add(arc)
	tightest := figure.Figure{Key: "vault.tightest-radius", Symbol: "R_t", Name: "tightest radius of the intrados", Value: metres(v.TightestRadius), Method: "the least of the radii above"}
	if c.Spec.Vault.Profile == "elliptical" {
		tightest.Method = ""
		tightest.Formula, tightest.Terms = "min(h^2 / (s/2), R)", []figure.Term{rise, span, r}
	}
	s.add(tightest)
}

func (c *Ceiling) gridFigures(s *sheet) {
	s.under("grid")
	g := c.Grid
	arc, length := term("A", "vault.arc-length", metres(c.Vault.Arc)), term("L", "vault.length", metres(c.Vault.Length))
	s.add(figure.Figure{
		Key: "grid.module-around", Symbol: "m_r", Name: "module around, on the intrados", Value: metres(g.ModuleAround),
		Formula: "A / n", Terms: []figure.Term{arc, term("n", "grid.around", count(g.Around))},
	})
	along := figure.Figure{
		Key: "grid.module-along", Symbol: "m_l", Name: "module along, between rib centre lines", Value: metres(g.ModuleAlong),
		Formula: "L / n", Terms: []figure.Term{length, term("n", "grid.along", count(g.Along))},
	}
	if !g.HalfEnds {
		along.Formula = "(L - w) / n"
		along.Terms = append(along.Terms, term("w", "rib.width", metres(c.Rib.Width)))
	}
	s.add(along)
	s.add(figure.Figure{
		Key: "grid.module-ratio", Symbol: "k", Name: "longer side of the module by the shorter", Value: ratio(g.Ratio()),
		Formula: "max(m_r, m_l) / min(m_r, m_l)",
		Terms:   []figure.Term{term("m_r", "grid.module-around", metres(g.ModuleAround)), term("m_l", "grid.module-along", metres(g.ModuleAlong))},
	})
	s.add(figure.Figure{
		Key: "grid.long-side", Symbol: "k_l", Name: "module along by module around; over 1 the long side lies along the vault", Value: ratio(g.ModuleAlong / g.ModuleAround),
		Formula: "m_l / m_r",
		Terms:   []figure.Term{term("m_l", "grid.module-along", metres(g.ModuleAlong)), term("m_r", "grid.module-around", metres(g.ModuleAround))},
	})
	s.add(figure.Figure{
		Key: "grid.count", Symbol: "N", Name: "coffers", Value: count(g.Around * g.Along),
		Formula: "a * b", Terms: []figure.Term{term("a", "grid.around", count(g.Around)), term("b", "grid.along", count(g.Along))},
	})
}

// Ratio is the longer side of the module by the shorter.
func (g Grid) Ratio() float64 {
	return max(g.ModuleAround, g.ModuleAlong) / min(g.ModuleAround, g.ModuleAlong)
}

func (c *Ceiling) panelFigures(s *sheet) {
	s.under("panels")
	p, v := c.Panel, c.Vault
	s.add(figure.Figure{
		Key: "panel.count", Symbol: "P", Name: "panels", Value: count(p.Count),
		Formula: "a * b", Terms: []figure.Term{term("a", "panels.along", count(p.Along)), term("b", "panels.around", count(p.Around))},
	})
	s.add(figure.Figure{
		Key: "panel.length", Symbol: "l", Name: "length of an inner panel along the axis", Value: metres(p.Length),
		Formula: "m_l * n / a", Terms: []figure.Term{
			term("m_l", "grid.module-along", metres(c.Grid.ModuleAlong)), term("n", "grid.along", count(c.Grid.Along)), term("a", "panels.along", count(p.Along)),
		},
	})
	end := figure.Figure{
		Key: "panel.end-length", Symbol: "l_e", Name: "length of a panel at an end of the vault", Value: metres(p.EndLength),
		Formula: "l", Terms: []figure.Term{term("l", "panel.length", metres(p.Length))},
	}
	if !c.Grid.HalfEnds {
		end.Formula = "l + e*w/2"
		end.Terms = append(end.Terms, term("e", "", count(c.vaultEnds())), term("w", "rib.width", metres(c.Rib.Width)))
	}
	s.add(end)
	width := figure.Figure{Key: "panel.width", Symbol: "b", Name: "width of the panel's box as hung", Value: metres(p.Width)}
	span, thick := term("s", "vault.span", metres(v.Span)), term("T", "vault.thickness", metres(v.Thickness))
	phi := term("φ", "vault.half-angle", angle(v.HalfAngle))
	switch {
	case p.Around > 1:
		width.Method = "measured on the section of one piece of the arch"
	case v.Cut == "plumb":
		width.Formula, width.Terms = "s", []figure.Term{span}
	case v.Cut == "radial":
		width.Formula, width.Terms = "s + 2*T*sin(φ)", []figure.Term{span, thick, phi}
	default:
		width.Formula, width.Terms = "s + 2*T/sin(φ)", []figure.Term{span, thick, phi}
	}
	s.add(width)
	height := figure.Figure{Key: "panel.height", Symbol: "H", Name: "height of the panel's box as hung", Value: metres(p.Height)}
	if p.Around > 1 || c.Spec.Vault.Profile == "pointed" {
		height.Method = "measured on the section of the panel"
	} else {
		height.Formula, height.Terms = "h + T", []figure.Term{term("h", "vault.rise", metres(v.Rise)), thick}
	}
	s.add(height)
	s.add(figure.Figure{
		Key: "panel.side-gap", Symbol: "g_s", Name: "left beside the arch at its widest, on each side, in the room at its tightest", Value: metres(c.SideGap()),
		Formula: "(W - τ - B - p - f*k) / 2",
		Terms: []figure.Term{
			term("W", "room.width", metres(float64(c.Spec.Room.Width))), term("τ", "room.tolerance", metres(float64(*c.Spec.Room.Tolerance))),
			term("B", "vault.width", metres(c.Vault.Width)), term("p", "panels.tolerance", metres(p.Tolerance)),
			term("f", "panels.form", metres(p.Form)), term("k", "", ratio(c.Vault.Spread)),
		},
	})
}

package layout

import (
	"fmt"
	"math"
	"strings"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

func (c *Ceiling) skinFigures(l *Lines) {
	l.Subject = "skin and ribs"
	l.Add("skin.radius", "R_s", "tightest radius of the skin, on its concave face", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R_t + a", []figure.Term{Term("R_t", Metres(c.Vault.TightestRadius)), Term("a", Metres(c.Skin.Setback))}
		return Metres(c.Number("", func() float64 { return c.Vault.TightestRadius.Get() + c.Skin.Setback.Get() }))
	})
	c.layerFigures(l)
	l.Where(func() bool { return c.Laminations() > 0 }, func() { c.laminationFigures(l) })
	c.strengthFigures(l)
	l.Add("skin.sheets", "S", "pieces of sheet in one panel's skin, all layers; takeoff lays those of all panels together", func(f *figure.Figure) figure.Measure {
		of := func(part func(SkinCuts) int) Count { return c.Count("", func() int { return part(c.SkinSheets()) }) }
		f.Formula = "a * b * n"
		f.Terms = []figure.Term{
			Term("a", Whole(of(func(s SkinCuts) int { return s.Around }))), Term("b", Whole(of(func(s SkinCuts) int { return s.Along }))),
			Term("n", Whole(c.Skin.Layers)),
		}
		return Whole(of(func(s SkinCuts) int { return s.PanelCount }))
	})
}

// layerFigures are the thickness of the skin as it is sold, and how far it may be
// off.
func (c *Ceiling) layerFigures(l *Lines) {
	material := c.Skin.Material.Get()
	l.Add("skin.layer", "t_a", "actual thickness of one layer of the skin", func(f *figure.Figure) figure.Measure {
		f.Method, f.Sold = "as it is named", true
		if len(material.Sold) > 0 {
			f.Method = "by its name: " + material.SoldFrom.String()
		}
		f.Terms = []figure.Term{Term("t", Metres(c.Skin.Thickness))}
		return Metres(c.Number("skin.layer", c.Skin.Actual))
	})
	l.Where(func() bool { return material.Within > 0 }, func() {
		l.Add("skin.spread", "u_s", "what all layers may be thicker or thinner: "+material.WithinFrom.String(), func(f *figure.Figure) figure.Measure {
			f.Formula = "n * u"
			f.Terms = []figure.Term{
				Term("n", Whole(c.Skin.Layers)), Term("u", Metres(c.Number("", func() float64 { return c.Skin.Material.Get().Within }))),
			}
			return Metres(c.Number("skin.spread", c.Skin.Spread))
		})
	})
}

// laminationFigures are those of a laminated rib.
func (c *Ceiling) laminationFigures(l *Lines) {
	v, strips := c.Vault, c.Number("rib.laminations", c.Laminations)
	l.Add("rib.laminations", "n", "strips in a rib's depth", func(f *figure.Figure) figure.Measure {
		f.Method = "the depth by the strip's thickness; whole where whole strips make it up to within 0.5mm"
		f.Terms = []figure.Term{Term("d", Metres(c.Rib.Depth)), Term("t", Metres(c.Rib.Lamination))}
		return Ratio(strips)
	})
	l.Where(func() bool { return !math.IsInf(v.Radius.Get(), 1) }, func() { c.bentFigures(l, strips) })
}

// bentFigures are those of a laminated rib that is bent.
func (c *Ceiling) bentFigures(l *Lines, strips Number) {
	v := c.Vault
	l.Add("rib.form-radius", "R_f", "radius of the form at the rib's intrados, with the springback taken off", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R * (1 - 1/n^2)", []figure.Term{Term("R", Metres(v.Radius)), Term("n", Ratio(strips))}
		return Metres(c.Number("", func() float64 { return timber.FormRadius(v.Radius.Get(), strips.Get()) }))
	})
	l.Add("rib.springback-left", "Δh", "uncertainty of the rise, of half of the springback", func(f *figure.Figure) figure.Measure {
		f.Method = "every curvature changed by 1/(2·n²), the length of the arc kept"
		f.Terms = []figure.Term{Term("n", Ratio(strips))}
		return Metres(c.Number("", func() float64 {
			return math.Abs(c.RiseBy(timber.SpringbackUncertainty * timber.Springback(strips.Get())))
		}))
	})
	l.Add("rib.lamination-ratio", "R/t", "tightest radius by the thickness of a strip", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R_t / t", []figure.Term{Term("R_t", Metres(v.TightestRadius)), Term("t", Metres(c.Rib.Lamination))}
		return Ratio(c.Number("", func() float64 { return v.TightestRadius.Get() / c.Rib.Lamination.Get() }))
	})
	c.breakingFigure(l)
}

// breakingFigure is the ratio at which the stress of a strip comes to the wood's
// strength.
func (c *Ceiling) breakingFigure(l *Lines) {
	species := func(f func(timber.Species) float64) Number {
		return c.Number("", func() float64 { return f(c.Rib.Species.Get()) })
	}
	l.Where(func() bool { return c.Rib.Species.Get().MOR > 0 }, func() {
		l.Add("rib.breaking-ratio", "R/t_b", "radius by thickness at which a dry strip's stress is the wood's strength; it stands somewhat more", func(f *figure.Figure) figure.Measure {
			f.Formula = "E / (2*MOR)"
			f.Terms = []figure.Term{
				Term("E", Measured(species(func(s timber.Species) float64 { return s.MOE }), quantity.Pascal)),
				Term("MOR", Measured(species(func(s timber.Species) float64 { return s.MOR }), quantity.Pascal)),
			}
			return Ratio(species(timber.Species.BreakingRatio))
		})
	})
}

func (c *Ceiling) climateFigures(l *Lines) {
	l.Subject = "climate"
	for _, a := range []struct {
		symbol, name, season string
		moisture             Number
	}{
		{"M_s", "moisture content of the wood in the shop", "", c.Climate.Shop},
		{"M_d", "in the dry season", "dry", c.Climate.Dry},
		{"M_w", "in the wet season", "wet", c.Climate.Wet},
	} {
		l.Where(func() bool { return a.season == "" || c.Climate.Fault(a.season) == nil }, func() {
			l.Add(a.moisture.Key(), a.symbol, a.name, func(f *figure.Figure) figure.Measure {
				f.Method = "Wood Handbook, FPL-GTR-282, equation 4-5, from temperature and relative humidity"
				return Measured(a.moisture, quantity.Fraction)
			})
		})
	}
}

// density is that of a member's wood at the shop's moisture content.
func (c *Ceiling) density(key string, m Member) Number {
	return c.Number(key, func() float64 { return timber.Density(m.Species.Get().SG12, c.Climate.Shop.Get()) })
}

func (c *Ceiling) massFigures(l *Lines) {
	l.Subject = "mass"
	density := func(key, symbol, name string, m Member) {
		l.Add(key, symbol, "density of "+name+", "+m.Species.Get().Name, func(f *figure.Figure) figure.Measure {
			gravity := c.Number("", func() float64 { return m.Species.Get().SG12 })
			f.Formula = "1000 * G * (1 + M_s/100)"
			f.Terms = []figure.Term{Term("G", Ratio(gravity)), Term("M_s", Measured(c.Climate.Shop, quantity.Fraction))}
			if c.Units == quantity.Imperial {
				f.Formula = "62.42796 * G * (1 + M_s/100)" // 1000kg/m3 in lb/ft3
			}
			return Measured(c.density("", m), quantity.KilogramPerCubicMetre)
		})
	}
	density("rib.density", "ρ_r", "the rib", c.Rib.Member)
	density("rail.density", "ρ_l", "the rail", c.Rail)
	c.pieceFigures(l)
	c.panelMassFigures(l)
}

// panelMassFigures are of the heaviest panel, its centre of mass and all panels.
func (c *Ceiling) panelMassFigures(l *Lines) {
	l.Add("panel.mass.most", "m_x", "mass of the heaviest panel, at the upper end of the spread of densities", func(f *figure.Figure) figure.Measure {
		f.Name += c.without()
		f.Method = "sheets 15% heavier (retail plywood weight charts), solid wood 10%, the coefficient of variation of specific gravity (Wood Handbook, table 5-6, from memory)"
		f.Terms = []figure.Term{Term("m", Measured(c.Panel.Mass, quantity.Kilogram))}
		return Measured(c.Panel.Most, quantity.Kilogram)
	})
	l.Add("panel.centre-height", "z_m", "height of the panel's centre of mass above the springing", func(f *figure.Figure) figure.Measure {
		f.Method = "the pieces' centres, weighted by mass"
		return Metres(c.Number("", func() float64 { return c.Panel.Centre.Get().Z }))
	})
	l.Add("vault.mass", "M", "mass of all panels, at most", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "m * P", []figure.Term{Term("m", Measured(c.Panel.Mass, quantity.Kilogram)), Term("P", Whole(c.Panel.Count))}
		return Measured(c.Number("", func() float64 { return c.Panel.Mass.Get() * float64(c.Panel.Count.Get()) }), quantity.Kilogram)
	})
}

// pieceFigures are the masses of the kinds of piece, and their sum.
func (c *Ceiling) pieceFigures(l *Lines) {
	var symbols []string
	var terms []figure.Term
	seen := map[PieceKind]int{}
	for _, p := range c.Panel.Pieces.Get() {
		seen[p.Kind]++
		mass := figure.Measure{
			Key:   fmt.Sprintf("panel.piece.%s.%d", strings.ReplaceAll(p.Kind.String(), " ", "-"), seen[p.Kind]),
			Value: quantity.Mass(p.Mass * float64(p.Count)).Value(), From: p.From,
		}
		t := Term(fmt.Sprintf("m_%d", len(terms)+1), mass)
		symbols, terms = append(symbols, t.Symbol), append(terms, t)
		l.Add(mass.Key, t.Symbol, fmt.Sprintf("mass of %d × %s", p.Count, p.Kind), func(f *figure.Figure) figure.Measure {
			c.rec.NoteAll(p.From)
			if p.Kind == Let {
				f.Method = "as the spec states it"
				return mass
			}
			own := func(v quantity.Value) figure.Measure { return figure.Measure{Value: v, From: p.From} }
			f.Formula, f.Metres = "n * V * ρ", true
			f.Terms = []figure.Term{
				Term("n", own(quantity.Value{SI: float64(p.Count), Unit: quantity.One})),
				Term("V", own(quantity.Value{SI: p.Volume, Unit: quantity.CubicMetre})), Term("ρ", Measured(c.densityOf(p.Kind), quantity.KilogramPerCubicMetre)),
			}
			return mass
		})
	}
	l.Add("panel.mass", "m", "mass of the heaviest panel", func(f *figure.Figure) figure.Measure {
		f.Name += c.without()
		f.Formula, f.Terms = strings.Join(symbols, " + "), terms
		return Measured(c.Panel.Mass, quantity.Kilogram)
	})
}

// densityOf is the density of a piece, of the key that gives it.
func (c *Ceiling) densityOf(kind PieceKind) Number {
	switch kind {
	case Rib, HalfRib, LooseTenon:
		return c.density("rib.density", c.Rib.Member)
	case Rail, HalfRail:
		return c.density("rail.density", c.Rail)
	case SkinSheet:
		return c.Number(c.Skin.Material.Key(), func() float64 { return c.Skin.Material.Get().Density })
	case Hanger:
		return c.Number("", func() float64 { return steelDensity })
	}
	panic(fmt.Sprintf("layout: no density of kind %d", kind))
}

func (c *Ceiling) seamFigures(l *Lines) {
	l.Subject = "seams"
	// tenons adds the count of the tenons in a seam that is in a number of pieces.
	tenons := func(key, symbol, name, formula string, pieces int, n Count, length Number) {
		l.Add(key, symbol, name, func(f *figure.Figure) figure.Measure {
			if n.Get() > pieces {
				f.Formula = formula
				f.Terms = []figure.Term{Term("A", Metres(length)), Term("e", Metres(c.Seam.Edge)), Term("p", Metres(c.Seam.Spacing))}
			} else {
				f.Method = "a seam too short for two has one, in each piece of the arch"
			}
			if pieces > 1 {
				f.Terms = append(f.Terms, Term("q", Whole(c.Panel.Around)))
			}
			return Whole(n)
		})
	}
	const one = "ceil((A - 2*e) / p) + 1"
	l.Where(func() bool { return c.Seam.Count.Get() > 0 }, func() {
		formula := one
		if c.Panel.Around.Get() > 1 {
			formula = "q*(ceil((A/q - 2*e) / p) + 1)"
		}
		tenons("joint.tenons-in-seam", "n_s", "loose tenons in one seam around the arc", formula, c.Panel.Around.Get(), c.Seam.TenonsInSeam, c.Vault.Arc)
	})
	l.Where(func() bool { return c.Seam.EdgeSeams.Get() > 0 }, func() {
		tenons("joint.tenons-in-edge", "n_e", "loose tenons in one seam along the axis", one, 1, c.Seam.TenonsInEdge, c.Panel.Length)
	})
	l.Add("joint.count", "n_j", "loose tenons in all seams", func(f *figure.Figure) figure.Measure {
		f.Formula = "a*n_s + b*n_e"
		f.Terms = []figure.Term{
			Term("a", Whole(c.Seam.Count)), Term("n_s", Whole(c.Seam.TenonsInSeam)),
			Term("b", Whole(c.Seam.EdgeSeams)), Term("n_e", Whole(c.Seam.TenonsInEdge)),
		}
		return Whole(c.Seam.Tenons)
	})
}

func (c *Ceiling) strapFigures(l *Lines) {
	l.Subject = "straps"
	l.Where(func() bool { return len(c.Strap.Stations.Get()) > 0 }, func() {
		c.runFigures(l)
		l.Where(c.Room.Above.Given, func() { c.lengthFigures(l) })
	})
}

// runFigures are the longest clear run, and what each strap carries.
func (c *Ceiling) runFigures(l *Lines) {
	run := c.Number("strap.longest-run", func() float64 {
		run, _ := c.LongestRun()
		return run
	})
	l.Add("strap.longest-run", "u", "longest clear run of the rib; an overhang counts twice", func(f *figure.Figure) figure.Measure {
		f.Method = "stations as shares of the arc"
		return Metres(run)
	})
	l.Add("strap.run-ratio", "u/d", "longest clear run by depth of rib", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "u / d", []figure.Term{Term("u", Metres(run)), Term("d", Metres(c.Rib.Depth))}
		return Ratio(c.Number("", func() float64 { return run.Get() / c.Rib.Depth.Get() }))
	})
	l.Add("strap.even-share", "F", "force on each strap if all carried alike", func(f *figure.Figure) figure.Measure {
		straps := record.Named(c.rec, c.Strap.Stations.Key(), func() int { return len(c.Strap.Stations.Get()) })
		f.Formula = "m * q * g / (2*n)"
		f.Terms = []figure.Term{
			Term("m", Measured(c.Panel.Mass, quantity.Kilogram)), Term("q", Whole(c.Panel.Around)),
			Term("g", figure.Measure{Value: quantity.Value{SI: quantity.Gravity, Unit: quantity.NewtonPerKilogram}}), Term("n", Whole(straps)),
		}
		return Measured(c.Number("", c.EvenShare), quantity.Newton)
	})
}

// lengthFigures are the lengths of the straps.
func (c *Ceiling) lengthFigures(l *Lines) {
	for i := range c.Strap.Stations.Get() {
		at := func(f func(station float64) float64) Number {
			return c.Number("", func() float64 { return f(c.Strap.Stations.Get()[i]) })
		}
		l.Add(fmt.Sprintf("strap.length.%d", i+1), fmt.Sprintf("l_%d", i+1), fmt.Sprintf("length of strap %d between its fixings", i+1), func(f *figure.Figure) figure.Measure {
			f.Formula = "a + z_c - b"
			f.Terms = []figure.Term{Term("a", Metres(c.Room.Above)), Term("z_c", Metres(c.Vault.Crown)), Term("b", Metres(at(c.ExtradosHeight)))}
			return Metres(at(c.StrapLength))
		})
	}
}

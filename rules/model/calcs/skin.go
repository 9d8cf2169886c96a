package calcs

import (
	"math"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

func skinFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "skin and ribs"
	l.Add("skin.radius", "R_s", "tightest radius of the skin, on its concave face", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R_t + a", []figure.Term{Term("R_t", Metres(c.Vault.TightestRadius)), Term("a", Metres(c.Skin.Setback))}
		return Metres(c.Number("", func() float64 { return c.Vault.TightestRadius.Get() + c.Skin.Setback.Get() }))
	})
	layerFigures(c, l)
	l.Where(func() bool { return c.Laminations() > 0 }, func() { laminationFigures(c, l) })
	strengthFigures(c, l)
	l.Add("skin.sheets", "S", "pieces of sheet in one panel's skin, in all layers; the takeoff lays out those of all panels together", func(f *figure.Figure) figure.Measure {
		of := func(part func(layout.SkinCuts) int) layout.Count {
			return c.Count("", func() int { return part(c.SkinSheets()) })
		}
		f.Formula = "a * b * n"
		f.Terms = []figure.Term{
			Term("a", Whole(of(func(s layout.SkinCuts) int { return s.Around }))), Term("b", Whole(of(func(s layout.SkinCuts) int { return s.Along }))),
			Term("n", Whole(c.Skin.Layers)),
		}
		return Whole(of(func(s layout.SkinCuts) int { return s.PanelCount }))
	})
}

// layerFigures are the thickness of the skin as it is sold, and how far it may be
// off.
func layerFigures(c *layout.Ceiling, l *Lines) {
	material := c.Skin.Material.Get()
	l.Add("skin.layer", "t_a", "actual thickness of one layer of the skin", func(f *figure.Figure) figure.Measure {
		f.Method, f.Sold = "equal to the nominal thickness", true
		if len(material.Sold) > 0 {
			f.Method = "by its name: " + material.SoldFrom.String()
		}
		f.Terms = []figure.Term{Term("t", Metres(c.Skin.Thickness))}
		return Metres(c.Number("skin.layer", c.Skin.Actual))
	})
	l.Where(func() bool { return material.Within > 0 }, func() {
		l.Add("skin.spread", "u_s", "tolerance of the thickness of all layers: "+material.WithinFrom.String(), func(f *figure.Figure) figure.Measure {
			f.Formula = "n * u"
			f.Terms = []figure.Term{
				Term("n", Whole(c.Skin.Layers)), Term("u", Metres(c.Number("", func() float64 { return c.Skin.Material.Get().Within }))),
			}
			return Metres(c.Number("skin.spread", c.Skin.Spread))
		})
	})
}

// laminationFigures are those of a laminated rib.
func laminationFigures(c *layout.Ceiling, l *Lines) {
	v, strips := c.Vault, c.Number("rib.laminations", c.Laminations)
	l.Add("rib.laminations", "n", "strips in a rib's depth", func(f *figure.Figure) figure.Measure {
		f.Method = "the depth divided by the strip's thickness; rounded to a whole number if that changes the depth by 0.5mm or less"
		f.Terms = []figure.Term{Term("d", Metres(c.Rib.Depth)), Term("t", Metres(c.Rib.Lamination))}
		return Ratio(strips)
	})
	l.Where(func() bool { return !math.IsInf(v.Radius.Get(), 1) }, func() { bentFigures(c, l, strips) })
}

// bentFigures are those of a laminated rib that is bent.
func bentFigures(c *layout.Ceiling, l *Lines, strips layout.Number) {
	v := c.Vault
	l.Add("rib.form-radius", "R_f", "radius of the form at the rib's intrados, corrected for springback", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R * (1 - 1/n^2)", []figure.Term{Term("R", Metres(v.Radius)), Term("n", Ratio(strips))}
		return Metres(c.Number("", func() float64 { return timber.FormRadius(v.Radius.Get(), strips.Get()) }))
	})
	l.Add("rib.springback-left", "Δh", "uncertainty of the rise, if springback varies by half", func(f *figure.Figure) figure.Measure {
		f.Method = "every curvature is changed by 1/(2·n²); the length of the arc stays the same"
		f.Terms = []figure.Term{Term("n", Ratio(strips))}
		return Metres(c.Number("", func() float64 {
			return math.Abs(c.RiseBy(timber.SpringbackUncertainty * timber.Springback(strips.Get())))
		}))
	})
	l.Add("rib.lamination-ratio", "R/t", "tightest radius divided by the thickness of a strip", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "R_t / t", []figure.Term{Term("R_t", Metres(v.TightestRadius)), Term("t", Metres(c.Rib.Lamination))}
		return Ratio(c.Number("", func() float64 { return v.TightestRadius.Get() / c.Rib.Lamination.Get() }))
	})
	breakingFigure(c, l)
}

// breakingFigure is the ratio at which the stress of a strip comes to the wood's
// strength.
func breakingFigure(c *layout.Ceiling, l *Lines) {
	species := func(f func(timber.Species) float64) layout.Number {
		return c.Number("", func() float64 { return f(c.Rib.Species.Get()) })
	}
	l.Where(func() bool { return c.Rib.Species.Get().MOR > 0 }, func() {
		l.Add("rib.breaking-ratio", "R/t_b", "radius divided by thickness at which the computed stress of a dry strip equals the wood's strength; strips bend somewhat tighter before they break", func(f *figure.Figure) figure.Measure {
			f.Formula = "E / (2*MOR)"
			f.Terms = []figure.Term{
				Term("E", Measured(species(func(s timber.Species) float64 { return s.MOE }), quantity.Pascal)),
				Term("MOR", Measured(species(func(s timber.Species) float64 { return s.MOR }), quantity.Pascal)),
			}
			return Ratio(species(timber.Species.BreakingRatio))
		})
	})
}

func climateFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "climate"
	for _, a := range []struct {
		symbol, name, season string
		moisture             layout.Number
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

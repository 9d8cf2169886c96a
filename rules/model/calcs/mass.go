package calcs

import (
	"fmt"
	"strings"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// memberDensity is that of a member's wood at the shop's moisture content.
func memberDensity(c *layout.Ceiling, key string, m layout.Member) layout.Number {
	return c.Number(key, func() float64 { return timber.Density(m.Species.Get().SG12, c.Climate.Shop.Get()) })
}

func massFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "mass"
	density := func(key, symbol, name string, m layout.Member) {
		l.Add(key, symbol, "density of "+name+", "+m.Species.Get().Name, func(f *figure.Figure) figure.Measure {
			gravity := c.Number("", func() float64 { return m.Species.Get().SG12 })
			f.Formula = "1000 * G * (1 + M_s/100)"
			f.Terms = []figure.Term{Term("G", Ratio(gravity)), Term("M_s", Measured(c.Climate.Shop, quantity.Fraction))}
			if c.Units == quantity.Imperial {
				f.Formula = "62.42796 * G * (1 + M_s/100)" // 1000kg/m3 in lb/ft3
			}
			return Measured(memberDensity(c, "", m), quantity.KilogramPerCubicMetre)
		})
	}
	density("rib.density", "ρ_r", "the rib", c.Rib.Member)
	density("rail.density", "ρ_l", "the rail", c.Rail)
	pieceFigures(c, l)
	panelMassFigures(c, l)
}

// panelMassFigures are of the heaviest panel, its centre of mass and all panels.
func panelMassFigures(c *layout.Ceiling, l *Lines) {
	l.Add("panel.mass.most", "m_x", "mass of the heaviest panel, at the upper end of the spread of densities", func(f *figure.Figure) figure.Measure {
		f.Name += without(c)
		f.Method = "sheets 15% heavier (retail plywood weight charts), solid wood 10%, the coefficient of variation of specific gravity (Wood Handbook, table 5-6, from memory)"
		f.Terms = []figure.Term{Term("m", Measured(c.Panel.Mass, quantity.Kilogram))}
		return Measured(c.Panel.Most, quantity.Kilogram)
	})
	l.Add("panel.centre-height", "z_m", "height of the panel's centre of mass above the springing", func(f *figure.Figure) figure.Measure {
		f.Method = "the pieces' centres, weighted by mass"
		return Metres(c.Number("", func() float64 { return c.Panel.Centre.Get().Z }))
	})
	l.Add("vault.mass", "M", "mass of all panels, if each is as heavy as the heaviest", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "m * P", []figure.Term{Term("m", Measured(c.Panel.Mass, quantity.Kilogram)), Term("P", Whole(c.Panel.Count))}
		return Measured(c.Number("", func() float64 { return c.Panel.Mass.Get() * float64(c.Panel.Count.Get()) }), quantity.Kilogram)
	})
}

// pieceFigures are the masses of the kinds of piece, and their sum.
func pieceFigures(c *layout.Ceiling, l *Lines) {
	var symbols []string
	var terms []figure.Term
	seen := map[layout.PieceKind]int{}
	for _, p := range c.Panel.Pieces.Get() {
		seen[p.Kind]++
		mass := figure.Measure{
			Key:   fmt.Sprintf("panel.piece.%s.%d", strings.ReplaceAll(p.Kind.String(), " ", "-"), seen[p.Kind]),
			Value: quantity.Mass(p.Mass * float64(p.Count)).Value(), From: p.From,
		}
		t := Term(fmt.Sprintf("m_%d", len(terms)+1), mass)
		symbols, terms = append(symbols, t.Symbol), append(terms, t)
		l.Add(mass.Key, t.Symbol, fmt.Sprintf("mass of %d × %s", p.Count, p.Kind), func(f *figure.Figure) figure.Measure {
			c.Note(p.From)
			if p.Kind == layout.Let {
				f.Method = "as the spec states it"
				return mass
			}
			own := func(v quantity.Value) figure.Measure { return figure.Measure{Value: v, From: p.From} }
			f.Formula, f.Metres = "n * V * ρ", true
			f.Terms = []figure.Term{
				Term("n", own(quantity.Value{SI: float64(p.Count), Unit: quantity.One})),
				Term("V", own(quantity.Value{SI: p.Volume, Unit: quantity.CubicMetre})), Term("ρ", Measured(densityOf(c, p.Kind), quantity.KilogramPerCubicMetre)),
			}
			return mass
		})
	}
	l.Add("panel.mass", "m", "mass of the heaviest panel", func(f *figure.Figure) figure.Measure {
		f.Name += without(c)
		f.Formula, f.Terms = strings.Join(symbols, " + "), terms
		return Measured(c.Panel.Mass, quantity.Kilogram)
	})
}

// densityOf is the density of a piece, of the key that gives it.
func densityOf(c *layout.Ceiling, kind layout.PieceKind) layout.Number {
	switch kind {
	case layout.Rib, layout.HalfRib, layout.LooseTenon:
		return memberDensity(c, "rib.density", c.Rib.Member)
	case layout.Rail, layout.HalfRail:
		return memberDensity(c, "rail.density", c.Rail)
	case layout.SkinSheet:
		return c.Number(c.Skin.Material.Key(), func() float64 { return c.Skin.Material.Get().Density })
	case layout.Hanger:
		return c.Number("", func() float64 { return layout.SteelDensity })
	}
	panic(fmt.Sprintf("calcs: no density of kind %d", kind))
}

// without says of a mass which fittings it lacks.
func without(c *layout.Ceiling) string {
	switch n := len(c.Unweighed()); n {
	case 0:
		return ""
	case 1:
		return ", without the mass of 1 fitting"
	default:
		return fmt.Sprintf(", without the masses of %d fittings", n)
	}
}

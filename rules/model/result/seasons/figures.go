package seasons

import (
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// linear is the range in which movement is proportional to moisture content, as
// the handbook gives it.
const linearFrom, linearTo = 0.06, 0.14

// Figures are the seasons' lines of the calculation sheet. A figure that there
// is none of has no line.
func (s *Seasons) Figures(c *layout.Ceiling) []figure.Figure {
	out := calcs.New(c, "")
	for _, season := range []Season{s.Dry, s.Wet} {
		l := lines{c: c, season: season, out: out}
		out.Subject = season.Name + " season"
		l.members()
		l.curve()
		l.seams()
	}
	return out.List
}

// lines are those of one season.
type lines struct {
	c      *layout.Ceiling
	season Season
	out    *calcs.Lines
}

// number is the value of a change, with the key that it has on the sheet.
func (l lines) number(name string, f Figure) layout.Number {
	return l.c.Number("season."+l.season.Name+"."+name, func() float64 { return f.Get().Value })
}

// add puts a change on the sheet, unless there is none.
func (l lines) add(name, symbol, title string, unit quantity.Unit, change Figure, work func(*figure.Figure)) {
	n := l.number(name, change)
	l.out.Where(func() bool { return change.Get().Err == nil }, func() {
		l.out.Add(n.Key(), symbol, title, func(f *figure.Figure) figure.Measure {
			work(f)
			return calcs.Measured(n, unit)
		})
	})
}

func (l lines) members() {
	c, s := l.c, l.season
	l.add("rib-width", "ΔD_r", "growth of a rib's width since the shop", quantity.Metre, s.RibWidth, func(f *figure.Figure) {
		l.movement(f, "D", c.Rib.Member, func() timber.Direction { return WidthDirection(c) })
		f.Terms = append(f.Terms, calcs.Term("D", calcs.Metres(c.Rib.Width)))
	})
	l.add("rail-width", "ΔD_l", "growth of a rail's width since the shop", quantity.Metre, s.RailWidth, func(f *figure.Figure) {
		l.movement(f, "D", c.Rail, func() timber.Direction { return timber.OverWidth })
		f.Terms = append(f.Terms, calcs.Term("D", calcs.Metres(c.Rail.Width)))
	})
}

// movement gives the formula of the growth of a size, by whichever of the
// handbook's equations holds, with all its terms but the size.
func (l lines) movement(f *figure.Figure, size string, m layout.Member, direction func() timber.Direction) {
	shop, then := l.c.Climate.Shop, l.season.Moisture
	across := func(part func(change, shrinkage float64) float64) figure.Measure {
		return calcs.Ratio(l.c.Number("", func() float64 { return part(m.Species.Get().Across(m.Cut.Get(), direction())) }))
	}
	f.Terms = []figure.Term{
		calcs.Term("M_f", calcs.Measured(then, quantity.Fraction)), calcs.Term("M_i", calcs.Measured(shop, quantity.Fraction)),
	}
	if min(shop.Get(), then.Get()) >= linearFrom && max(shop.Get(), then.Get()) <= linearTo {
		f.Formula = size + " * C * (M_f - M_i)"
		f.Terms = append(f.Terms, calcs.Term("C", across(func(change, _ float64) float64 { return change / 100 })))
		return
	}
	f.Formula = size + " * (M_f - M_i) / (3000/S - 30 + M_i)"
	f.Terms = append(f.Terms, calcs.Term("S", across(func(_, shrinkage float64) float64 { return 100 * shrinkage })))
}

// curve is what the change of the rib's depth does to the arch.
func (l lines) curve() {
	c, s := l.c, l.season
	l.add("rib-depth", "e", "growth of a rib's depth since the shop, as a share of the depth", quantity.Fraction, s.RibDepth, func(f *figure.Figure) {
		l.movement(f, "100", c.Rib.Member, func() timber.Direction { return DepthDirection(c) })
	})
	e := func() figure.Term {
		return calcs.Term("e", calcs.Measured(l.number("rib-depth", s.RibDepth), quantity.Fraction))
	}
	phi := func() figure.Term { return calcs.Term("φ", calcs.Angle(c.Vault.HalfAngle)) }
	l.add("angle", "Δφ", "change of the slope at the springing", quantity.Radian, s.Angle, func(f *figure.Figure) {
		f.Formula, f.Terms = "φ/(1 + e/100) - φ", []figure.Term{phi(), e()}
		if c.Vault.Shape().Kinked() {
			f.Formula = "atan(tan(κ)/(1 + e/100)) + (φ - κ)/(1 + e/100) - φ"
			f.Terms = append(f.Terms, calcs.Term("κ", calcs.Angle(c.Vault.Kink)))
		}
	})
	l.add("foot", "Δf", "movement of each foot, + outward", quantity.Metre, s.Foot, func(f *figure.Figure) {
		if c.Vault.Shape().OneArc {
			f.Formula = "R * ((1 + e/100)*sin(φ/(1 + e/100)) - sin(φ))"
			f.Terms = []figure.Term{calcs.Term("R", calcs.Metres(c.Vault.Radius)), e(), phi()}
		} else {
			f.Method = "the arc keeps its length, and its slope from the crown becomes slope/(1 + e); e is the growth of the rib's depth as a share of the depth"
			if c.Vault.Shape().Kinked() {
				f.Method += "; the tangent of the mitre's slope κ becomes tan κ/(1 + e)"
			}
		}
	})
}

// seams is what the movement of all ribs does along the axis.
func (l lines) seams() {
	c, s := l.c, l.season
	rib := func() figure.Term { return calcs.Term("ΔD_r", calcs.Metres(l.number("rib-width", s.RibWidth))) }
	l.add("along", "ΔL", "growth of the vault along the axis", quantity.Metre, s.Along, func(f *figure.Figure) {
		ribs := c.Number("", func() float64 { return Ribs(c) })
		f.Formula, f.Terms = "n * ΔD_r", []figure.Term{calcs.Term("n", calcs.Ratio(ribs)), rib()}
	})
	l.out.Where(func() bool { _, ok := SeamReveal(c); return ok }, func() { l.reveal(rib) })
}

// reveal is what is left of the groove at a seam, whose panels can come together
// by the seam's gap.
func (l lines) reveal(rib func() figure.Term) {
	c, s := l.c, l.season
	l.add("reveal", "r", "width of the reveal at a seam", quantity.Metre, s.Reveal, func(f *figure.Figure) {
		groove := c.Number(c.Grid.Reveal.Width.Key(), func() float64 {
			width, _ := SeamReveal(c)
			return width
		})
		f.Formula, f.Terms = "g - ΔD_r", []figure.Term{calcs.Term("g", calcs.Metres(groove)), rib()}
		if s.RibWidth.Get().Value > 0 {
			f.Formula = "g - min(ΔD_r, a)"
			f.Terms = append(f.Terms, calcs.Term("a", calcs.Metres(c.Seam.Gap)))
		}
	})
}

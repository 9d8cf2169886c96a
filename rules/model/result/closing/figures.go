package closing

import (
	"fmt"
	"slices"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/quantity"
)

// subject heads the closing's part of the calculation sheet.
const subject = "closing"

// Figures are the closing's lines of the calculation sheet.
func (k *Closing) Figures(c *layout.Ceiling, s *seasons.Seasons) []figure.Figure {
	l := lines{c: c, seasons: s, Lines: calcs.New(c, subject)}
	e, _ := k.Ends()
	l.Where(func() bool { _, ok := k.Ends(); return ok }, func() {
		l.ends(k, e)
		l.odds(e)
	})
	l.Where(func() bool { return k.Sides.Most.Get().Err == nil }, func() { l.sides(k) })
	l.Where(func() bool { return c.Seam.Count.Get() > 0 }, func() {
		l.Add("close.line", "d_l", "distance of the last seam from its line of the coffer grid, by root sum square", func(f *figure.Figure) figure.Measure {
			f.Formula, f.Terms = "sqrt(n*p^2 + n*u^2)", []figure.Term{l.seamCount(), l.panelTolerance(), l.seamTolerance()}
			return calcs.Metres(c.Number("", func() float64 { return k.Line.Get().ByChance }))
		})
	})
	return l.List
}

// lines collects figures.
type lines struct {
	*calcs.Lines
	c       *layout.Ceiling
	seasons *seasons.Seasons
}

func metres(m float64) quantity.Value { return quantity.Length(m).Value() }

func (l lines) length(symbol string, v layout.Number) figure.Term {
	return calcs.Term(symbol, calcs.Metres(v))
}

func (l lines) seamCount() figure.Term      { return calcs.Term("n", calcs.Whole(l.c.Seam.Count)) }
func (l lines) panelTolerance() figure.Term { return l.length("p", l.c.Panel.Tolerance) }
func (l lines) seamTolerance() figure.Term  { return l.length("u", l.c.Seam.Tolerance) }

// season is a change in a season, as its line of the sheet has it.
func (l lines) season(symbol, key string, f seasons.Figure) figure.Term {
	return l.length(symbol, l.c.Number(key, func() float64 { return f.Get().Value }))
}

// deviations are the terms that the last gap is off by.
func (l lines) deviations() []figure.Term {
	return []figure.Term{
		l.length("τ", l.c.Room.Tolerance), calcs.Term("P", calcs.Whole(l.c.Panel.Along)), l.panelTolerance(), l.seamCount(), l.seamTolerance(),
	}
}

func (l lines) ends(k *Closing, e *Ends) {
	c := l.c
	l.Add("close.last-gap", "g_l", "last gap, at the near end wall, as designed", func(f *figure.Figure) figure.Measure {
		f.Formula = "G - g_f - L - n*g"
		f.Terms = []figure.Term{
			l.length("G", c.Room.Length), l.length("g_f", e.First), l.length("L", c.Vault.Length), l.seamCount(), l.length("g", c.Seam.Gap),
		}
		return calcs.Metres(e.Last)
	})
	grows := func() bool { return !asMade(c) && e.Growth.Get().Err == nil }
	l.Where(grows, func() { l.growth(e) })
	l.Add("close.last-gap.least", "g_min", "least last gap, as built and hung", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "g_l - τ - P*p - n*u", append([]figure.Term{l.length("g_l", e.Last)}, l.deviations()...)
		if grows() {
			f.Formula, f.Terms = "g_l - ΔL_h - τ - P*p - n*u", append(f.Terms, l.season("ΔL_h", "close.growth", e.Growth))
		}
		return calcs.Metres(e.Least)
	})
	l.Where(func() bool { return e.Most.Get().Err == nil }, func() {
		l.Add("close.last-gap.most", "g_max", "greatest last gap, in the dry season", func(f *figure.Figure) figure.Measure {
			f.Formula, f.Terms = "g_l + τ + P*p + n*u + max(0, -ΔL)", append([]figure.Term{l.length("g_l", e.Last)}, l.deviations()...)
			f.Terms = append(f.Terms, l.season("ΔL", "season.dry.along", l.seasons.Dry.Along))
			return calcs.Metres(c.Number("", func() float64 { return e.Most.Get().Value }))
		})
	})
	l.Add("close.spread", "Δg", "deviation of the last gap, by root sum square", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "sqrt(τ^2 + P*p^2 + n*u^2)", l.deviations()
		return calcs.Metres(e.Spread)
	})
	l.Where(func() bool { return k.Projection.Get() > 0 }, func() {
		l.Add("close.projection", "q", "distance that the last panel stands off before it slides into place", func(f *figure.Figure) figure.Measure {
			f.Formula, f.Terms = "t / 2", []figure.Term{l.length("t", c.Seam.Tenon.Length)}
			return calcs.Metres(k.Projection)
		})
	})
}

// growth is what the ribs grow by until the panels are hung.
func (l lines) growth(e *Ends) {
	l.Add("close.growth", "ΔL_h", "growth of all rib widths from the shop to the hanging of the panels", func(f *figure.Figure) figure.Measure {
		f.Formula = "max(ΔL_d, ΔL_w)"
		if slices.Contains(l.c.Strap.Hung.Get(), "shop") {
			f.Formula = "max(0, ΔL_d, ΔL_w)"
		}
		f.Terms = []figure.Term{
			l.season("ΔL_d", "season.dry.along", l.seasons.Dry.Along), l.season("ΔL_w", "season.wet.along", l.seasons.Wet.Along),
		}
		return calcs.Metres(l.c.Number("", func() float64 { return e.Growth.Get().Value }))
	})
}

// odds are the chances that the last panel has the length to stand off.
func (l lines) odds(e *Ends) {
	for _, o := range []struct {
		key, symbol, name string
		share, err        func(Odds) float64
	}{
		{
			"close.chance", "p_i", "probability that the last panel has room to stand off, if panels deviate independently",
			func(o Odds) float64 { return o.ByChance.Share }, func(o Odds) float64 { return o.ByChance.Error },
		},
		{
			"close.chance-alike", "p_a", "the same, if all panels deviate alike, as panels from one form do",
			func(o Odds) float64 { return o.Alike.Share }, func(o Odds) float64 { return o.Alike.Error },
		},
	} {
		l.Add(o.key, o.symbol, o.name, func(f *figure.Figure) figure.Measure {
			f.Method = "decided by the worst case"
			if odds := e.Odds.Get(); !odds.Decided {
				f.Method = fmt.Sprintf("%d draws from seed %d, normal, tolerance three standard deviations; standard error %.2g%%", draws.Count, draws.Seed, 100*o.err(odds))
			}
			return calcs.Measured(l.c.Number("", func() float64 { return o.share(e.Odds.Get()) }), quantity.Fraction)
		})
	}
}

func (l lines) sides(k *Closing) {
	c, s := l.c, l.seasons
	l.Add("close.side-gap.most", "s_max", "greatest gap on each side of the arch: narrowest arch, widest room, feet moved inward by the season", func(f *figure.Figure) figure.Measure {
		f.Formula = "(W + τ - B + p + f*k) / 2 + max(0, -Δf_d, -Δf_w)"
		f.Terms = []figure.Term{
			l.length("W", c.Room.Width), l.length("τ", c.Room.Tolerance), l.length("B", c.Vault.Width),
			l.panelTolerance(), l.length("f", c.Panel.Form), calcs.Term("k", calcs.Ratio(c.Vault.Spread)),
			l.season("Δf_d", "season.dry.foot", s.Dry.Foot), l.season("Δf_w", "season.wet.foot", s.Wet.Foot),
		}
		return calcs.Metres(c.Number("", func() float64 { return k.Sides.Most.Get().Value }))
	})
}

// Table is the last gap's chain: each term with its tolerance and its share of
// the variance. There is none without the first gap.
func (k *Closing) Table() (figure.Table, bool) {
	e, ok := k.Ends()
	if !ok {
		return figure.Table{}, false
	}
	chain := e.Stack.Get()
	t := figure.Table{
		Key: "close.stack", Title: "the last gap, term by term", Subject: subject,
		Head: []string{"term", "count", "each", "tolerance", "share of variance"},
		Note: fmt.Sprintf("Simulated if the worst case does not decide: %d draws from seed %d, normally distributed, with a tolerance of three standard deviations.", draws.Count, draws.Seed),
	}
	shares := chain.Shares()
	for i, term := range chain {
		sign := ""
		if term.Sense < 0 {
			sign = "less "
		}
		t.Rows = append(t.Rows, figure.Row{Label: sign + term.Name, Values: []quantity.Value{
			{SI: float64(term.Count), Unit: quantity.One}, metres(term.Nominal), metres(term.Tolerance), quantity.Share(shares[i]).Value(),
		}})
	}
	t.Rows = append(t.Rows, figure.Row{Label: "last gap, as hung", Values: []quantity.Value{
		{SI: 1, Unit: quantity.One}, metres(e.Last.Get() - e.Growth.Get().Value), metres(chain.Worst()), quantity.Share(1).Value(),
	}})
	return t, true
}

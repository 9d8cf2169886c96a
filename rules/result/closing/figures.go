package closing

import (
	"fmt"
	"strings"

	"dryfit/rules/figure"
	"dryfit/rules/layout"
	"dryfit/rules/result/seasons"
	"dryfit/spec/quantity"
)

// subject heads the closing's part of the calculation sheet.
const subject = "closing"

// Figures are the closing's lines of the calculation sheet.
func (k *Closing) Figures(c *layout.Ceiling, s *seasons.Seasons) []figure.Figure {
	l := lines{c: c}
	if k.Ends != nil {
		l.ends(k, s)
	}
	l.sides(k, s)
	if n := k.Line.Seams; n > 0 {
		l.add(figure.Figure{
			Key: "close.line", Symbol: "d_l", Name: "how far the last seam may lie off the coffer grid, by root sum square",
			Formula: "sqrt(n*p^2 + n*u^2)",
			Terms:   []figure.Term{l.count("n", n), l.length("p", "panels.tolerance", c.Panel.Tolerance), l.length("u", "seam.tolerance", l.seamTolerance())},
		}, metres(k.Line.ByChance))
	}
	return l.out
}

// lines collects figures.
type lines struct {
	c   *layout.Ceiling
	out []figure.Figure
}

// add puts a figure on the sheet. It is assumed where one of its terms is.
func (l *lines) add(f figure.Figure, v quantity.Value) {
	f.Subject, f.Value = subject, v
	for _, t := range f.Terms {
		f.Assumed = f.Assumed || l.assumed(t.Key)
	}
	l.out = append(l.out, f)
}

// assumed reports whether a key of the spec, or a figure above, hangs on what
// was assumed.
func (l *lines) assumed(key string) bool {
	if key == "" {
		return false
	}
	if season, ok := strings.CutPrefix(key, "season."); ok {
		season, _, _ = strings.Cut(season, ".")
		return l.assumed("climate.shop") || l.assumed("climate."+season)
	}
	for _, f := range l.out {
		if f.Key == key {
			return f.Assumed
		}
	}
	_, assumed := l.c.AssumedAt(key)
	return assumed
}

func metres(m float64) quantity.Value { return quantity.Length(m).Value() }

func (l *lines) length(symbol, key string, m float64) figure.Term {
	return figure.Term{Symbol: symbol, Key: key, Value: metres(m)}
}

func (l *lines) count(symbol string, n int) figure.Term {
	return figure.Term{Symbol: symbol, Value: quantity.Value{SI: float64(n), Unit: quantity.One}}
}

func (l *lines) seamTolerance() float64 { return float64(*l.c.Spec.Seam.Tolerance) }

func (l *lines) ends(k *Closing, s *seasons.Seasons) {
	c, e := l.c, k.Ends
	last := l.length("g_l", "close.last-gap", e.Last)
	worst := []figure.Term{
		last, l.length("τ", "room.tolerance", float64(*c.Spec.Room.Tolerance)), l.count("P", c.Panel.Along),
		l.length("p", "panels.tolerance", c.Panel.Tolerance), l.count("n", c.Seam.Count), l.length("u", "seam.tolerance", l.seamTolerance()),
	}
	l.add(figure.Figure{
		Key: "close.last-gap", Symbol: "g_l", Name: "last gap, at the near end wall, as designed", Formula: "G - g_f - L - n*g",
		Terms: []figure.Term{
			l.length("G", "room.length", float64(c.Spec.Room.Length)), l.length("g_f", "close.first_gap", e.First),
			l.length("L", "vault.length", c.Vault.Length), l.count("n", c.Seam.Count), l.length("g", "seam.gap", c.Seam.Gap),
		},
	}, metres(e.Last))
	l.add(figure.Figure{
		Key: "close.last-gap.least", Symbol: "g_min", Name: "last gap at its least, as built", Formula: "g_l - τ - P*p - n*u", Terms: worst,
	}, metres(e.Least))
	if e.Most.Err == nil {
		l.add(figure.Figure{
			Key: "close.last-gap.most", Symbol: "g_max", Name: "last gap at its most, in the dry season", Formula: "g_l + τ + P*p + n*u + max(0, -ΔL)",
			Terms: append(worst[:len(worst):len(worst)], l.length("ΔL", "season.dry.along", s.Dry.Along.Value)),
		}, metres(e.Most.Value))
	}
	l.add(figure.Figure{
		Key: "close.spread", Symbol: "Δg", Name: "what the last gap may be off by root sum square", Formula: "sqrt(τ^2 + P*p^2 + n*u^2)", Terms: worst[1:],
	}, metres(e.Stack.RootSumSquare()))
	if k.Projection > 0 {
		l.add(figure.Figure{
			Key: "close.projection", Symbol: "q", Name: "free length that the last panel needs to stand off before it slides home", Formula: "t / 2",
			Terms: []figure.Term{l.length("t", "seam.tenon", c.Seam.Tenon.Length)},
		}, metres(k.Projection))
	}
	odds := e.Odds()
	for _, o := range []struct {
		key, symbol, name string
		share, err        float64
	}{
		{"close.chance", "p_i", "chance that the last panel has that length, each panel deviating for itself", odds.ByChance.Share, odds.ByChance.Error},
		{"close.chance-alike", "p_a", "the same, all panels deviating alike, as off one form", odds.Alike.Share, odds.Alike.Error},
	} {
		method := "the worst case decides"
		if !odds.Decided {
			method = fmt.Sprintf("%d draws from seed %d, normal, tolerance three standard deviations; standard error %.2g%%", draws.Count, draws.Seed, 100*o.err)
		}
		l.add(figure.Figure{Key: o.key, Symbol: o.symbol, Name: o.name, Method: method}, quantity.Share(o.share).Value())
	}
}

func (l *lines) sides(k *Closing, s *seasons.Seasons) {
	if k.Sides.Most.Err != nil {
		return
	}
	c := l.c
	l.add(figure.Figure{
		Key: "close.side-gap.most", Symbol: "s_max", Name: "gap beside the arch at its narrowest, on each side, in the room at its widest, the feet drawn in",
		Formula: "(W + τ - B + p + f*k) / 2 + max(0, -Δf_d, -Δf_w)",
		Terms: []figure.Term{
			l.length("W", "room.width", float64(c.Spec.Room.Width)), l.length("τ", "room.tolerance", float64(*c.Spec.Room.Tolerance)),
			l.length("B", "vault.width", c.Vault.Width), l.length("p", "panels.tolerance", c.Panel.Tolerance), l.length("f", "panels.form", c.Panel.Form),
			{Symbol: "k", Value: quantity.Value{SI: c.Vault.Spread, Unit: quantity.One}},
			l.length("Δf_d", "season.dry.foot", s.Dry.Foot.Value), l.length("Δf_w", "season.wet.foot", s.Wet.Foot.Value),
		},
	}, metres(k.Sides.Most.Value))
}

// Table is the last gap's chain: each term with its tolerance and its share of
// the variance. There is none without the first gap.
func (k *Closing) Table() (figure.Table, bool) {
	if k.Ends == nil {
		return figure.Table{}, false
	}
	e := k.Ends
	t := figure.Table{
		Key: "close.stack", Title: "the last gap, term by term", Subject: subject,
		Head: []string{"term", "count", "of one", "plus or minus", "of the variance"},
		Note: fmt.Sprintf("Simulated where the worst case does not decide: %d draws from seed %d, normal, a tolerance three standard deviations.", draws.Count, draws.Seed),
	}
	shares := e.Stack.Shares()
	for i, term := range e.Stack {
		sign := ""
		if term.Sense < 0 {
			sign = "less "
		}
		t.Rows = append(t.Rows, figure.Row{Label: sign + term.Name, Values: []quantity.Value{
			{SI: float64(term.Count), Unit: quantity.One}, metres(term.Nominal), metres(term.Tolerance), quantity.Share(shares[i]).Value(),
		}})
	}
	t.Rows = append(t.Rows, figure.Row{Label: "last gap", Values: []quantity.Value{
		{SI: 1, Unit: quantity.One}, metres(e.Last), metres(e.Stack.Worst()), quantity.Share(1).Value(),
	}})
	return t, true
}

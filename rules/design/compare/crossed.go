package compare

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
)

// cross marks the figures whose limit lies between what they were and are: those that a
// rule compares whose finding came, went or changed its severity.
func cross(figures []FigureChange, findings []FindingChange, k *keys) {
	for _, f := range findings {
		if !f.crosses() {
			continue
		}
		for _, i := range f.compared(figures, k) {
			if id := f.Finding().Rule.ID; !slices.Contains(figures[i].Crossed, id) {
				figures[i].Crossed = append(figures[i].Crossed, id)
			}
		}
	}
}

// crosses reports whether a finding is there on one side alone, or in another severity,
// and says that a limit is passed: what is only noted or referred does so where it has a
// limit.
func (f FindingChange) crosses() bool {
	if f.Kind == Changed && f.Old.Severity == f.New.Severity {
		return false
	}
	asks := func(g *engine.Finding) bool {
		return g != nil && (g.Severity == engine.Hold || g.Severity == engine.Query || g.Bound.Unit != 0)
	}
	return asks(f.Old) || asks(f.New)
}

var digits = regexp.MustCompile(`[0-9]+`)

// alike is a key of a figure without its numbers: a rule names one of several straps,
// lifts or seats for all.
func alike(key string) string { return digits.ReplaceAllString(key, "0") }

// compared are the changed figures that a finding is of. At a leg that is the leg's
// margin, or the mass that it is rated for; else it is the one of its rule's figures that
// was measured, or all of these where the measure is worked from several.
func (f FindingChange) compared(figures []FigureChange, k *keys) (out []int) {
	leg := f.ofLeg(k)
	var measured []int
	for i, c := range figures {
		if leg != "" && c.Key == leg {
			return []int{i}
		}
		if !slices.ContainsFunc(f.Finding().Rule.Figures, func(key string) bool { return alike(key) == alike(c.Key) }) {
			continue
		}
		out = append(out, i)
		if is(f.Old, c.Old) || is(f.New, c.New) {
			measured = append(measured, i)
		}
	}
	if len(measured) > 0 {
		return measured
	}
	return out
}

// ofLeg is the key of the figure that a finding at a leg is of: its margin, as the new
// spec numbers it, or the mass that it is rated for; "" of other findings.
func (f FindingChange) ofLeg(k *keys) string {
	g := f.Finding()
	rest, ok := strings.CutPrefix(g.At, "route.")
	if !ok || !strings.HasPrefix(g.Rule.ID, "transit.") {
		return ""
	}
	number, key, _ := strings.Cut(rest, ".")
	if key == "capacity" {
		return "panel.mass.most"
	}
	margin := "carrying." + number + ".margin"
	if f.New == nil {
		return legs(margin, k)
	}
	return margin
}

// is reports whether a finding measured a figure itself.
func is(f *engine.Finding, c *figure.Figure) bool {
	if f == nil || c == nil || f.Measured.Unit == 0 || f.Measured.Unit != c.Value.Unit {
		return false
	}
	const same = 1e-9
	return math.Abs(f.Measured.SI-c.Value.SI) <= same*math.Abs(c.Value.SI)
}

// Worsened reports whether a finding of both specs is worse in the new one: of a higher
// severity, no longer accepted, or farther past its limit.
func (f FindingChange) Worsened() bool {
	if f.Kind != Changed {
		return false
	}
	if a, b := weight(f.Old), weight(f.New); a != b {
		return b > a
	}
	return past(f.New) > past(f.Old)
}

// past is how far a finding's measure is from its limit, as a share of that; nothing
// where it has none.
func past(f *engine.Finding) float64 {
	if f.Measured.Unit == 0 || f.Measured.Unit != f.Bound.Unit || f.Bound.SI == 0 {
		return 0
	}
	return math.Abs(f.Measured.SI-f.Bound.SI) / math.Abs(f.Bound.SI)
}

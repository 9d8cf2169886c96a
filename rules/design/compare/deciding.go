package compare

import (
	"slices"
	"strings"
)

// decisive are the figures that a decision hangs on: proportion, weight, the worst
// strap, sheets, joints, the last gap. Of the legs and of the lifts the worst one
// counts.
var decisive = []string{
	"grid.module-ratio", "panel.mass", "vault.mass", "hanging.worst", "skin.sheets", "joint.count",
	"close.last-gap.least", "close.last-gap.most",
}

// Deciding are the changed figures that a decision hangs on, in the order of the
// sheet: the decisive ones, the tightest leg, the lift that carries most, and what
// is compared by each rule whose findings came, went or changed their severity.
func (c *Comparison) Deciding() (few []FigureChange) {
	keys := slices.Clone(decisive)
	for _, f := range c.Findings {
		if f.Kind != Changed || f.Old.Severity != f.New.Severity {
			keys = append(keys, f.Finding().Rule.Figures...)
		}
	}
	keys = append(keys,
		c.worstOf("carrying.", ".margin", func(a, b float64) bool { return a < b }),
		c.worstOf("hanging.raised.lift.", "", func(a, b float64) bool { return a > b }))
	for _, f := range c.Figures {
		if slices.Contains(keys, f.Key) {
			few = append(few, f)
		}
	}
	return few
}

// worstOf is the key, of the changed figures whose keys begin and end so, of the one
// that is or was the worst; "" where none changed.
func (c *Comparison) worstOf(prefix, suffix string, worse func(a, b float64) bool) (key string) {
	var worst float64
	for _, f := range c.Figures {
		if !strings.HasPrefix(f.Key, prefix) || !strings.HasSuffix(f.Key, suffix) {
			continue
		}
		at := f.worse(worse)
		if key == "" || worse(at, worst) {
			key, worst = f.Key, at
		}
	}
	return key
}

// worse is the worse of what a figure was and is.
func (f FigureChange) worse(worse func(a, b float64) bool) float64 {
	switch {
	case f.Old == nil:
		return f.New.Value.SI
	case f.New == nil || worse(f.Old.Value.SI, f.New.Value.SI):
		return f.Old.Value.SI
	default:
		return f.New.Value.SI
	}
}

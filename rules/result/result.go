// Package result holds what several families, the calculation sheet and the
// drawings read of a ceiling beyond its layout. Each result is computed once,
// on first use.
package result

import (
	"dryfit/rules/figure"
	"dryfit/rules/layout"
	"dryfit/rules/result/carrying"
	"dryfit/rules/result/hanging"
	"dryfit/rules/result/seasons"
)

// Results are those of one ceiling, for one goroutine.
type Results struct {
	ceiling *layout.Ceiling
	seasons *seasons.Seasons
	hanging *hanging.Hanging
	failed  error // of the hanging
	legs    []carrying.Leg
}

// Of is the results of a ceiling, none of them computed yet.
func Of(c *layout.Ceiling) *Results { return &Results{ceiling: c} }

// Seasons is what the wood does between the shop and the seasons.
func (r *Results) Seasons() *seasons.Seasons {
	if r.seasons == nil {
		s := seasons.Of(r.ceiling)
		r.seasons = &s
	}
	return r.seasons
}

// Hanging is what every strap may carry. Its errors are those of hanging.Solve.
func (r *Results) Hanging() (*hanging.Hanging, error) {
	if r.hanging == nil && r.failed == nil {
		r.hanging, r.failed = hanging.Solve(r.ceiling)
	}
	return r.hanging, r.failed
}

// Carrying is the panel's way, leg by leg.
func (r *Results) Carrying() []carrying.Leg {
	if r.legs == nil {
		r.legs = carrying.Of(r.ceiling)
	}
	return r.legs
}

// Figures is the whole calculation sheet: the layout's figures and the results'.
func (r *Results) Figures() []figure.Figure {
	out := append(r.ceiling.Figures(), r.Seasons().Figures(r.ceiling)...)
	if h, err := r.Hanging(); err == nil {
		out = append(out, h.Figures(r.ceiling)...)
	}
	return append(out, carrying.Figures(r.Carrying())...)
}

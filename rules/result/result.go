// Package result holds what several families, the calculation sheet and the
// drawings read of a ceiling beyond its layout. Each result is computed once,
// on first use.
package result

import (
	"dryfit/rules/figure"
	"dryfit/rules/layout"
	"dryfit/rules/result/carrying"
	"dryfit/rules/result/closing"
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
	closing *closing.Closing
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

// Closing is how the row of panels closes.
func (r *Results) Closing() *closing.Closing {
	if r.closing == nil {
		r.closing = closing.Of(r.ceiling, r.Seasons())
	}
	return r.closing
}

// Tables are those of the calculation sheet.
func (r *Results) Tables() []figure.Table {
	if t, ok := r.Closing().Table(); ok {
		return []figure.Table{t}
	}
	return nil
}

// Figures is the whole calculation sheet: the layout's figures and the results'.
func (r *Results) Figures() []figure.Figure {
	out := append(r.ceiling.Figures(), r.Seasons().Figures(r.ceiling)...)
	if h, err := r.Hanging(); err == nil {
		out = append(out, h.Figures(r.ceiling)...)
	}
	out = append(out, r.Closing().Figures(r.ceiling, r.Seasons())...)
	return append(out, carrying.Figures(r.Carrying())...)
}

package raising

import (
	"errors"
	"fmt"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/shop"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Plan is the order of each piece with its steps, and what they are judged by.
type Plan struct {
	Pieces []Piece
	Limits Limits
	Stress string // why the rib's stress is not judged; "" where it is
	Err    error  // of the frame: there is no plan
}

// PlanOf is the plan of a ceiling, with the keys that it comes from.
func PlanOf(c *layout.Ceiling, h *hanging.Hanging, made *shop.Shop) record.Value[Plan] {
	return layout.Derive(c, func() (p Plan) {
		p.Limits, p.Stress = LimitsOf(c, made)
		p.Pieces, p.Err = Of(c, h, p.Limits)
		return p
	})
}

// None says why there is no plan: a key is absent, the frame has no solution, or a step
// is dangerous with nothing lost; "" where there is one. That a spec fails is for others
// to say.
func (p *Plan) None(c *layout.Ceiling) string {
	var needs *hanging.NeedsError
	var lifts *hanging.NoLiftsError
	switch {
	case !c.Strap.Allowable.Load.Given():
		return "needs strap.allowable.load"
	case errors.As(p.Err, &needs), errors.As(p.Err, &lifts):
		return p.Err.Error()
	case p.Err != nil:
		return "the frame has no solution: " + p.Err.Error()
	}
	for _, piece := range p.Pieces {
		for _, s := range piece.Steps {
			if s.Danger {
				return s.Name + ": " + s.Why
			}
		}
	}
	return ""
}

// NotJudged is what the plan does not answer for, in sentences.
func (p *Plan) NotJudged(c *layout.Ceiling) (out []string) {
	if p.Stress != "" {
		out = append(out, "The rib's stress is not judged: "+p.Stress+".")
	}
	if !c.Lift.Capacity.Given() {
		out = append(out, "The lifts' capacity is not judged: needs lift.capacity.")
	}
	for _, n := range c.Unweighed() {
		out = append(out, "The weight does not include a fitting: needs "+spec.Key("fitting", n, "mass")+".")
	}
	if c.Panel.Around.Get() > 1 {
		out = append(out, "How a piece of a split arch gets from its chord to its final slope and onto its forks, and the force that brings the pieces together, are not computed.")
	}
	return out
}

// OrderFigures are the order of the straps, and from how many on they balance a
// piece and secure it, as counts; none where there is no plan.
func OrderFigures(c *layout.Ceiling, plan record.Value[Plan]) []figure.Figure {
	l := calcs.New(c, "raising")
	ready := func() bool {
		return c.Strap.Allowable.Load.Given() && len(c.Lift.Stations.Get()) > 0 && plan.Get().Err == nil
	}
	l.Where(ready, func() {
		for i := range plan.Get().Pieces {
			orderOf(c, l, plan, i)
		}
	})
	return l.List
}

// orderOf adds those of one piece.
func orderOf(c *layout.Ceiling, l *calcs.Lines, plan record.Value[Plan], piece int) {
	p := &plan.Get().Pieces[piece]
	prefix, of := "raise.", ""
	if p.Piece > 0 {
		prefix, of = fmt.Sprintf("raise.piece-%d.", p.Piece), fmt.Sprintf(" of piece %d", p.Piece)
	}
	add := func(key, symbol, name, method string, n int) {
		l.Add(prefix+key, symbol, name, func(f *figure.Figure) figure.Measure {
			f.Method = method
			return calcs.Solved(c, quantity.Value{SI: float64(n), Unit: quantity.One}, plan.From())
		})
	}
	method := "first the pair with the widest base that holds within the limits, then the outermost two of the remaining straps; a single strap is last"
	if p.ByBalance {
		method = "no pair holds within the limits; first the pair with the widest base that balances, then the outermost two of the remaining straps; a single strap is last"
	}
	for i, strap := range p.Order {
		add(fmt.Sprintf("order.%d", i+1), fmt.Sprintf("o_%d", i+1), fmt.Sprintf("strap%s that is fixed as number %d", of, i+1), method, strap)
	}
	add("balanced-after", "n_b", "number of straps"+of+" after which it balances without its lifts; 0: never",
		"each number of straps in that order solved without lifts, from the shape on the lifts", p.BalancedAfter)
	add("secure-after", "n_s", "number of straps"+of+" after which any one may be lost without the lifts; 0: never",
		"each number of straps in that order solved without lifts, whole and with each strap lost, against the straps' allowable and the rib's stress", p.SecureAfter)
}

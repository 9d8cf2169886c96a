// Package raising is the order in which a panel's straps are fixed while it stands
// on its lifts, and what each support carries at every step of it, with nothing
// lost and with any one lift or strap lost.
//
// All losses are static: one that comes suddenly can double a force.
package raising

import (
	"fmt"
	"slices"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
)

// Piece is one arch, or one piece of a split one, from its lifts to its straps.
type Piece struct {
	*hanging.Staging
	Order         []int   // of its straps, as they are counted from the left foot of the whole arch, from 1
	ByBalance     bool    // no pair of straps holds within its limits, and balance alone chose the first two
	BalancedAfter int     // how many straps balance it without lifts; 0: never
	SecureAfter   int     // how many hold it within the limits without lifts whichever one is lost; 0: never
	Pull          float64 // straight down on an end of its underside, that tips it on the first two straps alone; 0: none
	Steps         []Step
}

// Step is one step of the order.
type Step struct {
	Name string
	State
	Lost []Loss
}

// State is what the supports carry, and why it does not hold: "" where it does.
type State struct {
	hanging.State
	Why    string
	Danger bool // it falls, or a strap or a lift has more than its limit
}

// Holds reports whether it does, within the limits that are known.
func (s *State) Holds() bool { return s.Why == "" }

// Loss is the state after one support of a step is lost.
type Loss struct {
	What string // "strap 2", "lift 1"
	State
}

// Of is each piece of an arch, from the left. An error is one of the frame.
func Of(c *layout.Ceiling, h *hanging.Hanging, l Limits) ([]Piece, error) {
	staged := h.Staged.Get()
	if staged.Err != nil {
		return nil, staged.Err
	}
	var out []Piece
	for k, s := range staged.Is {
		part, intrados := c.Panel.Parts.Get()[k], c.Vault.Intrados.Get()
		p := planner{Staging: s, limits: l, ends: [2]float64{intrados.At(part.From).Y, intrados.At(part.To).Y}}
		out = append(out, p.plan())
		if p.err != nil {
			return nil, p.err
		}
	}
	return out, nil
}

// planner plans one piece. The first error of the frame stays.
type planner struct {
	*hanging.Staging
	limits Limits
	ends   [2]float64 // of its underside, across the span
	err    error
}

func (p *planner) plan() Piece {
	out := Piece{Staging: p.Staging}
	order, byBalance := p.order()
	out.ByBalance, out.Steps = byBalance, p.steps(order)
	out.BalancedAfter = p.from(order, func(straps []int) bool {
		s := p.with(straps, nil)
		return !s.Falls
	})
	out.SecureAfter = p.from(order, func(straps []int) bool {
		_, failed := p.insecure(straps)
		return !failed
	})
	if len(order) > 1 {
		out.Pull = p.pull(order[:2])
	}
	for _, i := range order {
		out.Order = append(out.Order, p.Straps[i])
	}
	return out
}

// with is the judged state on some straps and lifts.
func (p *planner) with(straps, lifts []int) State {
	s, err := p.Staging.With(straps, lifts)
	if err != nil && p.err == nil {
		p.err = err
	}
	return p.judge(s)
}

func (p *planner) judge(s hanging.State) State {
	heavy := max(1, p.limits.Heavier)
	over := func(v, limit float64) bool { return limit > 0 && !(v*heavy <= limit) }
	if s.Falls {
		return State{s, "it falls", true}
	}
	for i, f := range s.Straps {
		if over(f, p.limits.Strap) {
			return State{s, fmt.Sprintf("strap %d is over its allowable load", p.Straps[i]), true}
		}
	}
	for i, f := range s.Lifts {
		if over(f, p.limits.Lift) {
			return State{s, fmt.Sprintf("lift %d is over its capacity", i+1), true}
		}
	}
	if over(s.Stress(p.limits.Jointed), p.limits.Stress) {
		return State{s, "the rib is over its stress", false}
	}
	return State{State: s}
}

// from is the least number of straps of an order from which something holds for it
// and for every greater number; 0 where it does not hold of all.
func (p *planner) from(order []int, holds func(straps []int) bool) int {
	least := 0
	for n := len(order); n > 0 && holds(order[:n]); n-- {
		least = n
	}
	return least
}

// steps are the straps one by one, then each lift down alone, then all down.
func (p *planner) steps(order []int) []Step {
	up := count(p.Lifts)
	out := []Step{p.step("on the lifts", nil, up)}
	for n := range order {
		out = append(out, p.step(fmt.Sprintf("strap %d tight on both ribs", p.Straps[order[n]]), order[:n+1], up))
	}
	if p.Lifts > 1 {
		for i := range up {
			out = append(out, p.step(fmt.Sprintf("lift %d down alone", i+1), order, without(up, i)))
		}
	}
	return append(out, p.step("all lifts down", order, nil))
}

// step is a state with what any one loss makes of it.
func (p *planner) step(name string, straps, lifts []int) Step {
	out := Step{Name: name, State: p.with(straps, lifts)}
	for _, i := range lifts {
		out.Lost = append(out.Lost, Loss{fmt.Sprintf("lift %d", i+1), p.with(straps, without(lifts, i))})
	}
	for _, i := range slices.Sorted(slices.Values(straps)) {
		out.Lost = append(out.Lost, Loss{fmt.Sprintf("strap %d", p.Straps[i]), p.with(without(straps, i), lifts)})
	}
	return out
}

// count is 0 to n-1.
func count(n int) (out []int) {
	for i := range n {
		out = append(out, i)
	}
	return out
}

func without(list []int, one int) []int {
	return slices.DeleteFunc(slices.Clone(list), func(i int) bool { return i == one })
}

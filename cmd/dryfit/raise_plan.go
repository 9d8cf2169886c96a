package main

import (
	"errors"

	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/review"
	"dryfit/spec"
)

// planOf is the raising plan of a spec that passes, or why there is none.
func planOf(sheet *review.Sheet) (plan making.Raise, why string) {
	c := sheet.Ceiling
	plan.Sheet = sheet
	if !c.Strap.Allowable.Load.Given() {
		return plan, "needs strap.allowable.load"
	}
	worked := sheet.Results.Raising()
	plan.Pieces, plan.Limits = worked.Pieces, worked.Limits
	if worked.Stress != "" {
		plan.NotJudged = append(plan.NotJudged, "The rib's stress is not judged: "+worked.Stress+".")
	}
	if !c.Lift.Capacity.Given() {
		plan.NotJudged = append(plan.NotJudged, "The lifts' capacity is not judged: needs lift.capacity.")
	}
	for _, n := range c.Unweighed() {
		plan.NotJudged = append(plan.NotJudged, "The weight lacks a fitting: needs "+spec.Key("fitting", n, "mass")+".")
	}
	if c.Panel.Around.Get() > 1 {
		plan.NotJudged = append(plan.NotJudged, "How a piece of a split arch is turned and lies on its forks, and the force that brings the pieces together, are not worked out.")
	}
	return plan, noPlan(plan.Pieces, worked.Err)
}

// noPlan says why the steps are no plan: the frame has no solution, or a step is
// dangerous with nothing lost.
func noPlan(pieces []raising.Piece, err error) string {
	var needs *hanging.NeedsError
	var lifts *hanging.NoLiftsError
	switch {
	case errors.As(err, &needs), errors.As(err, &lifts):
		return err.Error()
	case err != nil:
		return "the frame has no solution: " + err.Error()
	}
	for _, p := range pieces {
		for _, s := range p.Steps {
			if s.Danger {
				return s.Name + ": " + s.Why
			}
		}
	}
	return ""
}

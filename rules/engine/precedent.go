package engine

import (
	"slices"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/record"
)

// Means are what a run of rules may use, beside the ceiling and the standards.
type Means struct {
	// Search is how far the way in is searched.
	Search carrying.Search
	// Frames keeps the frames that were solved, for who reviews a spec many times;
	// nil keeps none.
	Frames *hanging.Memory
	// Like is what rules have said of a ceiling whose spec has much in common; or nil.
	Like *Precedent
}

// Precedent is a ceiling with what rules have said of it, for runs by the same search over
// ceilings whose specs differ in some keys: a rule that has read none of these says the same
// again. It serves many goroutines, though one of them works the ceiling out further.
type Precedent struct {
	Ceiling *layout.Ceiling
	Done    layout.Done  // of the ceiling
	rib     hanging.Done // of its frame
	outcome Outcome
}

// end is where in the lists of an outcome that ends which a rule has said, and the keys
// that it has read.
type end struct {
	rule                                  *Rule
	findings, notChecked, quiet, loosened int
	read                                  record.Set
}

// Precedent is what the rules have said, as yet unchanged, of the ceiling of the outcome.
func (o *Outcome) Precedent(c *layout.Ceiling) *Precedent {
	return &Precedent{c, c.Done(), o.Results.Hanging().Done(), Outcome{
		Findings: slices.Clone(o.Findings), NotChecked: slices.Clone(o.NotChecked),
		Quiet: slices.Clone(o.Quiet), Loosened: slices.Clone(o.Loosened), ends: slices.Clip(o.ends),
	}}
}

// Of is the ceiling, nil of no precedent.
func (p *Precedent) Of() *layout.Ceiling {
	if p == nil {
		return nil
	}
	return p.Ceiling
}

// Unsaid is the ceiling with what was done of it, for runs by another search.
func (p *Precedent) Unsaid() *Precedent {
	if p == nil {
		return nil
	}
	return &Precedent{Ceiling: p.Ceiling, Done: p.Done, rib: p.rib}
}

// recall takes what a rule has said of the ceiling that this one is like, if the rule has
// read nothing in which the two differ.
func (o *Outcome) recall(r *Rule) bool {
	if o.like == nil {
		return false
	}
	had := &o.like.outcome
	at := len(o.ends) // where it is in a run of the same rules
	if at >= len(had.ends) || had.ends[at].rule != r {
		at = slices.IndexFunc(had.ends, func(e end) bool { return e.rule == r })
	}
	if at < 0 || !had.ends[at].read.And(o.differ).Empty() {
		return false
	}
	var from end
	if at > 0 {
		from = had.ends[at-1]
	}
	to := had.ends[at]
	o.Findings = append(o.Findings, had.Findings[from.findings:to.findings]...)
	o.NotChecked = append(o.NotChecked, had.NotChecked[from.notChecked:to.notChecked]...)
	o.Quiet = append(o.Quiet, had.Quiet[from.quiet:to.quiet]...)
	o.Loosened = append(o.Loosened, had.Loosened[from.loosened:to.loosened]...)
	o.hasSaid(r, to.read)
	return true
}

// hasSaid notes that a rule has said all that it does.
func (o *Outcome) hasSaid(r *Rule, read record.Set) {
	o.Inputs[r] = read
	o.ends = append(o.ends, end{r, len(o.Findings), len(o.NotChecked), len(o.Quiet), len(o.Loosened), read})
}

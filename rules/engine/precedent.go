package engine

import (
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
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

// Precedent is a ceiling with what rules have said of it, for runs of the same rules by
// the same means over ceilings whose specs differ in some keys. A rule that has read
// none of these says the same again. It serves many goroutines while nobody else works
// the ceiling out.
type Precedent struct {
	Ceiling *layout.Ceiling
	said    map[*Rule]Outcome // of each rule by itself
}

// NewPrecedent runs rules over a ceiling.
func NewPrecedent(list []*Rule, c *layout.Ceiling, std *standards.Standards, m Means) *Precedent {
	p := &Precedent{Ceiling: c, said: make(map[*Rule]Outcome, len(list))}
	whole := newOutcome(c, m, len(list))
	for _, r := range list {
		one := Outcome{Results: whole.Results, Inputs: make(Inputs, 1)}
		one.Run([]*Rule{r}, c, std)
		p.said[r] = one
	}
	return p
}

// Unsaid is the ceiling alone, for runs by other rules or other means.
func (p *Precedent) Unsaid() *Precedent {
	if p == nil {
		return nil
	}
	return &Precedent{Ceiling: p.Ceiling}
}

// recall takes what a rule has said of the ceiling that this one is like, if the rule has
// read nothing in which the two differ.
func (o *Outcome) recall(r *Rule) bool {
	if o.like == nil {
		return false
	}
	had, known := o.like.said[r]
	if !known || !had.Inputs[r].And(o.differ).Empty() {
		return false
	}
	o.Findings = append(o.Findings, had.Findings...)
	o.NotChecked = append(o.NotChecked, had.NotChecked...)
	o.Quiet = append(o.Quiet, had.Quiet...)
	o.Loosened = append(o.Loosened, had.Loosened...)
	o.Inputs[r] = had.Inputs[r]
	return true
}

// Of is the ceiling, nil of no precedent.
func (p *Precedent) Of() *layout.Ceiling {
	if p == nil {
		return nil
	}
	return p.Ceiling
}

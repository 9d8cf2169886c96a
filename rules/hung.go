package rules

import (
	"errors"

	"dryfit/rules/result/hanging"
)

// Hung is a result of the frame, for a rule that reads it. Where there is none
// the rule is not checked: for a key that is missing, or because the rib does not
// hang, which one rule of its own says.
func Hung[T any](p *Pass, s hanging.Solved[T]) (T, bool) {
	v := s.Get()
	return v.Is, p.hangs(v.Err)
}

// Envelope is the cases whose worst governs the straps, as Hung gives a result.
func (p *Pass) Envelope() ([]*hanging.Case, bool) {
	cases, err := p.Results.Hanging().Envelope()
	return cases, p.hangs(err)
}

func (p *Pass) hangs(err error) bool {
	var needs *hanging.NeedsError
	switch {
	case err == nil:
		return true
	case errors.As(err, &needs):
		p.Absent(needs.Key)
	default:
		p.NotChecked("strap.stations", "the rib does not hang, which strap.holds says")
	}
	return false
}

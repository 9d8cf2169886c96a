package rules

import (
	"errors"

	"dryfit/rules/result/hanging"
)

// Hanging is the solved frame, for a rule that reads it. Where there is none the
// rule is not checked: for a key that is missing, or because the rib does not
// hang at all, which one rule of its own says.
func (p *Pass) Hanging() (*hanging.Hanging, bool) {
	h, err := p.Results.Hanging()
	var needs *hanging.NeedsError
	switch {
	case err == nil:
		return h, true
	case errors.As(err, &needs):
		p.Absent(needs.Key)
	default:
		p.NotChecked("strap.stations", "the rib does not hang, which strap.holds says")
	}
	return nil, false
}

package review

import (
	"slices"
	"strings"

	"dryfit/rules/engine"
)

// leaveOut drops what the rules that are left out say, and counts these as not
// checked. What a rule refers is never dropped, whatever else the rule says. All
// else is judged by every rule before: what passes, and what is accepted.
func (s *Assessment) leaveOut(o Options) {
	why := map[*engine.Rule]string{}
	for _, r := range o.Rules {
		if reason := o.LeftOut(r); reason != "" && r.Severity != engine.Refer {
			why[r] = reason
		}
	}
	s.Findings = slices.DeleteFunc(s.Findings, func(f engine.Finding) bool {
		return why[f.Rule] != "" && f.Severity != engine.Refer
	})
	s.NotChecked = slices.DeleteFunc(s.NotChecked, func(n engine.NotChecked) bool { return why[n.Rule] != "" })
	s.Loosened = slices.DeleteFunc(s.Loosened, func(l engine.Loosened) bool {
		for r := range why {
			if l.Name == r.ID || strings.HasPrefix(l.Name, r.ID+".") {
				return true
			}
		}
		return false
	})
	for _, r := range o.Rules {
		if why[r] != "" {
			s.NotChecked = append(s.NotChecked, engine.NotChecked{Rule: r, Why: why[r]})
		}
	}
}

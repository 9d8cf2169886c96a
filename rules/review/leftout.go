package review

import (
	"slices"
	"strings"

	"dryfit/rules"
)

// leaveOut drops what the rules that are left out say, and counts these as not
// checked. What a rule refers is never dropped, whatever else the rule says. All
// else is judged by every rule before: what passes, and what is accepted.
func (s *Sheet) leaveOut(o Options) {
	why := map[*rules.Rule]string{}
	for _, r := range o.Rules {
		if reason := o.LeftOut(r); reason != "" && r.Severity != rules.Refer {
			why[r] = reason
		}
	}
	s.Findings = slices.DeleteFunc(s.Findings, func(f rules.Finding) bool {
		return why[f.Rule] != "" && f.Severity != rules.Refer
	})
	s.NotChecked = slices.DeleteFunc(s.NotChecked, func(n rules.NotChecked) bool { return why[n.Rule] != "" })
	s.Loosened = slices.DeleteFunc(s.Loosened, func(l rules.Loosened) bool {
		for r := range why {
			if l.Name == r.ID || strings.HasPrefix(l.Name, r.ID+".") {
				return true
			}
		}
		return false
	})
	for _, r := range o.Rules {
		if why[r] != "" {
			s.NotChecked = append(s.NotChecked, rules.NotChecked{Rule: r, Why: why[r]})
		}
	}
}

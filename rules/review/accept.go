package review

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/nearest"
)

// acceptedBy is the rule that speaks of the acceptances themselves. The review
// applies it, since it looks at what the other rules have found.
const acceptedBy = "accept.in-force"

// accept marks the findings that the spec accepts, and returns what is wrong
// with its acceptances: out of date, of nothing, or of what can't be accepted.
func accept(c *layout.Ceiling, outcome engine.Outcome, o Options) []engine.Finding {
	i := slices.IndexFunc(o.Rules, func(r *engine.Rule) bool { return r.ID == acceptedBy })
	if i < 0 {
		return nil
	}
	var list []layout.Acceptance
	read := c.Recorded(func() { list = c.Accept.Get() })
	for _, r := range o.Rules {
		if slices.ContainsFunc(list, func(a layout.Acceptance) bool { return a.Rule == r.ID }) {
			read = read.Or(outcome.Inputs[r]) // whether there is something to accept
		}
	}
	outcome.Inputs[o.Rules[i]] = read
	var wrong []engine.Finding
	for n := range list {
		key := spec.Key("accept", n+1, "until")
		fault, severity := judgeTerm(list[n], o.Rules[i], o), engine.Query
		if fault == "" {
			key = spec.Key("accept", n+1, "rule")
			fault, severity = judgeAcceptance(&list[n], outcome.Findings, o)
		}
		if fault == "" {
			continue
		}
		wrong = append(wrong, engine.Finding{At: key, Rule: o.Rules[i], Severity: severity, Text: fault})
	}
	return wrong
}

// judgeTerm says why an acceptance is not in force on the day of the check: it has
// ended, or ends so late that nobody would look at it again.
func judgeTerm(a layout.Acceptance, rule *engine.Rule, o Options) string {
	days, ok := daysUntil(o.On, a.Until)
	switch most := longestTerm(rule, o.Standards); {
	case !ok || days < 0:
		return "the acceptance ended on " + a.Until + "; the check is for " + o.On
	case float64(days) > most:
		return fmt.Sprintf("the acceptance ends on %s, %d days after the day of the check; the maximum is %.0f, so it accepts nothing yet", a.Until, days, most)
	default:
		return ""
	}
}

// daysUntil counts the days from one date to another; ok is whether both are dates.
func daysUntil(from, until string) (days int64, ok bool) {
	on, err := time.Parse(time.DateOnly, from)
	end, fault := time.Parse(time.DateOnly, until)
	const day = 24 * 60 * 60 // in s; a Duration ends after 292 years
	return (end.Unix() - on.Unix()) / day, err == nil && fault == nil
}

// longestTerm is how many days what a spec accepts or has tried may count.
func longestTerm(rule *engine.Rule, std *standards.Standards) float64 {
	if set, ok := std.Limit(rule.Full(rule.Limits[0].Key)); ok {
		return set.Value.SI
	}
	return rule.Limits[0].Value.SI
}

// judgeAcceptance accepts what an acceptance may, or says why it accepts
// nothing.
func judgeAcceptance(a *layout.Acceptance, findings []engine.Finding, o Options) (fault string, s engine.Severity) {
	i := slices.IndexFunc(o.Rules, func(r *engine.Rule) bool { return r.ID == a.Rule })
	switch {
	case i < 0:
		return "there is no rule " + a.Rule + " to accept" + suggestion(a.Rule, o.Rules), engine.Query
	case o.Rules[i].Severity == engine.Refer:
		return a.Rule + " is referred, which can't be accepted", engine.Query
	case strings.TrimSpace(a.Reason) == "" || strings.TrimSpace(a.By) == "":
		return "the acceptance of " + a.Rule + " gives no reason or no name", engine.Query
	}
	switch accepted, held := acceptAll(a, findings, o); {
	case held:
		return a.Rule + " reports a hold, and the standards do not permit a spec to accept it", engine.Query
	case !accepted:
		return "no finding matches the acceptance of " + a.Rule, engine.Note
	default:
		return "", 0
	}
}

// acceptAll marks the findings that an acceptance is for, and reports whether there are
// any and whether it may not accept one of them.
func acceptAll(a *layout.Acceptance, findings []engine.Finding, o Options) (accepted, held bool) {
	for k := range findings {
		f := &findings[k]
		if f.Rule.ID != a.Rule || a.At != "" && a.At != f.At {
			continue
		}
		switch f.Severity {
		case engine.Hold:
			if _, may := o.Standards.MayAcceptHold(a.Rule); !may {
				held = true
				continue
			}
		case engine.Query:
		default:
			continue
		}
		f.Accepted, accepted = a, true
	}
	return accepted, held
}

func suggestion(id string, list []*engine.Rule) string {
	known := make([]string, len(list))
	for i, r := range list {
		known[i] = r.ID
	}
	if near, ok := nearest.Word(id, known); ok {
		return "; is it " + near + "?"
	}
	return ""
}

package review

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"dryfit/rules"
	"dryfit/rules/layout"
	"dryfit/spec"
	"dryfit/spec/nearest"
)

// acceptedBy is the rule that speaks of the acceptances themselves. The review
// applies it, since it looks at what the other rules have found.
const acceptedBy = "accept.in-force"

// accept marks the findings that the spec accepts, and returns what is wrong
// with its acceptances: out of date, of nothing, or of what can't be accepted.
func accept(c *layout.Ceiling, outcome rules.Outcome, o Options) []rules.Finding {
	i := slices.IndexFunc(o.Rules, func(r *rules.Rule) bool { return r.ID == acceptedBy })
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
	var wrong []rules.Finding
	for n := range list {
		key := spec.Key("accept", n+1, "until")
		fault, severity := judgeTerm(list[n], o.Rules[i], o), rules.Query
		if fault == "" {
			key = spec.Key("accept", n+1, "rule")
			fault, severity = judgeAcceptance(&list[n], outcome.Findings, o)
		}
		if fault == "" {
			continue
		}
		wrong = append(wrong, rules.Finding{At: key, Rule: o.Rules[i], Severity: severity, Text: fault})
	}
	return wrong
}

// judgeTerm says why an acceptance is not in force on the day of the check: it has
// ended, or ends so late that nobody would look at it again.
func judgeTerm(a layout.Acceptance, rule *rules.Rule, o Options) string {
	on, err := time.Parse(time.DateOnly, o.On)
	until, fault := time.Parse(time.DateOnly, a.Until)
	if err != nil || fault != nil || until.Before(on) {
		return "the acceptance ended on " + a.Until + ", and it is judged on " + o.On
	}
	most := rule.Limits[0].Value.SI
	if set, ok := o.Standards.Limit(rule.Full(rule.Limits[0].Key)); ok {
		most = set.Value.SI
	}
	const day = 24 * 60 * 60 // in s; a Duration ends after 292 years
	if days := (until.Unix() - on.Unix()) / day; float64(days) > most {
		return fmt.Sprintf("the acceptance ends on %s, %d days after the day of the check; the most is %.0f, so it accepts nothing yet", a.Until, days, most)
	}
	return ""
}

// judgeAcceptance accepts what an acceptance may, or says why it accepts
// nothing.
func judgeAcceptance(a *layout.Acceptance, findings []rules.Finding, o Options) (fault string, s rules.Severity) {
	i := slices.IndexFunc(o.Rules, func(r *rules.Rule) bool { return r.ID == a.Rule })
	switch {
	case i < 0:
		return "there is no rule " + a.Rule + " to accept" + suggestion(a.Rule, o.Rules), rules.Query
	case o.Rules[i].Severity == rules.Refer:
		return a.Rule + " is referred, which can't be accepted", rules.Query
	case strings.TrimSpace(a.Reason) == "" || strings.TrimSpace(a.By) == "":
		return "the acceptance of " + a.Rule + " gives no reason, or nobody's name", rules.Query
	}
	held := false
	accepted := false
	for k := range findings {
		f := &findings[k]
		if f.Rule.ID != a.Rule || a.At != "" && a.At != f.At {
			continue
		}
		switch f.Severity {
		case rules.Hold:
			if _, may := o.Standards.MayAcceptHold(a.Rule); !may {
				held = true
				continue
			}
		case rules.Query:
		default:
			continue
		}
		f.Accepted, accepted = a, true
	}
	switch {
	case held:
		return a.Rule + " holds the issue, and the standards do not let a spec accept that", rules.Query
	case !accepted:
		return "nothing is found that the acceptance of " + a.Rule + " could be for", rules.Note
	default:
		return "", 0
	}
}

func suggestion(id string, list []*rules.Rule) string {
	known := make([]string, len(list))
	for i, r := range list {
		known[i] = r.ID
	}
	if near, ok := nearest.Word(id, known); ok {
		return "; is it " + near + "?"
	}
	return ""
}

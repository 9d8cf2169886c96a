// Package accept holds the rule on acceptances: what a spec says of findings.
package accept

import (
	"embed"
	"slices"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "accept", Title: "what the spec has accepted", Cases: cases,
		Rules: []rules.Rule{inForce},
	}
}

var inForce = rules.Rule{
	ID:       "accept.in-force",
	Title:    "each acceptance is in force, and accepts something that may be accepted",
	Why:      "An acceptance that has run out, or that is for nothing, hides the next finding of its rule.",
	Severity: rules.Query,
	Limits: []rules.Limit{{
		Key: "term", Title: "days from the check to the last day of an acceptance, or of a trial", Value: quantity.Value{SI: 366, Unit: quantity.One},
		Sense: rules.AtMost, Lowest: 1, Most: 36525, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{
		Valid:  "judged on the date that the check is made for",
		Source: cite.CommonPractice(),
	},
	// The review applies it, since it looks at what the other rules have found; a
	// longer term is said here.
	Check: func(p *rules.Pass) {
		tried := slices.ContainsFunc(p.Ceiling.Route.Get(), func(l layout.Leg) bool { return l.Tried.Given() })
		if tried || len(p.Ceiling.Accept.Get()) > 0 {
			p.Limit("term")
		}
	},
}

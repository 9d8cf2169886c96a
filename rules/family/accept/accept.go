// Package accept holds the rule on acceptances: what a spec says of findings.
package accept

import (
	"embed"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
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
	Basis: rules.Basis{
		Valid:  "judged on the date that the check is made for",
		Source: cite.CommonPractice(),
	},
	// The review applies it, since it looks at what the other rules have found.
	Check: func(*rules.Pass) {},
}

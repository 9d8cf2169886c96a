// Package accept holds the rule on acceptances: what a spec says of findings.
package accept

import (
	"embed"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "accept", Title: "accepted findings", Cases: cases,
		Rules: []engine.Rule{inForce},
	}
}

var inForce = engine.Rule{
	ID:       "accept.in-force",
	Title:    "each acceptance is in force, and accepts something that may be accepted",
	Why:      "An acceptance that has expired, or that matches no finding, would hide the next finding of its rule.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "term", Title: "days from the check to the last day of an acceptance, or of a trial", Value: quantity.Value{SI: 366, Unit: quantity.One},
		Sense: engine.AtMost, Lowest: 1, Most: 36525, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "judged on the date of the check",
		Source: cite.CommonPractice(),
	},
	// The review applies it, since it looks at what the other rules have found; a
	// longer term is said here.
	Check: func(p *engine.Pass) {
		tried := slices.ContainsFunc(p.Ceiling.Route.Get(), func(l layout.Leg) bool { return l.Tried.Given() })
		if tried || len(p.Ceiling.Accept.Get()) > 0 {
			p.Limit("term")
		}
	},
}

// Package require holds the rule on what must be checked: what the standards, or
// the command, ask for that a spec could else leave out.
package require

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "require", Title: "required checks", Cases: cases,
		Rules: []engine.Rule{checked},
	}
}

var checked = engine.Rule{
	ID:       "require.checked",
	Title:    "all required rules are checked, and all required keys are given",
	Why:      "A rule whose keys are absent is not checked and can't fail, so a spec with fewer keys passes more easily.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Valid:  "rules and keys that [check] require in the standards or check --require names; a default does not replace a required key",
		Source: cite.CommonPractice(),
	},
	// The review applies it, since it looks at what the other rules could not check.
	Check: func(*engine.Pass) {},
}

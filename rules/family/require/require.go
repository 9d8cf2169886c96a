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
		Name: "require", Title: "what must be checked", Cases: cases,
		Rules: []engine.Rule{checked},
	}
}

var checked = engine.Rule{
	ID:       "require.checked",
	Title:    "the rules that are required are checked, and the keys that are required are given",
	Why:      "A rule whose keys are left out is not checked, and fails nothing: a spec that says less passes more easily.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Valid:  "rules and keys under [check] require in the standards, or named by check --require; no default stands for a key",
		Source: cite.CommonPractice(),
	},
	// The review applies it, since it looks at what the other rules could not check.
	Check: func(*engine.Pass) {},
}

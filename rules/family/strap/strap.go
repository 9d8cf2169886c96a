// Package strap holds the rules on what hangs on each strap.
package strap

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "strap", Title: "what hangs on each strap", Cases: cases,
		Rules: []rules.Rule{
			holds, apart, balance, load, lost, setting, slack, screws, section, source, hole, through, mortise, place, shows,
			framing, access, letIn, ledger, sideways, engineer,
		},
	}
}

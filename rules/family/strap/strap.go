// Package strap holds the rules on what hangs on each strap.
package strap

import (
	"embed"
	"strconv"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "strap", Title: "loads on the straps, and their screws", Cases: cases,
		Rules: []engine.Rule{
			holds, apart, balance, load, lost, setting, slack, screws, section, source, hole, through, mortise, place, shows,
			framing, access, letIn, ledger, sideways, engineer,
		},
	}
}

// amount is a count with the word for one or for several.
func amount(n int, one, several string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + several
}

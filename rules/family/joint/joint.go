// Package joint holds the rules on seams and their loose tenons.
package joint

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "joint", Title: "seams and their tenons", Cases: cases,
		Rules: []engine.Rule{tenon, width, embedment, wall, spacing, edge, registration, mortise, strapClear, rail, railClear, count},
	}
}

// Package closure holds the rules on closing the row of panels: the first gap,
// the last one, the sides, and what is left for the moulding to cover.
package closure

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "close", Title: "closing the row of panels", Cases: cases,
		Rules: []engine.Rule{slide, probability, twoWay, firstGap, cover, side, line},
	}
}

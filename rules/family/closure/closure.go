// Package closure holds the rules on closing the row of panels: the first gap,
// the last one, the sides, and what is left for the moulding to cover.
package closure

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "close", Title: "closing the row of panels", Cases: cases,
		Rules: []rules.Rule{slide, probability, twoWay, firstGap, cover, side, line},
	}
}

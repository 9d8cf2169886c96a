// Package bend holds the rules on what has to bend: skins, laminations, ribs.
package bend

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "bend", Title: "what has to bend", Cases: cases,
		Rules: []rules.Rule{skinRadius, lamination, laminationThin, stripSum, springback, grain, plank, stagger, solid, skinBearing, skinGlue, sheetJoint, sheetEdge},
	}
}

// Package bend holds the rules on what has to bend: skins, laminations, ribs.
package bend

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "bend", Title: "bending of skins, laminations and ribs", Cases: cases,
		Rules: []engine.Rule{skinRadius, lamination, laminationThin, stripSum, springback, grain, plank, stagger, solid, skinBearing, skinGlue, sheetJoint, sheetEdge},
	}
}

// Package rib holds the rules on the rib between its straps.
package rib

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "rib", Title: "strength and stiffness of the rib", Cases: cases,
		Rules: []engine.Rule{depthToSpan, sag, stress, radial, feet, inner, section, groove, layers, joint},
	}
}

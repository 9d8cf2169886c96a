// Package rib holds the rules on the rib between its straps.
package rib

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "rib", Title: "the rib between its straps", Cases: cases,
		Rules: []rules.Rule{depthToSpan, sag, stress, radial, feet, inner, section, groove, layers, joint},
	}
}

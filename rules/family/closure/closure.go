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

// endKeys are those that the gaps at the end walls come from.
var endKeys = []string{
	"close.first_gap", "close.last", "room.length", "room.tolerance", "vault.length", "panels.along", "panels.tolerance",
	"seam.gap", "seam.tolerance",
}

// sideKeys are those that the gaps beside the feet come from.
var sideKeys = []string{
	"room.width", "room.tolerance", "vault.profile", "vault.span", "vault.rise", "springing.cut", "rib.depth", "rib.species",
	"rib.cut", "rib.construction", "panels.tolerance", "panels.form", "climate.shop", "climate.dry", "climate.wet",
}

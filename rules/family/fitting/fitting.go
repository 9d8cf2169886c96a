// Package fitting holds the rules on what is let into the coffers: luminaires,
// sprinklers, diffusers.
package fitting

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "fitting", Title: "fittings in the coffers", Cases: cases,
		Rules: []engine.Rule{inGrid, clearOfMembers, edge, overlap, luminaireClear, luminaire, sprinkler},
	}
}

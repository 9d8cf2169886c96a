// Package fitting holds the rules on what is let into the coffers: luminaires,
// sprinklers, diffusers.
package fitting

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "fitting", Title: "fittings in the coffers", Cases: cases,
		Rules: []rules.Rule{inGrid, clearOfMembers, edge, overlap, luminaireClear, luminaire, sprinkler},
	}
}

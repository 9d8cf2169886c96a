// Package moisture holds the rules on what the seasons do to the wood.
package moisture

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "moisture", Title: "what the seasons do", Cases: cases,
		Rules: []rules.Rule{revealCloses, revealOpens, endGap, feet, rails, season, air, shop, acclimatise, cupping, fire, emission},
	}
}

// Package moisture holds the rules on what the seasons do to the wood.
package moisture

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "moisture", Title: "moisture, flame spread and emission", Cases: cases,
		Rules: []engine.Rule{revealCloses, revealOpens, endGap, feet, rails, season, air, shop, acclimatise, cupping, fire, emission},
	}
}

// Package grid holds the rules on how the vault divides into coffers.
package grid

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "grid", Title: "coffers and panels", Cases: cases,
		Rules: []engine.Rule{moduleRatio, moduleSize, longSide, seamsOnRibs, crown, count},
	}
}

func number(x float64) quantity.Value { return quantity.Value{SI: x, Unit: quantity.One} }

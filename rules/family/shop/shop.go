// Package shop holds the rules on what the shop has: its blanks, press, clamps and
// stock.
package shop

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "shop", Title: "the shop's stock and equipment", Cases: cases,
		Rules: []engine.Rule{blank, press, stock, pick, clamp, nest},
	}
}

// Package transit holds the rules on the way from the shop to the room.
package transit

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "transit", Title: "the way from the shop to the room", Cases: cases,
		Rules: []engine.Rule{vehicle, door, corridor, corner, stair, elevator, room, weight},
	}
}

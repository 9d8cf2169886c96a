// Package transit holds the rules on the way from the shop to the room.
package transit

import (
	"embed"

	"dryfit/rules"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() rules.Family {
	return rules.Family{
		Name: "transit", Title: "the way from the shop to the room", Cases: cases,
		Rules: []rules.Rule{vehicle, door, corridor, corner, stair, elevator, room, weight},
	}
}

package vault

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var (
	publicHeight   = cite.IBC.At("1208.2: 7ft 6in in habitable and occupiable spaces and corridors")
	dwellingHeight = cite.IRC.At("R305.1: 7ft in habitable rooms of dwellings")
)

var headroom = engine.Rule{
	ID:       "vault.headroom",
	Title:    "the springing is above the code's least ceiling height for the use of the room",
	Why:      "A ceiling lower than the code's least height needs an answer before it is made.",
	Severity: engine.Query,
	Limits: []engine.Limit{
		{
			Key: "dwelling", Title: "height of the springing above the floor in a dwelling", Value: quantity.Length(2.1336).Value(),
			Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: dwellingHeight,
		},
		{
			Key: "public", Title: "height of the springing above the floor elsewhere", Value: quantity.Length(2.286).Value(),
			Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: publicHeight,
		},
	},
	Basis: engine.Basis{
		Valid: "heights of the model codes; a room without room.use counts as public", Source: publicHeight,
	},
	Check: checkHeadroom,
}

func checkHeadroom(p *engine.Pass) {
	h, use := quantity.Length(p.Ceiling.Room.Height.Get()), p.Ceiling.Room.Use.Get()
	limit := p.Limit(use)
	if float64(h) >= limit.SI {
		return
	}
	room := map[string]string{"dwelling": "a dwelling", "public": "a public room"}[use]
	p.Report(engine.Finding{
		At: "room.height", Related: []string{"room.use"},
		Text:     "the springing is {measured} above the floor; the minimum in " + room + " is {limit}",
		Measured: h.Value(), Bound: limit,
	})
}

var height = engine.Rule{
	ID:       "vault.height",
	Title:    "the height of the room is referred to the authority",
	Why:      "The local code states the height that a room needs, and how much of a curved ceiling may be lower.",
	Severity: engine.Refer,
	RefersTo: engine.ToAuthority,
	Basis:    engine.Basis{Valid: "always", Source: publicHeight},
	Always:   true,
	Check:    checkHeight,
}

func checkHeight(p *engine.Pass) {
	room := p.Ceiling.Room
	p.Report(engine.Finding{
		At: "room.height", Related: []string{"room.use", "vault.rise"},
		Text: p.Textf("the springing is %v above the floor of a room for %s use; whether the local code allows that height is referred to the authority having jurisdiction",
			quantity.Length(room.Height.Get()), room.Use.Get()),
	})
}

package grid

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var longSide = engine.Rule{
	ID:       "grid.long-side",
	Title:    "the coffers' long side is parallel to the length of the room",
	Why:      "Coffers whose long side lies across a long room make it look shorter and wider.",
	Severity: engine.Note,
	Figures:  []string{"grid.long-side"},
	Limits: []engine.Limit{{
		Key: "square", Title: "ratio up to which a module counts as square",
		Value: number(1.05), Sense: engine.AtMost, Lowest: 1, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "rooms and modules that are not square", Source: cite.CommonPractice()},
	Check: checkLongSide,
}

func checkLongSide(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("square")
	roomAlong := quantity.Length(c.Room.Length.Get()) > quantity.Length(c.Room.Width.Get())
	coffersAlong := c.Grid.ModuleAlong.Get() > c.Grid.ModuleAround.Get()
	if c.Grid.Ratio() <= limit.SI || quantity.Length(c.Room.Length.Get()) == quantity.Length(c.Room.Width.Get()) || roomAlong == coffersAlong {
		return
	}
	seen := map[string]string{"end": "from the end", "side": "from the side"}[c.Room.Entry.Get()]
	p.Report(engine.Finding{
		At:       "grid",
		Text:     "the coffers' long side is across the length of the room, as seen " + seen + "; the ratio of their sides is {measured}; a ratio up to {limit} counts as square",
		Measured: number(c.Grid.Ratio()), Bound: limit,
	})
}

package transit

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var weight = engine.Rule{
	ID:       "transit.weight",
	Title:    "the panel is light enough for those who carry it",
	Why:      "People who carry too much let go.",
	Severity: engine.Query,
	Figures:  []string{"panel.mass.most"},
	Limits: []engine.Limit{{
		Key: "person", Title: "mass that one person lifts", Value: quantity.Mass(25).Value(),
		Sense: engine.AtMost, Lowest: 1, Most: 100, Source: cite.ISO11228.At("reference mass"),
	}},
	Basis: engine.Basis{
		Formula: "m ≤ n·k·m_1",
		Symbols: []engine.Symbol{
			{Name: "m", Means: "mass of the panel, at the upper end of the spread of its densities", Unit: "kg"},
			{Name: "n", Means: "people", Unit: "1"},
			{Name: "k", Means: "what a team manages of its members' sum: 2/3 of two, 1/2 of three; of more, for which none is given, 1/2 too", Unit: "1"},
			{Name: "m_1", Means: "mass that one lifts", Unit: "kg"},
		},
		Valid: "level ground, good grip; not overhead, not on stairs", Source: cite.HSEL23.At("paragraph 120"),
	},
	Check: checkWeight,
}

// team is what people manage together, of the sum of each alone.
func team(people int) float64 {
	switch people {
	case 1:
		return 1
	case 2:
		return 2.0 / 3
	default:
		return 0.5
	}
}

func checkWeight(p *engine.Pass) {
	p.Unweighed()
	c, limit := p.Ceiling, p.Limit("person")
	people := c.Crew.People.Get()
	together := limit
	together.Value = quantity.Mass(limit.SI * float64(people) * team(people)).Value()
	if people > 1 {
		together.Source += "; what a team manages: " + cite.HSEL23.At("paragraph 120").String()
	}
	most := c.Panel.Most.Get()
	if most <= together.SI {
		return
	}
	severity, aids := engine.Query, ""
	if c.Crew.Aids.Get() != "none" {
		severity, aids = engine.Note, " without their "+c.Crew.Aids.Get()
	}
	p.Report(engine.Finding{
		At: "crew.people", Related: []string{"crew.aids", "panels.along"}, Severity: severity,
		Text:     p.Textf("the panel is {measured} at most (nominally %v); %d people carry {limit} together%s", quantity.Mass(c.Panel.Mass.Get()), people, aids),
		Measured: quantity.Mass(most).Value(), Bound: together,
	})
}

var room = engine.Rule{
	ID:       "transit.room",
	Title:    "the panel turns to its bearing in the room, and tips down under it",
	Why:      "The panel comes in lengthwise and hangs crosswise: somewhere it has to turn.",
	Severity: engine.Query,
	Figures:  []string{"panel.width", "panel.height", "panel.end-length"},
	Basis: engine.Basis{
		Formula: "√(b² + l²) ≤ W, or √(l² + H²) ≤ h",
		Symbols: []engine.Symbol{
			{Name: "b", Means: "width of the panel", Unit: "m"},
			{Name: "l", Means: "its length along the axis", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "H", Means: "height of the panel's box", Unit: "m"},
			{Name: "h", Means: "height of the room at the springing", Unit: "m"},
		},
		Valid: "unwrapped; turned flat, or tipped down from standing on edge where it was carried in across", Source: cite.Derivation("diagonals of the panel's box"),
	},
	Check: checkRoom,
}

func checkRoom(p *engine.Pass) {
	c := p.Ceiling
	width, length := c.Room.Width.Get()-c.Room.Tolerance.Get(), c.Room.Length.Get()-c.Room.Tolerance.Get()
	flat := math.Hypot(c.Panel.Width.Get(), c.Panel.EndLength.Get())
	tipped := math.Hypot(c.Panel.EndLength.Get(), c.Panel.Height.Get())
	if flat <= min(width, length) || tipped <= c.Room.Height.Get() && c.Panel.Width.Get() <= width {
		return
	}
	p.Report(engine.Finding{
		At: "room.width", Related: []string{"room.height", "panels.along"}, Severity: engine.Query,
		Text: p.Textf("flat the panel turns in %v, and the room is %v wide; tipped down from its edge it reaches %v up, and the springing is at %v: how it comes to its bearing is not decided",
			quantity.Length(flat), quantity.Length(width), quantity.Length(tipped), quantity.Length(c.Room.Height.Get())),
	})
}

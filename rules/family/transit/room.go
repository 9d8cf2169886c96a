package transit

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/result/carrying"
	"dryfit/spec/quantity"
)

var room = engine.Rule{
	ID:       "transit.room",
	Title:    "the panel can be turned to its final direction in the room and tipped down below the springing",
	Why:      "The panel comes in lengthwise and hangs crosswise, so it must turn somewhere.",
	Severity: engine.Hold,
	Figures:  []string{"panel.width", "panel.height", "panel.end-length"},
	Basis: engine.Basis{
		Formula: "√(b² + l²) ≤ W, or √(l² + H²) ≤ h; on edge √(l² + s²) ≤ h + z + a",
		Symbols: []engine.Symbol{
			{Name: "b", Means: "width of the panel", Unit: "m"},
			{Name: "l", Means: "length of the panel along the axis", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "H", Means: "height of the panel's box", Unit: "m"},
			{Name: "h", Means: "height of the room at the springing", Unit: "m"},
			{Name: "s", Means: "least width of the panel's section, in any direction", Unit: "m"},
			{Name: "z", Means: "height of the crown's extrados above the springing", Unit: "m"},
			{Name: "a", Means: "clear height above that, to the framing", Unit: "m"},
		},
		Valid:  "the panel without its wrap, turned flat, or carried in crosswise on edge and tipped down. The finding is a hold if a search that covers all orientations proves that the panel passes the door that is the route's last leg only on edge, and the room, up to the framing, is too low to tip it down",
		Source: cite.Derivation("diagonals of the panel's box; the height of a prism that is tipped down"),
	},
	Check: checkRoom,
}

func checkRoom(p *engine.Pass) {
	r := p.Results.Room()
	switch {
	case r.Passes:
	case r.Door != "":
		onlyOnEdge(p, r)
	default:
		p.Report(engine.Finding{
			At: "room.width", Related: []string{"room.height", "panels.along"}, Severity: engine.Query,
			Text: p.Textf("the panel needs a width of %v to turn flat, and the room is %v wide; it needs a height of %v to tip down from its edge, and the springing is at %v. Other motions are not checked",
				quantity.Length(r.Flat), quantity.Length(p.Ceiling.Room.Width.Get()-p.Ceiling.Room.Tolerance.Get()), quantity.Length(r.Tipped), quantity.Length(p.Ceiling.Room.Height.Get())),
		})
	}
}

// onlyOnEdge reports a panel that comes in on edge and is never stood down.
func onlyOnEdge(p *engine.Pass, r carrying.InRoom) {
	legs := p.Results.Carrying()
	door := legs[len(legs)-1]
	p.Report(engine.Finding{
		At: "room.height", Related: []string{"room.above", door.Key(), "panels.along"}, Offers: smaller(p),
		Text: p.Textf("the panel comes through the %s only on edge, and %s; that needs at least {measured}, and there is {limit} up to the framing. With %v up to the springing it can tip down",
			door.Name.Get(), passage.StandDown, quantity.Length(r.Tipped)),
		Measured: quantity.Length(r.Standing).Value(), Bound: p.Stated("room.height", quantity.Length(r.Top).Value()),
	})
}

package transit

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/carrying"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// clearance is the limit that every leg has.
func clearance() []engine.Limit {
	return []engine.Limit{{
		Key: "clearance", Title: "free space on every side of the wrap", Value: quantity.Length(0.010).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}}
}

// leg is the rule for one kind of leg.
func leg(kind spec.LegKind, title, why string, basis engine.Basis) engine.Rule {
	return engine.Rule{
		ID: "transit." + string(kind), Title: title, Why: why, Severity: engine.Hold,
		Needs: []string{"route"}, Limits: clearance(), Basis: basis,
		Figures: []string{"panel.end-length", "panel.width", "panel.height"},
		Check: func(p *engine.Pass) {
			weighed := false
			for _, l := range p.Results.Carrying() {
				if l.Kind.Get() == kind {
					judge(p, l)
					weighed = rated(p, l) || weighed
				}
			}
			if weighed {
				p.Unweighed()
			}
		},
	}
}

// rated compares the panel with the rated load of a leg that has one; who rides with it is
// not counted. It reports whether there is a rated load.
func rated(p *engine.Pass, l carrying.Leg) bool {
	if !carrying.KindOf(l.Kind.Get()).Rated || !l.Capacity.Given() {
		return false
	}
	if p.Ceiling.Panel.Most.Get() <= l.Capacity.Get() {
		return true
	}
	key := l.At("capacity")
	p.Report(engine.Finding{
		At: key, Text: p.Textf("the panel weighs {measured} at most (nominally %v); the %s is rated for {limit}, passengers included", quantity.Mass(p.Ceiling.Panel.Mass.Get()), l.Name.Get()),
		Measured: quantity.Mass(p.Ceiling.Panel.Most.Get()).Value(), Bound: p.Stated(key, quantity.Mass(l.Capacity.Get()).Value()),
	})
	return true
}

var (
	carver = cite.Wetzel2000.At("Carver's theorem")
	door   = leg(spec.Door, "the panel in its wrap passes each door", "A panel that does not pass a door is cut there or goes back.", engine.Basis{
		Formula: "Ro − Ri·cos(min(2·φ, asin(t/(2·Ri)))) ≤ width, threaded",
		Symbols: []engine.Symbol{
			{Name: "Ro", Means: "radius of the wrapped panel's back", Unit: "m"},
			{Name: "Ri", Means: "radius of its intrados", Unit: "m"},
			{Name: "φ", Means: "half the angle of the arc", Unit: "rad"},
			{Name: "t", Means: "depth of the opening", Unit: "m"},
		},
		Valid:  "the panel moved straight in any direction, turned in the plane of the opening, or moved along its own curve. A proof that no motion passes is a straight bar inside the panel that can't pass, or a search that covers all orientations",
		Source: carver,
	})
	vehicle = leg(spec.Vehicle, "the panels go into each vehicle and through its door", "A load that does not fit needs a second trip or a bigger vehicle on the day.", engine.Basis{
		Valid: "panels moved in by one motion through the door, tilted if necessary; arches nested, as they hang or on edge; a door without a stated place is in the middle of its wall and at the floor", Source: carver,
	})
	corridor = leg(spec.Corridor, "the panel passes along each corridor", "The crew can't set a panel down in a corridor to plan the next move.", engine.Basis{
		Valid: "the panel moved straight, in any orientation. A corridor longer than two panels is checked exactly; a shorter one is checked as an opening of the corridor's depth", Source: carver,
	})
	corner = leg(spec.Corner, "the panel gets around each corner", "A long panel can jam between three walls at once.", engine.Basis{
		Formula: "min (a·cos θ + b·sin θ − w)/(sin θ·cos θ) ≥ L",
		Symbols: []engine.Symbol{
			{Name: "a", Means: "width of the corridor coming in", Unit: "m"},
			{Name: "b", Means: "width of the corridor going on", Unit: "m"},
			{Name: "L", Means: "longer side of the panel's plan", Unit: "m"},
			{Name: "w", Means: "shorter side of the panel's plan", Unit: "m"},
			{Name: "θ", Means: "angle while turning", Unit: "rad"},
		},
		Valid:  "rectangles exactly, by the formula; the arch on edge and all other orientations by a search that covers all orientations; both corridors without ends",
		Source: cite.Moretti2002.At("the formula for a rectangle"),
	})
	stair = leg(spec.Stair, "the panel goes up each stair and turns on its landing", "On a stair most of the weight is on the lower hands, and there is no room to put it down.", engine.Basis{
		Formula: "H·cos(atan(rise/going))",
		Symbols: []engine.Symbol{
			{Name: "H", Means: "headroom, vertical", Unit: "m"}, {Name: "rise", Means: "height of a step", Unit: "m"}, {Name: "going", Means: "depth of a step", Unit: "m"},
		},
		Valid: "one continuous motion from the floor at the foot, over the landing and up a second flight of the same size; or else two motions, parallel to the flight and around the landing's corner, without the move between them. A search that covers all orientations proves that no motion passes, only if the spec states a wall between the flights. The floor is the line of the nosings, and the soffit is the headroom above that line", Source: cite.Derivation("headroom square to the slope"),
	})
	elevator = leg(spec.Elevator, "the panel goes into each elevator", "Without a check, nobody knows that a car is too short until the panel is at its door.", engine.Basis{
		Valid: "the panel moved in by one motion through the door, tilted if necessary; a door without a stated place is in the middle of its wall and at the floor", Source: carver,
	})
)

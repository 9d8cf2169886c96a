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
		Valid:  "straight in any direction, turned in the plane of the opening, and along its own curve; that none passes is proven by a bar inside the panel or by a cover of all turns",
		Source: carver,
	})
	vehicle = leg(spec.Vehicle, "the panels go into each vehicle and through its door", "A load that does not fit needs a second trip or a bigger vehicle on the day.", engine.Basis{
		Valid: "in by one motion through the door, tilted as need be; arches nested, as they hang or on edge; the door in the middle of its wall and at the floor where its place is not given", Source: carver,
	})
	corridor = leg(spec.Corridor, "the panel passes along each corridor", "The crew can't set a panel down in a corridor to plan the next move.", engine.Basis{
		Valid: "straight, at any turn: exact in a corridor that is longer than two panels, and as an opening of its depth in a shorter one", Source: carver,
	})
	corner = leg(spec.Corner, "the panel gets around each corner", "A long panel can jam between three walls at once.", engine.Basis{
		Formula: "min (a·cos θ + b·sin θ − w)/(sin θ·cos θ) ≥ L",
		Symbols: []engine.Symbol{
			{Name: "a", Means: "width of the corridor coming in", Unit: "m"},
			{Name: "b", Means: "and going on", Unit: "m"},
			{Name: "L", Means: "longer side of the plan", Unit: "m"},
			{Name: "w", Means: "shorter side", Unit: "m"},
			{Name: "θ", Means: "angle while turning", Unit: "rad"},
		},
		Valid:  "rectangles exactly, by the formula; the arch on edge and every other turn by a cover of all turns; both corridors without ends",
		Source: cite.Moretti2002.At("the formula for a rectangle"),
	})
	stair = leg(spec.Stair, "the panel goes up each stair and turns on its landing", "On a stair most of the weight is on the lower hands, and there is no room to put it down.", engine.Basis{
		Formula: "H·cos(atan(rise/going))",
		Symbols: []engine.Symbol{
			{Name: "H", Means: "headroom, upright", Unit: "m"}, {Name: "rise", Means: "of a step", Unit: "m"}, {Name: "going", Means: "of a step", Unit: "m"},
		},
		Valid: "followed by one motion from the floor at the foot, over the landing, up a flight alike that goes on from it; else carried parallel to the flight and around the landing's corner, which is not followed as one. That none passes is proven by a cover of all turns, where a wall is stated between the flights; floor and soffit are the nosings' line and the headroom over it", Source: cite.Derivation("headroom square to the slope"),
	})
	elevator = leg(spec.Elevator, "the panel goes into each elevator", "A car that is too short shows only on the day, at its open doors.", engine.Basis{
		Valid: "in by one motion through the door, tilted as need be; the door in the middle of its wall and at the floor where its place is not given", Source: carver,
	})
)

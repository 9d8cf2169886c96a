package strap

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// checkFace compares how far straps stand off the nearest side of a member.
func checkFace(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("face")
	var off lines
	for _, x := range strapPlaces(p) {
		if stands := math.Abs(x.off - (c.Room.Framing.Member.Get()+c.Strap.Thickness.Get())/2); stands > limit.SI {
			off.add(x.key, stands)
		}
	}
	off.report(p, p.Textf("%s off the sides of the framing (members every %v from %v) by up to {measured}; the maximum is {limit}. State blocking, or move the stations or the seams",
		amount(off.count, "line of straps stands", "lines of straps stand"), quantity.Length(c.Room.Framing.Spacing.Get()), quantity.Length(c.Room.Framing.Offset.Get())), limit)
}

// checkUnderside looks for straps beside the members, and for screws near a
// member's edge.
func checkUnderside(p *engine.Pass) {
	c := p.Ceiling
	half := c.Room.Framing.Member.Get() / 2
	least, given := edgeLeast(p)
	var missed, near lines
	for _, x := range strapPlaces(p) {
		switch left := half - x.off; {
		case left < 0:
			missed.add(x.key, -left)
		case given && left < least.SI:
			near.add(x.key, -left)
		}
	}
	missed.report(p, p.Textf("%s the framing (members every %v from %v) by up to {measured}. State blocking, or move the stations or the seams",
		amount(missed.count, "line of straps misses", "lines of straps miss"), quantity.Length(c.Room.Framing.Spacing.Get()), quantity.Length(c.Room.Framing.Offset.Get())), engine.Bound{})
	near.most = -near.most
	near.report(p, p.Textf("%s near an edge of the framing; the smallest distance from a screw to the member's edge is {measured}; the limit is {limit}", amount(near.count, "line of straps is", "lines of straps are")), least)
}

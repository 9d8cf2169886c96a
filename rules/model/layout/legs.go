package layout

import (
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/record"
)

// legs are those that the standards give, then those of the spec. The standards'
// own are no key of the spec, and reading them notes none.
func (c *Ceiling) legs() record.Value[[]Leg] {
	stated, own := c.spec.Route.Value(c.rec), c.own.Route.Value(nil)
	return Derive(c, func() []Leg {
		var out []Leg
		for i, l := range own.Get() {
			out = append(out, legOf(nil, l, standards.LegKey(i+1)))
		}
		for i, l := range stated.Get() {
			out = append(out, legOf(c.rec, l, spec.Key("route", i+1)))
		}
		return out
	})
}

func legOf(rec *record.Recorder, l spec.Leg, key string) Leg {
	return Leg{
		Prefix: key,
		Name:   l.Name.Value(rec), Kind: l.Kind.Value(rec),
		Width: spec.SI(rec, l.Width), Height: spec.SI(rec, l.Height), Length: spec.SI(rec, l.Length), Wall: spec.SI(rec, l.Wall),
		Before: spec.SI(rec, l.Before), After: spec.SI(rec, l.After), Beside: spec.SI(rec, l.Beside),
		Onward: spec.SI(rec, l.Onward), Headroom: spec.SI(rec, l.Headroom), Rise: spec.SI(rec, l.Rise), Going: spec.SI(rec, l.Going),
		Risers: l.Risers.Value(rec), Turn: l.Turn.Value(rec), Between: l.Between.Value(rec), Ends: l.Ends.Value(rec), Capacity: spec.SI(rec, l.Capacity),
		LandingLeft: spec.SI(rec, l.Landing.Left), DoorLeft: spec.SI(rec, l.Door.Left), DoorSill: spec.SI(rec, l.Door.Sill),
		Tried: Trial{
			Table: Table{l.Tried.Stated(rec)},
			Date:  l.Tried.Date.Value(rec), By: l.Tried.By.Value(rec), How: l.Tried.How.Value(rec), Until: l.Tried.Until.Value(rec),
		},
		Landing: Box{Width: spec.SI(rec, l.Landing.Width), Length: spec.SI(rec, l.Landing.Length)},
		Door:    Box{Width: spec.SI(rec, l.Door.Width), Height: spec.SI(rec, l.Door.Height)},
		Inside:  Box{Length: spec.SI(rec, l.Inside.Length), Width: spec.SI(rec, l.Inside.Width), Height: spec.SI(rec, l.Inside.Height)},
	}
}

// resolveRoute finds a stair whose flight does not meet its landing where it is said to.
func resolveRoute(c *Ceiling) []Fault {
	for _, l := range c.Route.Get() {
		left := l.LandingLeft
		if !left.Given() {
			continue
		}
		key := l.Prefix + ".landing.left"
		if l.Turn.Given() && l.Turn.Get() != "none" {
			return []Fault{{key, "the flights of a stair that turns are at the two ends of its landing; a place from the left is for a stair that continues straight"}}
		}
		if wide := left.Get() + l.Width.Get(); wide > l.Landing.Width.Get()+agreement {
			return []Fault{{key, c.sprintf("a flight %v wide, %v from the left wall of its landing, ends %v from it, and the landing is %v wide",
				length(l.Width.Get()), length(left.Get()), length(wide), length(l.Landing.Width.Get()))}}
		}
	}
	return nil
}

package raising

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// arrives is the panel on its edge, its feet and its crown on the floor.
func (f *framer) arrives() Frame {
	out := f.frame("arrives on its edge")
	out.AcrossRoom = true
	at, takes := f.turningAt(), f.hands(f.stance.weight)
	out.Elevation = []curve.Region{f.tipped(0)}
	var plan curve.Region
	for _, p := range f.outline {
		plan = append(plan, curve.Point{Y: p.Y, Z: at - (p.Z - f.low.Z)})
	}
	out.Plan = []curve.Region{plan}
	out.Weight, out.With = f.stance.weight, "without its straps"
	out.Carried = []Share{{"floor", out.Weight}}
	out.Centre = Centre{Across: f.stance.centre.Y, Along: at - f.overFeet(), Up: f.t.along.Get(), FromEnd: f.t.along.Get()}
	out.Hands = []Hands{{"to lift it off what it rolls on", takes}}
	out.People = People{"at the panel", handsAway, f.around(takes, at-f.tall()-handsAway)}
	out.Top, out.Gap = f.long(), f.beside(f.stance.wide)
	out.Unknown = append(f.short(&out), f.howItComes())
	out.Until = "all who lift it have a hand on it, and the floor to its place is clear and level"
	return out
}

// short says where the room is too short for the panel and the people at it.
func (f *framer) short(out *Frame) []string {
	for _, p := range out.People.At {
		if p.Z < 0 || f.turningAt()+f.long() > f.c.Room.Length.Get() {
			return []string{"The room is shorter than the space for the panel on its way down and the people beside it."}
		}
	}
	return nil
}

// overFeet is how far the mass centre is from the feet, toward the crown.
func (f *framer) overFeet() float64 { return f.stance.centre.Z - f.low.Z }

func (f *framer) howItComes() string {
	switch {
	case f.stance.turn.OnEdge:
		return "It comes through the last door only on edge. How it is turned to face across the room is not computed."
	case len(f.c.Route.Get()) == 0:
		return "How it comes into the room is not known: the spec has no route."
	default:
		return "How it comes into the room is on the route's sheet. How it is turned to face across the room is not computed."
	}
}

// turns is the panel at its balance on its feet, on the way down from its edge.
func (f *framer) turns() Frame {
	out := f.frame("is turned down onto its feet")
	out.AcrossRoom = true
	z, x, at := f.overFeet(), f.t.along.Get(), f.turningAt()
	angle := math.Atan2(z, x)
	out.Elevation = []curve.Region{f.tipped(angle)}
	out.Ghost = []curve.Region{f.tipped(0), f.tipped(math.Pi / 2)}
	low, high := out.Elevation[0].Bounds()
	out.Plan = []curve.Region{box(f.low.Y, low.Y, f.high.Y, high.Y)}
	out.GhostPlan = []curve.Region{box(f.low.Y, at, f.high.Y, at+f.long())}
	out.Weight, out.With = f.stance.weight, "without its straps"
	out.Centre = Centre{Across: f.stance.centre.Y, Along: at, Up: math.Hypot(z, x), FromEnd: x}
	f.turningHands(&out, f.stance.weight*z/f.tall(), f.stance.weight*x/f.stance.reach, low.Y-handsAway)
	out.Top = math.Hypot(f.long(), f.tall())
	out.Gap = least(f.beside(f.stance.wide), Gap{"between its box on the way down and the springing", f.c.Room.Height.Get() - f.stance.turn.Tipped})
	out.Unknown = append(f.short(&out), f.turningUnknown()...)
	out.Until = "it stands on both feet, each in a shoe under its arris and chocked on the outside, and does not rock"
	return out
}

// turningHands are the forces at the crown, with who has them so far along the room. A
// flat panel has no crown to turn it by.
func (f *framer) turningHands(out *Frame, lift, hold, along float64) {
	begin, back := f.hands(lift), f.hands(hold)
	out.Carried = []Share{{"hands at the crown, as it leaves the floor", lift}, {"floor under the feet", out.Weight - lift}}
	out.Also = []Share{{"to hold it " + f.stance.held + ", past its balance, at most", hold}}
	out.Hands = []Hands{{"at the crown, to begin", begin}, {"to hold it " + f.stance.held + ", as if it were lifted", back}}
	if f.c.Vault.HalfAngle.Get() == 0 {
		begin, back = f.hands(out.Weight), 0
		out.Carried, out.Also = []Share{{"floor", out.Weight}}, nil
		out.Hands = []Hands{{"to lift it; how a flat panel is laid down is not computed", begin}}
	}
	out.People = People{"at the crown", handsAway, f.around(max(begin, back), along)}
}

func (f *framer) turningUnknown() []string {
	var out []string
	switch {
	case f.stance.turn.Passes:
	case f.stance.turn.Level:
		out = append(out, "In this room it can be turned flat but not tipped down from its edge; turning it flat is not drawn.")
	default:
		out = append(out, "Whether it can be tipped down in this room is not known.")
	}
	if f.tall() > HandsBelow {
		out = append(out, "The crown rises above the greatest height for lifting by hand: use a line or a lift.")
	}
	return append(out, "The force that spreads the feet, and so the force on a chock, is not computed.")
}

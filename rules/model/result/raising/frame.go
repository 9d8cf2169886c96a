package raising

import (
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
)

// Frame is one moment of raising a panel, or a piece of a split arch: where it is, what
// carries it, who is near. Lengths are in m, forces in N and of both edge ribs together.
//
// Places are across the span from the left springing, along the axis from the near end
// wall, and above the floor.
type Frame struct {
	Panel int    // as the plan numbers it
	Of    string // what is drawn: a panel, or a whole arch of them
	Piece int    // of a split arch, from 1; 0 of a whole one
	Name  string

	// Elevation is what is seen along the axis, Y across and Z above the floor, or of one
	// AcrossRoom with Y along; Plan has Y across and Z along. Ghost and GhostPlan are
	// where it was before, Hung and HungPlan what already hangs.
	AcrossRoom                bool
	Elevation, Ghost, Hung    []curve.Region
	Plan, GhostPlan, HungPlan []curve.Region

	Weight  float64  // of what is raised
	With    string   // whether its straps are counted, which are fixed when it is up
	Carried []Share  // what carries it: together the weight
	After   []Stage  // of a frame of several steps: what carries it after each
	Also    []Share  // forces that carry nothing of it, with what each is
	Centre  Centre   // of mass
	Forks   []Fork   // none before it is on its lifts
	Straps  []Strap  // that are fixed in this frame, in their order
	Base    *Base    // of the lifts; nil where the spec has no lift.base
	Hands   []Hands  // that it takes
	Crew    int      // that the spec has
	People  People   // who are named, and where
	Top     float64  // of the panel, above the floor: kept clear around its plan
	Gap     Gap      // the least
	Unknown []string // what the frame does not answer for, in sentences
	Until   string   // nobody passes on before that
	Release string   // NOT RELEASED, or what releases it
}

// Share is a force and what it is of.
type Share struct {
	What  string
	Force float64
}

// Stage is one step of the order within a frame.
type Stage struct {
	Name    string
	Carried []Share
}

// Centre is the mass centre: across and up of the panel where it is, along from the
// panel's own end as well.
type Centre struct {
	Across, Along, Up float64
	FromEnd           float64
}

// Fork is where a lift's forks are.
type Fork struct {
	Across, Height float64
	ToCentre       float64 // across, from the fork to the mass centre
}

// Strap is the line of a strap from the panel's back to the framing.
type Strap struct {
	Number           int
	Across, From, To float64
}

// Base is how far the mass centre is from the heel of a base, before and after the
// panel slides, and where the base ends.
type Base struct{ Before, After, End float64 }

// Hands are the people that something takes.
type Hands struct {
	For   string
	Takes int
}

// People are those who are named for a frame, numbered from the left. At is their places
// in the plan, Y across and Z along.
type People struct {
	Are  string
	Away float64 // from the panel
	At   []curve.Point
}

// Gap is a clearance.
type Gap struct {
	What string
	Size float64
}

// What frames state as a choice of this program, in m: nobody publishes it.
const (
	handsAway  = 0.5 // of people from the panel that they hold
	cranksAway = 0.5 // of who turns a crank from the panel's near end, or from the heel of the lift
)

// NoRelease is what stands on a plan that nobody can have released.
const NoRelease = "NOT RELEASED"

// Released is what says so, while the spec names no engineer; or "".
func Released(c *layout.Ceiling) string {
	if c.Project.Engineer.Get() == "" {
		return NoRelease
	}
	return ""
}

// What a raising plan says before all else.
const (
	LiftsStay  = "Lifts stay, and nobody goes under the panel, until all straps are tight on both ribs, their screws are in, and the engineer's release is signed."
	LossStatic = "All losses are static: a support that is lost suddenly can double a force."
)

// Safety is what a plan says first.
func Safety(c *layout.Ceiling) []string {
	release := NoRelease + ": the spec names no engineer."
	if name := c.Project.Engineer.Get(); name != "" {
		release = "Only a signed release of the engineer of record, " + name + ", releases it; this plan does not."
	}
	return []string{LiftsStay, release, LossStatic}
}

// Site is what frames need of other results.
type Site struct {
	Between float64 // the room across beside a panel, at its tightest
	// Turn is what the room leaves for a panel that is so wide and so high, in m: as it
	// hangs, or of a piece of a split arch with its chord level.
	Turn func(wide, high float64) Turning
}

// Turning is what the room leaves for turning the panel down from its edge.
type Turning struct {
	Tipped float64 // what its box takes upright
	Passes bool    // under the springing and between the walls
	Level  bool    // else it turns level across the room
	OnEdge bool    // it is proven that it comes in only on edge
}

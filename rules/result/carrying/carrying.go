// Package carrying is the panel's way from the shop to the room, leg by leg: the
// best motion found for each, what it needs, what there is, and the margin.
//
// Lengths are in m. A margin is the clearance left on every side of the wrapped
// panel; below nothing, what is missing on every side.
package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/layout"
	"dryfit/spec/record"
)

// Leg is one leg of the route.
type Leg struct {
	layout.Leg
	Index int // in the route, from 1; 0 is the room itself
	Way   record.Value[Way]
}

// Way is the best motion found for a leg.
type Way struct {
	Motion  string
	Outcome passage.Outcome
	Margin  float64
	// Depth is the free depth that the motion needs before a door and beyond
	// it, in the wrap; 0 where it needs none that could fail.
	Depth float64
	// Loads is how many trips a vehicle makes, and Load the panels in one.
	Loads, Load int
	pose        func() Pose
}

// panel is the wrapped panel as it is carried.
type panel struct {
	c             *layout.Ceiling
	wrap          float64
	width, height float64 // of its box as hung, unwrapped
	length        float64
	section       []passage.Point
	thickness     float64
	radius        float64 // of the intrados, if it is one arc; else 0
	half          float64 // half the angle of the arc
	cut           float64 // what the section's chords cut off the curve
	flat          bool
}

// coarser is how many of the outline's steps one step of the section takes.
const coarser = 4

// motion is a way of carrying, with its margin.
type motion struct {
	name   string
	margin float64
	depth  float64
	pose   func() Pose
}

// Of is every leg of the spec's route, in order.
func Of(c *layout.Ceiling) []Leg {
	p := layout.Derive(c, func() *panel { return newPanel(c) })
	var out []Leg
	for i, l := range c.Route.Get() {
		out = append(out, Leg{Leg: l, Index: i + 1, Way: layout.Derive(c, func() Way { return KindOf(l.Kind.Get()).way(p.Get(), l) })})
	}
	return out
}

func newPanel(c *layout.Ceiling) *panel {
	p := &panel{
		c: c, wrap: c.Wrap.Allowance.Get(), width: c.Panel.Width.Get(), height: c.Panel.Height.Get(),
		length: c.Panel.EndLength.Get(), thickness: c.Vault.Thickness.Get(), flat: math.IsInf(c.Vault.TightestRadius.Get(), 1),
	}
	outline := c.Panel.Outline.Get()
	for i, q := range outline {
		if i%coarser == 0 || i == len(outline)-1 {
			p.section = append(p.section, passage.Point{X: q.Y, Y: q.Z})
		}
	}
	// What the longer chords cut off the curve counts as wrap.
	step := coarser * c.Panel.Arc.Get() / layout.BandSteps
	p.cut = step * step / (8 * c.Vault.TightestRadius.Get())
	if c.Vault.Shape().OneArc {
		p.radius = c.Vault.Radius.Get()
		p.half = c.Panel.Arc.Get() / c.Vault.Radius.Get() / 2
	}
	return p
}

func wall(l layout.Leg) float64 {
	if !l.Wall.Given() {
		return 0
	}
	return l.Wall.Get()
}

// openings are the straight ways through a rectangular opening, the wrap off
// its margin: along the axis with the section turned as need be, along the
// chord, and upright on a foot.
func (p *panel) openings(w, h float64) []motion {
	along := passage.Through(p.section, w, h)
	edge := passage.RectangleInRectangle(p.height, p.length, w, h)
	flat := passage.RectangleInRectangle(p.width, p.length, w, h)
	return []motion{
		{
			"carried along its axis, turned in its own plane", along.Margin - p.wrap - p.cut, p.length + 2*p.wrap,
			func() Pose { return p.inOpening(p.section, along.Angle, w, h) },
		},
		{
			"carried along its chord, on edge", edge.Margin - p.wrap, p.width + 2*p.wrap,
			func() Pose { return p.boxIn(p.height, p.length, edge.Angle, w, h) },
		},
		{
			"carried flat on, its back to the opening", flat.Margin - p.wrap, p.height + 2*p.wrap,
			func() Pose { return p.boxIn(p.width, p.length, flat.Angle, w, h) },
		},
	}
}

// threads is the way of a circular panel along its own circle, with its axis
// upright or level.
func (p *panel) threads(l layout.Leg) []motion {
	if p.radius == 0 {
		return nil
	}
	strip := passage.Strip{Inner: p.radius - p.wrap, Outer: p.radius + p.thickness + p.wrap, Half: p.half + p.wrap/p.radius}
	need := strip.Thread(wall(l))
	across := p.length + 2*p.wrap
	w, h := l.Width.Get(), l.Height.Get()
	return []motion{
		{
			"threaded along its own circle, its axis upright", min(w-need.Width, h-across) / 2, need.Depth,
			func() Pose { return p.inWall(w, wall(l), (w-need.Width)/2) },
		},
		{
			"threaded along its own circle, its axis level", min(h-need.Width, w-across) / 2, need.Depth,
			func() Pose { return p.inWall(h, wall(l), (h-need.Width)/2) },
		},
	}
}

// through is the best of several motions. What no straight motion gets through
// is a jam for a flat panel, whose box it is; of a curved one other motions are
// conceivable, and it is not decided.
func (p *panel) through(straight, threaded []motion) Way {
	best := motion{margin: math.Inf(-1)}
	for _, m := range append(straight, threaded...) {
		if m.margin > best.margin {
			best = m
		}
	}
	leg := Way{Motion: best.name, Margin: best.margin, Depth: best.depth, Outcome: passage.Passes, pose: best.pose}
	if best.margin < 0 {
		leg.Outcome = passage.Undecided
		if p.flat {
			leg.Outcome = passage.Jams
		}
	}
	return leg
}

// turn is the best way around a corner: with its axis upright, so that the arch
// itself is the plan; as it hangs; or standing on a foot.
func (p *panel) turn(a, b, height float64) Way {
	grown := 2 * p.wrap
	flat := passage.RectangleAround(p.width+grown, p.length+grown, a, b)
	foot := passage.RectangleAround(p.height+grown, p.length+grown, a, b)
	ways := []motion{
		{
			name: "as it hangs, in plan its width by its length", margin: min(flat, (height-p.height-grown)/2),
			pose: func() Pose { return p.boxAround(p.width, p.length, a, b, flat) },
		},
		{
			name: "standing on a foot", margin: min(foot, (height-p.width-grown)/2),
			pose: func() Pose { return p.boxAround(p.height, p.length, a, b, foot) },
		},
	}
	upright := passage.Around(p.section, a-grown-2*p.cut, b-grown-2*p.cut)
	box := passage.RectangleAround(p.width+grown, p.height+grown, a, b)
	onEdge := motion{
		name: "on edge, its axis upright", margin: min(box, (height-p.length-grown)/2),
		pose: func() Pose { return p.boxAround(p.width, p.height, a, b, box) },
	}
	if upright.Outcome == passage.Passes {
		onEdge.name = "on edge, its axis upright, the arch around the corner"
		onEdge.margin = min(max(box, upright.Margin/2), (height-p.length-grown)/2)
		onEdge.pose = func() Pose { return p.around(p.section, upright.From, upright.To, a, b, upright.Margin/2) }
	}
	ways = append(ways, onEdge)
	leg := p.through(ways, nil)
	if leg.Margin < 0 {
		leg.Outcome = passage.Jams
		if upright.Outcome == passage.Undecided && height >= p.length+grown || p.tips(a, b, height) {
			leg.Outcome = passage.Undecided
		}
	}
	return leg
}

// tips reports whether the panel's box, one end raised as far as the height
// lets it, is short enough in plan to get around: then level carrying does not
// decide.
func (p *panel) tips(a, b, height float64) bool {
	g := 2 * p.wrap
	w, h, n := p.width+g, p.height+g, p.length+g
	for _, way := range [][3]float64{{w, n, h}, {w, h, n}, {n, h, w}} { // long, upright, across
		long, up, across := way[0], way[1], way[2]
		plan := passage.TippedPlan(long, up, height)
		if plan > 0 && passage.RectangleAround(plan, across, a, b) >= 0 {
			return true
		}
	}
	return false
}

// stair is the flight, seen square to its slope, and the turn on the landing.
func (p *panel) stair(l layout.Leg) Way {
	head := passage.AcrossSlope(l.Headroom.Get(), l.Rise.Get(), l.Going.Get())
	flight := p.through(p.openings(l.Width.Get(), head), nil)
	landing := p.turn(l.Width.Get(), l.Landing.Width.Get(), l.Headroom.Get())
	flight.Depth = 0
	if landing.Margin < flight.Margin {
		landing.Motion = "turned on the landing, " + landing.Motion
		return landing
	}
	flight.Motion = "up the flight, " + flight.Motion
	return flight
}

// elevator is the door, and a place in the car: any of the box's sizes upright,
// the others on the floor, turned as need be.
func (p *panel) elevator(l layout.Leg) Way {
	g := 2 * p.wrap
	w, h, n := p.width+g, p.height+g, p.length+g
	best := motion{margin: math.Inf(-1)}
	for _, b := range []struct {
		name     string
		up, a, c float64
	}{{"its axis upright", n, w, h}, {"as it hangs", h, w, n}, {"standing on a foot", w, h, n}} {
		fit := passage.RectangleInRectangle(b.a, b.c, l.Inside.Length.Get(), l.Inside.Width.Get())
		floor := fit.Margin
		door := (l.Door.Width.Get() - min(b.a, b.c)) / 2
		upright := (min(l.Inside.Height.Get(), l.Door.Height.Get()) - b.up) / 2
		if m := min(floor, door, upright); m > best.margin {
			best = motion{name: "in the car " + b.name, margin: m, pose: func() Pose {
				pose := p.boxIn(b.a-g, b.c-g, fit.Angle, l.Inside.Length.Get(), l.Inside.Width.Get())
				pose.Plane = Floor
				return pose
			}}
		}
	}
	return p.through([]motion{best}, nil)
}

// load is how many panels a vehicle takes, arches nested into each other, and
// how many loads they make. Panels lie as they hang, either way round.
func (p *panel) load(leg *Way, inside layout.Box) {
	g := 2 * p.wrap
	w, h, n := p.width+g, p.height+g, p.length+g
	pitch := h
	if cos := math.Cos(min(p.half, p.c.Vault.HalfAngle.Get())); p.radius > 0 && cos > 0 {
		// Nested arches shifted by p stand p·cos apart at their ends.
		pitch = min(h, (p.thickness+g)/cos)
	}
	if p.flat {
		pitch = p.thickness + g
	}
	length, width, height := inside.Length.Get(), inside.Width.Get(), inside.Height.Get()
	for _, way := range [][2]float64{{w, n}, {n, w}} {
		if way[1] > width || h > height {
			continue
		}
		stacks := int(length/way[0]) * int(width/way[1])
		leg.Load = max(leg.Load, stacks*(1+int((height-h)/pitch)))
	}
	if leg.Load > 0 {
		leg.Loads = (p.c.Panel.Count.Get() + leg.Load - 1) / leg.Load
		return
	}
	// Not as it hangs: on edge, its axis level and the arch leaning on a side.
	if n <= height && h <= width && w <= length {
		leg.Load = int(width / h)
		leg.Loads = (p.c.Panel.Count.Get() + leg.Load - 1) / leg.Load
		return
	}
	leg.Margin, leg.Motion = min(leg.Margin, 0)-1e-9, "no place inside as a box, as it hangs or on edge"
	leg.Outcome = passage.Undecided
	if p.flat {
		leg.Outcome = passage.Jams
	}
}

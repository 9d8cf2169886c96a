package plan

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
)

// What stands around a plan, in mm.
const (
	bubble     = draft.Bubble // the radius of a grid line's
	bubbleLine = 5            // of the line from the room to it
	entryLong  = 5            // of the arrow of the entry
	cutLong    = 4            // of the ends of the section's plane
)

// bubbles name the ribs by numbers from the near end, and the rails by letters from
// the left springing. Where they have no room only every so many have one.
func (d *planOf) bubbles() {
	c, room := d.c, d.c.Room
	top, right := -max(d.side, 0), room.Length.Get()-d.near
	ribs := every(c.Grid.Along.Get(), d.v.Size(c.Grid.ModuleAlong.Get()))
	for i := 0; i <= c.Grid.Along.Get(); i += ribs {
		x0, x1 := d.rib(i)
		from := d.at((x0+x1)/2, top)
		d.bubble(from, paper.Point{X: from.X, Y: from.Y - bubbleLine - bubble}, fmt.Sprint(i+1))
	}
	rails := every(c.Grid.Around.Get(), d.v.Size(d.across(c.Grid.ModuleAround.Get())))
	for j := 0; j <= c.Grid.Around.Get(); j += rails {
		from := d.at(max(right, c.BuiltLength()), d.across(float64(j)*c.Grid.ModuleAround.Get()))
		d.bubble(from, paper.Point{X: from.X + bubbleLine + bubble, Y: from.Y}, draft.Letters(j))
	}
}

// every is how many grid lines there are from one bubble to the next, when two lines
// are so far apart.
func every(lines int, apart float64) int {
	step := 1
	for float64(step)*apart < 2.2*bubble && step < lines {
		step++
	}
	return step
}

func (d *planOf) bubble(from, at paper.Point, name string) {
	edge := paper.Point{X: at.X, Y: at.Y + bubble}
	if from.Y == at.Y {
		edge = paper.Point{X: at.X - bubble, Y: at.Y}
	}
	d.b.Line(from, edge, pen.Hair)
	d.b.Arc(paper.Circle(at, bubble, pen.Fine))
	d.b.Write(paper.Text{At: paper.Point{X: at.X, Y: at.Y + draft.Ordinary/2}, Height: draft.Ordinary, Anchor: paper.Middle, Text: name})
}

// cutMarks are the ends of the plane of the cross section, which looks to the far end.
func (d *planOf) cutMarks() {
	x := (d.c.RibAt(0) + d.c.RibAt(1)) / 2
	room := d.c.Room
	for _, end := range []struct{ y, out float64 }{{-d.side, -1}, {room.Width.Get() - d.side, 1}} {
		at := d.at(x, end.y)
		from, to := paper.Point{X: at.X, Y: at.Y + end.out}, paper.Point{X: at.X, Y: at.Y + end.out*cutLong}
		d.b.Line(from, to, pen.Cut)
		tip := paper.Point{X: to.X + cutLong/2, Y: to.Y}
		d.b.Line(to, tip, pen.Bold)
		d.b.Poly(paper.Poly{Points: []paper.Point{{X: tip.X + 2, Y: tip.Y}, {X: tip.X, Y: tip.Y - 0.8}, {X: tip.X, Y: tip.Y + 0.8}}, Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
		d.b.Label(draft.Label{Text: "S", Of: paper.Point{X: to.X, Y: to.Y}, Prefer: []draft.Side{draft.Left}})
	}
}

// What the north arrow takes, in mm.
const (
	northSize  = 6  // the radius of its circle
	northWide  = 2  // half of the arrow's foot
	northRight = 29 // of its middle from the room
	northUp    = 22
)

// north draws a circle with an arrow in it, and N at its tip, where the spec says how the
// plan lies: so far clockwise from the top of the plan.
func (d *planOf) north() {
	north := d.c.Project.North
	if !north.Given() {
		return
	}
	room := d.c.Room
	corner := d.at(max(room.Length.Get()-d.near, d.c.BuiltLength()), -max(d.side, 0))
	middle := paper.Point{X: corner.X + northRight, Y: corner.Y - northUp}
	sin, cos := math.Sincos(north.Get())
	place := func(ahead, right float64) paper.Point {
		return paper.Point{X: middle.X + ahead*sin + right*cos, Y: middle.Y - ahead*cos + right*sin}
	}
	d.b.Arc(paper.Circle(middle, northSize, pen.Fine))
	d.b.Poly(paper.Poly{Points: []paper.Point{place(northSize, 0), place(-northSize*0.8, northWide), place(-northSize*0.5, 0), place(-northSize*0.8, -northWide)}, Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
	n := place(northSize+draft.Large, 0)
	d.b.Write(paper.Text{At: paper.Point{X: n.X, Y: n.Y + draft.Large/2}, Height: draft.Large, Anchor: paper.Middle, Text: "N"})
}

// entryArrow points into the room from a place on a wall.
func (d *planOf) entryArrow(tip paper.Point, down bool) {
	points := []paper.Point{tip, {X: tip.X - entryLong, Y: tip.Y - entryLong/3.0}, {X: tip.X - entryLong, Y: tip.Y + entryLong/3.0}}
	if down {
		points = []paper.Point{tip, {X: tip.X - entryLong/3.0, Y: tip.Y - entryLong}, {X: tip.X + entryLong/3.0, Y: tip.Y - entryLong}}
	}
	d.b.Poly(paper.Poly{Points: points, Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
}

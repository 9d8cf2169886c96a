// Package paper is the one model of a drawing: what lies on a sheet of paper, in
// millimetres from its upper left corner, x to the right and y downward. Writers
// turn it into a file and decide nothing.
package paper

import "math"

// Point is a place on the sheet, in mm.
type Point struct{ X, Y float64 }

// Item is something on the sheet: a Line, an Arc, a Poly, Hatching, a Path, a Text or a Group.
type Item interface{ item() }

// Line is a straight line.
type Line struct {
	A, B Point
	Stroke
}

// Arc is part of a circle, from one angle to a greater one, in rad, clockwise on
// the paper from the x axis: a point on it is C + R·(cos, sin).
type Arc struct {
	C        Point
	R        float64
	From, To float64
	Stroke
}

// Circle is a whole one.
func Circle(c Point, r float64, s Stroke) Arc {
	return Arc{C: c, R: r, To: 2 * math.Pi, Stroke: s}
}

// Poly is a polygon, or an open run of lines.
type Poly struct {
	Points []Point
	Closed bool
	Tone   Tone
	// Flush lets a figure without a line reach a little under its neighbours,
	// so that the paper does not shine through between them.
	Flush bool
	Stroke
}

// Hatching is the lines that fill what is cut: each from one point to the other.
type Hatching struct {
	Lines [][2]Point
	Stroke
}

// Path is a chain of lines and arcs of circles, written to the last digit that a
// file takes, for who measures it.
type Path struct {
	ID     string // "" for most
	From   Point
	Steps  []Step // of a closed path the last leads back to where it begins
	Closed bool
	Stroke
}

// Step is a line or an arc from where the last one ended. An arc's bulge is the
// tangent of a quarter of the angle that it turns by, over nothing anticlockwise as
// it is seen.
type Step struct {
	To    Point
	Bulge float64
}

// Anchor is the end of a text that its place is of.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of text. At is on its base line, Height that of a capital in
// mm, Turn in degrees, anticlockwise as it is read.
type Text struct {
	At     Point
	Height float64
	Turn   float64
	Anchor Anchor
	Text   string
	Marked bool
}

// Group is items that belong together, named for who takes the file apart.
type Group struct {
	ID    string
	Items []Item
}

func (Line) item()     {}
func (Arc) item()      {}
func (Poly) item()     {}
func (Hatching) item() {}
func (Path) item()     {}
func (Text) item()     {}
func (Group) item()    {}

// Package paper is the one model of a drawing: what lies on a sheet of paper, in
// millimetres from its upper left corner, x to the right and y downward. Writers
// turn it into a file and decide nothing.
package paper

// Point is a place on the sheet, in mm.
type Point struct{ X, Y float64 }

// Sheet is one sheet of paper.
type Sheet struct {
	Name          string // "section", for files and references
	Number        string // "A-612.3"; "" where there is none
	Title         string // for a reader who can't see it: what the sheet shows
	About         string // the same at length, a sentence or two
	Width, Height float64
	Items         []Item // the later over the earlier
	// Marks are where findings bite, by their numbers, for who shows a part of
	// the sheet.
	Marks map[int]Point
	// Rest are the notes that its column has no room for: another sheet has them.
	Rest []Note
}

// Note is a heading and the lines under it.
type Note struct {
	Title string
	Lines []string
}

// Item is something on the sheet: a Line, an Arc, a Poly, a Path, a Text or a Group.
type Item interface{ item() }

// Pen is the width of a line, by what it is for.
type Pen uint8

// The pens, from none upward. Their widths are of the series of ISO 128-2.
const (
	None   Pen = iota
	Hair       // 0.13mm: dimensions, leaders, hatching
	Fine       // 0.18mm: what is seen beyond
	Medium     // 0.25mm: edges
	Bold       // 0.35mm: outlines of pieces
	Heavy      // 0.5mm: what is cut, borders
)

// Width of a line drawn with the pen, in mm.
func (p Pen) Width() float64 { return [...]float64{0, 0.13, 0.18, 0.25, 0.35, 0.5}[p] }

// Dash is how a line is broken.
type Dash uint8

// The kinds of lines.
const (
	Solid  Dash = iota
	Hidden      // behind something: short dashes
	Centre      // a centre line: long, short
	Beyond      // what is not part of the work: long, short, short
)

// Lengths are the drawn and the empty stretches of a line in turn, in mm; none
// of a solid one.
func (d Dash) Lengths() []float64 {
	return [...][]float64{nil, {2, 1}, {6, 1, 1, 1}, {6, 1, 1, 1, 1, 1}}[d]
}

// Tone is what a figure is filled with: a share of ink on paper. It is opaque,
// so that what is nearer hides what is farther.
type Tone uint8

// The tones. Between Paper and Ink lie seven shades: Paper+1 is the lightest.
const (
	Clear Tone = iota // not filled
	Paper
	Ink = Paper + 8
)

// Share of ink in the tone, from 0 of paper to 1.
func (t Tone) Share() float64 { return float64(max(t, Paper)-Paper) / 8 }

// Stroke is how a line is drawn. Marked lines stand for a finding.
type Stroke struct {
	Pen    Pen
	Dash   Dash
	Marked bool
}

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

func (Line) item()  {}
func (Arc) item()   {}
func (Poly) item()  {}
func (Path) item()  {}
func (Text) item()  {}
func (Group) item() {}

package shop

// Layer is what a line of a pattern is for.
type Layer string

// The layers of a pattern.
const (
	Cut     Layer = "CUT"
	Rail    Layer = "RAIL"
	RibFace Layer = "RIB"
	Strap   Layer = "STRAP"
	Bore    Layer = "BORE"
	Mortise Layer = "MORTISE"
	Reveal  Layer = "REVEAL"
	Joint   Layer = "JOINT"
	FormOf  Layer = "FORM"
	Clamp   Layer = "CLAMP"
	Fitting Layer = "FITTING"
	Text    Layer = "TEXT"
)

// Pattern is a shape to be cut, at full size, with what is marked on it.
type Pattern struct {
	Name    string  // "rib-1"
	Title   string  // in words
	Outline Outline // closed
	Marks   []Mark
	Runs    []Run
	Notes   []string
}

// Mark is a line, a circle or a text on a pattern.
type Mark struct {
	Layer  Layer
	Line   Outline // open, or closed where it ends where it begins
	Circle *Circle
	Label  *Label
}

// Circle is a hole.
type Circle struct {
	Centre Point
	Radius float64
}

// Label is a text that begins at a place, at an angle to the chord, in rad.
type Label struct {
	At    Point
	Angle float64
	Text  string
}

// Run is a row of running dimensions, all from one end.
type Run struct {
	Name     string  // "rails on the intrados"
	Length   float64 // of the whole edge
	Stations []Stop
}

// Stop is a place of a running dimension.
type Stop struct {
	Name string // "rail 3"
	At   float64
	On   Point // the place on the pattern
}

// Box is the least box around a pattern, its chord level.
type Box struct{ Length, Width float64 }

// BoxOf is that of an outline.
func BoxOf(o Outline) Box {
	low, high := o.Bounds()
	return Box{high[0] - low[0], high[1] - low[1]}
}

// closing is the running dimension of an edge's right end, which is the whole of it.
func closing(edge string, length float64, end Point) Run {
	return Run{Name: "end of the " + edge, Length: length, Stations: []Stop{{"end", length, end}}}
}

// arrow is a line with a barb at both ends, the way the grain runs.
func arrow(from, to Point) Mark {
	barb := (to[0] - from[0]) / 12
	return line(Text, Outline{
		{From: Point{from[0] + barb, from[1] + barb/3}, To: from},
		{From: from, To: to},
		{From: to, To: Point{to[0] - barb, to[1] - barb/3}},
	})
}

func line(l Layer, o Outline) Mark { return Mark{Layer: l, Line: o} }

func label(at Point, angle float64, text string) Mark {
	return Mark{Layer: Text, Label: &Label{at, angle, text}}
}

package shop

import (
	"math"

	"dryfit/rules/kernel/curve"
)

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
	Centre PatternPoint
	Radius float64
}

// Label is a text that begins at a place, at an angle to the chord, in rad.
type Label struct {
	At    PatternPoint
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
	On   PatternPoint // the place on the pattern
}

// Box is the least box around a pattern, its chord level.
type Box struct{ Length, Width float64 }

// BoxOf is that of an outline.
func BoxOf(o Outline) Box {
	low, high := o.Bounds()
	return Box{high[0] - low[0], high[1] - low[1]}
}

// closing is the running dimension of an edge's right end, which is the whole of it.
func closing(edge string, length float64, end PatternPoint) Run {
	return Run{Name: "end of the " + edge, Length: length, Stations: []Stop{{"end", length, end}}}
}

// grain is an arrow along the chord, from the middle of a piece between two edges as far
// each way as is wanted and the wood reaches, with its word over it. Over √(R·d/2) an arc
// of radius R comes down by a quarter of a depth d, and so does a slope t over d/(4·t).
func (f frame) grain(inner, outer curve.Curve, half, radius float64) []Mark {
	p, q := f.at(inner.At(inner.Length()/2)), f.at(outer.At(outer.Length()/2))
	x, y, depth := (p[0]+q[0])/2, (p[1]+q[1])/2, apart(p, q)
	way := f.turned(inner.Tangent(inner.Length() / 2)) // slopes at a pointed crown
	half = min(half, math.Sqrt(radius*depth/2), depth/4/max(math.Abs(way[1]/way[0]), 1e-9))
	barb := min(0.01, half/6)
	const off = 0.003 // of the word
	return []Mark{
		line(Text, Outline{
			{From: PatternPoint{x - half + barb, y + barb/3}, To: PatternPoint{x - half, y}},
			{From: PatternPoint{x - half, y}, To: PatternPoint{x + half, y}},
			{From: PatternPoint{x + half, y}, To: PatternPoint{x + half - barb, y - barb/3}},
		}),
		label(PatternPoint{x, y + off}, 0, "grain"),
	}
}

func line(l Layer, o Outline) Mark { return Mark{Layer: l, Line: o} }

func label(at PatternPoint, angle float64, text string) Mark {
	return Mark{Layer: Text, Label: &Label{at, angle, text}}
}

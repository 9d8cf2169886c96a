// Package framecases holds plane frames with published or derived answers, for
// the tests and benchmarks of package frame. Where no unit is given, a case works
// in units of its own: R = 1, EI = 1 and so on.
package framecases

import (
	"math"

	"dryfit/rules/kernel/frame"
)

// Problem is one frame under one case, with what is known about it.
type Problem struct {
	Name   string
	Source string // of the wanted values
	Model  frame.Model
	Case   frame.Case
	Wants  []Want
}

// Want is one known value.
type Want struct {
	Name   string
	Of     func(*frame.Result) float64
	Value  float64
	Within float64 // absolute
}

// All is every problem.
func All() []Problem {
	var all []Problem
	for _, some := range [][]Problem{curved(), rings(), beams(), continuous(), moved(), hung()} {
		all = append(all, some...)
	}
	return all
}

// usual is the share by which a chain of chords may differ from its closed form.
const usual = 0.001

// want is a value known to the usual tolerance; a zero counts against the unit.
func want(name string, value float64, of func(*frame.Result) float64) Want {
	within := usual * math.Abs(value)
	if value == 0 {
		within = usual
	}
	return Want{Name: name, Of: of, Value: value, Within: within}
}

// Values to want.

func movedX(node int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.Nodes[node].X }
}

func movedY(node int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.Nodes[node].Y }
}

func turned(node int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.Nodes[node].Turn }
}

func support(i int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.Supports[i] }
}

func spring(i int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.Springs[i].Force }
}

// moment is M at the share t of an element.
func moment(element int, t float64) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return r.At(element, t).M }
}

// sag is the movement down at the share t of an element.
func sag(element int, t float64) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 { return -r.At(element, t).Moved.Y }
}

// deepest is the greatest movement down within an element.
func deepest(element int) func(*frame.Result) float64 {
	return func(r *frame.Result) float64 {
		most := 0.0
		for i := range 201 {
			most = max(most, sag(element, float64(i)/200)(r))
		}
		return most
	}
}

// Arc is n+1 points on an arc of radius r about the origin, from the angle from to
// the angle to, in degrees clockwise from the crown; n is at least 1. Their chords
// are shorter than the arc by about a share (to − from)²/(24n²), the angles in rad.
func Arc(r, from, to float64, n int) []frame.Vector {
	points := make([]frame.Vector, n+1)
	for i := range points {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		points[i] = frame.Vector{X: r * sin, Y: r * cos}
	}
	return points
}

// Everywhere is the same load on every element.
func Everywhere(m frame.Model, x, y float64, per frame.Measure) []frame.SpreadLoad {
	loads := make([]frame.SpreadLoad, len(m.Elements))
	for i := range loads {
		loads[i] = frame.SpreadLoad{Element: i, X: x, Y: y, Per: per}
	}
	return loads
}

// bending is a section of EI = 1 without shear strain, and with so little axial
// strain that closed forms without it hold at lengths near 1.
var bending = frame.Section{EA: 1e6, EI: 1, GA: math.Inf(1)}

// pin holds a node in place, and clamp from turning too.
func pin(node int) []frame.Support {
	return []frame.Support{{Node: node, Direction: frame.AlongX}, {Node: node, Direction: frame.AlongY}}
}

func clamp(node int) []frame.Support {
	return append(pin(node), frame.Support{Node: node, Direction: frame.Turning})
}

func roller(node int) []frame.Support {
	return []frame.Support{{Node: node, Direction: frame.AlongY}}
}

// Package pen has the strokes of the drawings, and hatches what is cut.
package pen

import (
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// The lines of drawings.
var (
	Cut    = paper.Stroke{Pen: paper.Heavy}
	Bold   = paper.Stroke{Pen: paper.Bold}
	Edge   = paper.Stroke{Pen: paper.Medium}
	Fine   = paper.Stroke{Pen: paper.Fine}
	Hair   = paper.Stroke{Pen: paper.Hair}
	Centre = paper.Stroke{Pen: paper.Hair, Dash: paper.Centre}
	Beyond = paper.Stroke{Pen: paper.Fine, Dash: paper.Beyond}
	Hidden = paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden}
	Above  = paper.Stroke{Pen: paper.Hair, Dash: paper.Beyond}
)

// What is cut is hatched, by ISO 128-3 (from memory): narrow lines at 45 degrees, the
// other way in what lies beside. A pattern of its own for each way that wood is cut is
// common practice.

// Grain is how a hatched figure is cut.
type Grain uint8

const (
	EndGrain   Grain = iota + 1 // across the fibres: lines at 45 degrees
	EndOther                    // the same, of what lies beside: the other way
	LongGrain                   // along the fibres: lines along them, near and far in turn
	Plies                       // of a sheet: lines along it, every other strip crossed
	FramingCut                  // of the building's members: both diagonals
)

// Legend says what the patterns are.
var Legend = paper.Note{Title: "Cut wood", Lines: []string{
	"Lines at 45 degrees: end grain. Uneven lines along a piece: long grain. Strips, every other crossed: plies. Both diagonals: framing. Solid: too thin to be hatched.",
}}

// The distances of hatching, in mm.
const (
	hatchApart   = 1.4
	hatchNear    = 0.9 // of lines that are near and far in turn
	plyApart     = 1.1
	LeastHatched = 1.2 // what is thinner is filled
)

// Hatch draws a cut figure. One too thin for lines is filled instead.
func Hatch(outline []paper.Point, g Grain) []paper.Item {
	low, high := paper.Box([]paper.Item{paper.Poly{Points: outline, Closed: true}})
	wide, tall := high.X-low.X, high.Y-low.Y
	if min(wide, tall) < LeastHatched {
		return []paper.Item{paper.Poly{Points: outline, Closed: true, Tone: paper.Paper + 6, Stroke: Fine}}
	}
	var lines [][2]paper.Point
	switch g {
	case EndGrain, EndOther:
		lines = slanted(outline, g == EndOther)
	case LongGrain:
		for y := low.Y + hatchNear; y < high.Y; y += 3 * hatchNear {
			lines = append(lines, level(outline, y)...)
			lines = append(lines, level(outline, y+hatchNear)...)
		}
	case Plies:
		lines = pliesOf(outline, low, high)
	case FramingCut:
		lines = [][2]paper.Point{{low, high}, {{X: low.X, Y: high.Y}, {X: high.X, Y: low.Y}}}
	}
	return []paper.Item{paper.Hatching{Lines: lines, Stroke: Hair}}
}

// slanted are lines at 45 degrees inside a figure, on a grid of the sheet.
func slanted(outline []paper.Point, other bool) (lines [][2]paper.Point) {
	turned := make([]paper.Point, len(outline))
	sign := 1.0
	if other {
		sign = -1
	}
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range outline { // level lines of the turned figure are slanted ones of it
		turned[i] = paper.Point{X: (p.X + sign*p.Y) / math.Sqrt2, Y: (p.Y - sign*p.X) / math.Sqrt2}
		low, high = min(low, turned[i].Y), max(high, turned[i].Y)
	}
	const off = 0.37 // so that plain sizes put no line through a corner
	for y := (math.Ceil(low/hatchApart-off) + off) * hatchApart; y < high; y += hatchApart {
		for _, l := range level(turned, y) {
			for k, p := range l {
				l[k] = paper.Point{X: (p.X - sign*p.Y) / math.Sqrt2, Y: (p.Y + sign*p.X) / math.Sqrt2}
			}
			lines = append(lines, l)
		}
	}
	return lines
}

// pliesOf are the glue lines, and strokes across every other ply.
func pliesOf(outline []paper.Point, low, high paper.Point) (lines [][2]paper.Point) {
	n := max(3, math.Floor((high.Y-low.Y)/plyApart))
	n -= math.Mod(n+1, 2) // the same on both faces
	ply := (high.Y - low.Y) / n
	for k := 1.0; k < n; k++ {
		lines = append(lines, level(outline, low.Y+k*ply)...)
	}
	for k := 1.0; k < n; k += 2 {
		for x := low.X + plyApart/2; x < high.X; x += plyApart {
			lines = append(lines, [2]paper.Point{{X: x, Y: low.Y + k*ply}, {X: x, Y: low.Y + (k+1)*ply}})
		}
	}
	return lines
}

// level are the parts of a level line inside a figure, even and odd.
func level(outline []paper.Point, y float64) (parts [][2]paper.Point) {
	var xs []float64
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > y) != (b.Y > y) {
			xs = append(xs, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
		}
	}
	slices.Sort(xs)
	for i := 0; i+1 < len(xs); i += 2 {
		parts = append(parts, [2]paper.Point{{X: xs[i], Y: y}, {X: xs[i+1], Y: y}})
	}
	return parts
}

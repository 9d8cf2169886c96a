package shop

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// Form is what the strips of one piece of an arch are bent over: their innermost
// face, with the spring-back taken off.
type Form struct {
	Pattern
	Piece       int
	Halves      int     // 2: of a rib that is mitred at a pointed crown, which one form serves, turned over
	Radius      float64 // 0 of a form of several radii
	Chord, Rise float64 // of the intrados' length
	Intrados    float64 // its length
	Length      float64 // as long as the strip
	Trim        float64 // of its length, past either end of the intrados
	Clamping
}

// Clamping is how strips are pressed over their length, on a form if they are bent.
type Clamping struct {
	Clamps  int
	Spacing float64 // from clamp to clamp
	Force   float64 // of each clamp, N
}

// Clamped divides a length, in m and positive, evenly by clamps: ⌈length/spacing⌉ +
// 1 of them, each with the force of the glue's pressure over half a rib and what is
// jointed off it, times the spacing that results. Derived: a pressure by the area
// that a clamp serves; spacing and pressure are the shop's.
func Clamped(c *layout.Ceiling, length float64) Clamping {
	bench := c.Bench()
	n := int(math.Ceil(length/bench.Clamp.Spacing-1e-9)) + 1
	spacing := length / float64(n-1)
	return Clamping{n, spacing, Pressure(c, bench) * (c.Rib.Width.Get()/2 + bench.Joint) * spacing}
}

// body is how much of a form's board is left under the ends of its edge, in m; the
// shop may want more.
const body = 0.1

// forms are those of laminated ribs that are bent, piece by piece.
func forms(c *layout.Ceiling, strips []Strips) []Form {
	n := whole(c)
	if n < 2 || math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return nil
	}
	out := make([]Form, len(strips))
	for k, s := range strips {
		out[k] = form(c, k, s, 1/(1-timber.Springback(float64(n))))
	}
	return out
}

// form is one form. A piece's own two ends may be cut unlike, so that the trim is
// what the strip is longer than the intrados, half at each end.
func form(c *layout.Ceiling, k int, s Strips, bentBy float64) Form {
	from, to, halves := bent(c, k)
	edge := c.Vault.Parallel(from, to, 0).Recurved(bentBy)
	f := Form{Piece: k + 1, Halves: halves, Intrados: edge.Length(), Length: s.Length, Radius: oneRadius(edge)}
	f.Name, f.Title = fmt.Sprintf("form-%d", k+1), fmt.Sprintf("Bending form of piece %d of the arch", k+1)
	f.Trim = (f.Length - f.Intrados) / 2
	in := levelled(edge)
	ends := in.chain(edge)
	f.Chord, f.Rise = apart(ends.start(), ends.end()), rise(edge, in)
	whole := edge.Extended(f.Trim, f.Trim)
	top := in.chain(whole)
	low, _ := top.Bounds()
	base := math.Min(low[1], 0) - body
	a, b := top.start(), top.end()
	f.Outline = append(append(Outline{}, top...), straight(b, PatternPoint{b[0], base})...)
	f.Outline = append(f.Outline, straight(PatternPoint{b[0], base}, PatternPoint{a[0], base})...)
	f.Outline = append(f.Outline, straight(PatternPoint{a[0], base}, a)...)
	f.clamp(c, whole, in)
	f.trims(edge, in)
	f.Notes = append(f.Notes,
		"The form is corrected for springback by 1/n² of the curvature, for n strips. Springback differs between shops: glue a test piece first.",
		fmt.Sprintf("The board under the edge is drawn %.0fmm deep at its ends. The shop decides how the form is built.", body*1000))
	if halves == 2 {
		f.Notes = append(f.Notes, "Glue each half of the rib by itself; turn the form over for the other half. Cut the mitre at the crown after gluing.")
	}
	return f
}

// clamp marks the clamps.
func (f *Form) clamp(c *layout.Ceiling, edge curve.Curve, in frame) {
	f.Clamping = Clamped(c, f.Length)
	for i := range f.Clamps {
		at := f.Spacing * float64(i)
		f.Marks = append(f.Marks, across(Clamp, edge, in, at, 0, c.Rib.Depth.Get()))
	}
	run := Run{Name: "clamps along the form", Length: f.Length}
	for i := range f.Clamps {
		at := f.Spacing * float64(i)
		run.Stations = append(run.Stations, Stop{fmt.Sprintf("clamp %d", i+1), at, in.at(edge.At(at))})
	}
	f.Runs = append(f.Runs, run)
}

// Pressure is that on the glue of the ribs' wood, in Pa: the shop's for softwood or
// for hardwood, which needs more.
func Pressure(c *layout.Ceiling, bench *standards.Shop) float64 {
	if c.Rib.Species.Get().Group == timber.Softwood {
		return bench.Clamp.Softwood
	}
	return bench.Clamp.Hardwood
}

// trims marks where the intrados of the rib ends on the form.
func (f *Form) trims(edge curve.Curve, in frame) {
	for _, at := range []float64{0, edge.Length()} {
		f.Marks = append(f.Marks, across(FormOf, edge, in, at, -body/2, body/2))
	}
}

// across is a line square to a curve at a place along it, from one distance off it
// to another, away from the room.
func across(l Layer, c curve.Curve, in frame, at, from, to float64) Mark {
	p, t := c.At(at), c.Tangent(min(at, math.Nextafter(c.Length(), 0)))
	n := curve.Normal(t)
	off := func(d float64) PatternPoint { return in.at(curve.Point{Y: p.Y + d*n.Y, Z: p.Z + d*n.Z}) }
	return line(l, straight(off(from), off(to)))
}

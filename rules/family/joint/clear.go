package joint

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var railClear = engine.Rule{
	ID:       "joint.rail-clear",
	Title:    "the seams' mortises and the rails' joints leave wood between them",
	Why:      "A half rib has the seam's tenons on one side and the rails' joints on the other. Two joints at one place cut into each other.",
	Severity: engine.Hold,
	Needs:    []string{"rail.joint"},
	Limits: []engine.Limit{{
		Key: "wall", Title: "wood between two mortises, in thicknesses of the seam's tenon", Value: one(1), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "√(x² + y² + z²) ≥ wall·t, with negative gaps counted as 0",
		Symbols: []engine.Symbol{
			{Name: "x", Means: "gap along the intrados", Unit: "m"},
			{Name: "y", Means: "gap across the depth", Unit: "m"},
			{Name: "z", Means: "gap across the half rib: its width, less the depths of the seam's mortise and of the rail's joint", Unit: "m"},
			{Name: "t", Means: "thickness of the seam's tenon", Unit: "m"},
			{Name: "wall", Means: "least wall, in thicknesses", Unit: "1"},
		},
		Valid:  "a rail's tenon is in the middle of the rail; a half rail, at a foot or an edge seam, has half of the tenon. The spec does not state the places of dowels and screws, so the whole end of the rail counts; screws go through the half rib; in a rib within a panel the rails' joints of both sides face each other",
		Source: cite.Derivation("the distance between two boxes"),
	},
	Check: checkRailClear,
}

// hole is a box taken out of a half rib: along the intrados from the left end of
// the arch's piece, up from the intrados, and in from the seam.
type hole struct{ along, up, in [2]float64 }

// from is the least distance to another hole; not more than nought where they
// meet.
func (h hole) from(o hole) float64 {
	gap := func(a, b [2]float64) float64 { return math.Max(a[0]-b[1], b[0]-a[1]) }
	x, y, z := gap(h.along, o.along), gap(h.up, o.up), gap(h.in, o.in)
	if most := max(x, y, z); most <= 0 {
		return most
	}
	return math.Hypot(math.Hypot(max(x, 0), max(y, 0)), max(z, 0))
}

// about is a stretch of a length about its middle.
func about(middle, length float64) [2]float64 {
	return [2]float64{middle - length/2, middle + length/2}
}

func checkRailClear(p *engine.Pass) {
	c, j := p.Ceiling, p.Ceiling.RailJoint
	if j.Kind.Get() == "glue" || !stated(p, jointSizes(j)...) {
		return
	}
	wall := p.Limit("wall")
	wall.Value = quantity.Length(wall.SI * c.Seam.Tenon.Thickness.Get()).Value()
	checkFacing(p, wall)
	if c.Seam.Count.Get() == 0 {
		return
	}
	nearest, mortises := meeting{apart: math.Inf(1)}, mortisesOf(c)
	for k := range c.Panel.Around.Get() {
		for _, h := range railHoles(c, k) {
			for i, m := range mortises {
				apart := m.from(h.hole)
				if apart < wall.SI {
					nearest.places++
				}
				if apart < nearest.apart {
					nearest.apart, nearest.tenon, nearest.rail = apart, i+1, h.rail
				}
			}
		}
	}
	nearest.report(p, wall)
}

// jointSizes are the sizes that say where a joint takes wood away.
func jointSizes(j layout.RailJoint) []layout.Number {
	switch j.Kind.Get() {
	case "tenon":
		return []layout.Number{j.Thickness, j.Width, j.Embedment}
	case "dowel":
		return []layout.Number{j.Embedment}
	default:
		return nil
	}
}

// mortisesOf are those of a seam's tenons in one piece of the arch.
func mortisesOf(c *layout.Ceiling) (out []hole) {
	for _, s := range c.TenonStations(c.Panel.Arc.Get()) {
		out = append(out, mortiseAt(c, s))
	}
	return out
}

// mortiseAt is that of a seam's tenon at a station of the arch's piece.
func mortiseAt(c *layout.Ceiling, station float64) hole {
	from, to := plainRib(c)
	t := c.Seam.Tenon
	width := t.Width.Get()
	if c.Seam.Mortise.Get() != "all snug" {
		width += layout.MortiseAir
	}
	return hole{
		along: about(station, width), up: about((from+to)/2, t.Thickness.Get()),
		in: [2]float64{0, (t.Length.Get() + layout.MortiseAir) / 2},
	}
}

// railHole is what the joint of a rail takes out of the half rib.
type railHole struct {
	rail int // of the whole arch, 0 at the left springing
	hole
}

// railHoles are those of the rails of one piece of the arch.
func railHoles(c *layout.Ceiling, piece int) []railHole {
	j, rib, width := c.RailJoint, c.Rib.Width.Get()/2, c.Rail.Width.Get()
	up, joint, in := [2]float64{0, c.Rail.Depth.Get()}, width, [2]float64{0, rib}
	if j.Kind.Get() == "tenon" {
		up, joint = about(c.Rail.Depth.Get()/2, j.Thickness.Get()), j.Width.Get()
	}
	if j.Kind.Get() != "screw" {
		in[0] = rib - j.Embedment.Get()
	}
	arc, module := c.Panel.Arc.Get(), c.Grid.ModuleAround.Get()
	var out []railHole
	for n := range c.Grid.Around.Get() + 1 {
		at, inside := float64(n)*module-float64(piece)*arc, 1e-6*arc
		h := hole{about(at, joint), up, in}
		switch {
		case at < -inside || at > arc+inside:
			continue
		case at <= inside:
			h.along = about(width/4, joint/2)
		case at >= arc-inside:
			h.along = about(arc-width/4, joint/2)
		}
		out = append(out, railHole{n, h})
	}
	return out
}

// meeting is where a seam's mortise is nearest to the joint of a rail.
type meeting struct {
	apart       float64
	tenon, rail int
	places      int // where less than the wall is left
}

func (m meeting) report(p *engine.Pass, wall engine.Bound) {
	if m.places == 0 {
		return
	}
	c, j := p.Ceiling, p.Ceiling.RailJoint
	f := engine.Finding{At: "rail.joint", Related: []string{"seam.edge", "seam.spacing", "seam.tenon.length", "rib.width"}}
	where := p.Textf("in a half rib the mortise of the seam's tenon %d and the %s of rail %d", m.tenon, j.Kind.Get(), m.rail)
	at := ""
	if m.places > 1 {
		at = p.Textf(" at %d places of a seam", m.places)
	}
	switch {
	case m.apart <= 0 && j.Kind.Get() == "tenon":
		f.Text = where + " run into each other" + at
	case m.apart <= 0:
		f.Severity, f.Text = engine.Query, where+" are at the same position"+at+" and may run into each other"
	default:
		f.Severity, f.Measured, f.Bound = engine.Query, quantity.Length(m.apart).Value(), wall
		f.Text = where + " have {measured} of wood between them" + at + "; the minimum is {limit}"
	}
	behind := (c.Rib.Width.Get() - c.Seam.Tenon.Length.Get() - layout.MortiseAir) / 2
	if deepest := behind - wall.SI; deepest > 0 && j.Kind.Get() != "screw" {
		f.Offers = []engine.Offer{{Key: j.Embedment.Key(), Value: p.Below(deepest)}}
	}
	p.Report(f)
}

// checkFacing looks at the ribs within a panel, into which rails are let from
// both sides at the same places.
func checkFacing(p *engine.Pass, wall engine.Bound) {
	c, j := p.Ceiling, p.Ceiling.RailJoint
	if j.Kind.Get() == "screw" || c.Panel.Modules.Get() <= 1 {
		return
	}
	left := c.Rib.Width.Get() - 2*j.Embedment.Get()
	f := engine.Finding{At: j.Embedment.Key(), Severity: engine.Query, Related: []string{"rib.width"}, Measured: quantity.Length(left).Value(), Bound: wall}
	switch {
	case left <= 0 && j.Kind.Get() == "tenon":
		f.Severity, f.Measured, f.Bound = engine.Hold, quantity.Length(2*j.Embedment.Get()).Value(), engine.Bound{}
		f.Text = p.Textf("the tenons of two rails take {measured} of a rib within a panel, which is %v wide: they meet", quantity.Length(c.Rib.Width.Get()))
	case left <= 0:
		f.Text, f.Measured, f.Bound = "the dowels of two rails that face each other meet in a rib within a panel, unless they lie beside each other", quantity.Value{}, engine.Bound{}
	case left < wall.SI:
		f.Text = p.Textf("between the %ss of two rails a rib within a panel has {measured} of wood; the minimum is {limit}", j.Kind.Get())
	default:
		return
	}
	if deepest := (c.Rib.Width.Get() - wall.SI) / 2; deepest > 0 {
		f.Offers = []engine.Offer{{Key: j.Embedment.Key(), Value: p.Below(deepest)}}
	}
	p.Report(f)
}

package hanging

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// The frame's own figures.
const (
	// elements of an arch, at the least: with as many the chain of chords is
	// within a thousandth of the curve.
	elements = 72
	// steelModulus is in Pa, from memory.
	steelModulus = 200e9
	// bearing is how stiff a lift's fork or a packed ledger is, in N/m: it gives
	// 0.02 mm by kN, which is little beside a strap's stretch.
	bearing = 50e6
	// even keeps round-off from cutting one side of an arch finer than the other.
	even = 1e-6
	// apart is how near two nodes may be, in m: nearer ones are one.
	apart = 1e-6
	// within is the share of an element by which its ends are looked at inside it.
	within = 1e-6
)

// kind is what a spring stands for.
type kind uint8

const (
	strapKind kind = iota + 1
	ledgerKind
	liftKind
)

// rib is one edge rib, cut into elements.
type rib struct {
	at      []float64 // arc length on the intrados of each node
	nodes   []frame.Vector
	bends   []float64 // curvature of the centre line at both ends of each element, I and J of the first, then of the next
	section section
	straps  []int // nodes
	numbers []int // of the straps, from the left foot of the whole arch, from 1
	lifts   []int
	feet    []int
	crown   int
	seams   []int // nodes of field joints
	parts   []part
	weight  float64
	loads   []frame.NodalLoad
	spread  []frame.SpreadLoad
	kinds   []kind // of each spring
	stiff   []float64
	names   []string
}

// part is one piece of the arch: the nodes that it lies between, that in its
// middle, and its rails' weights there.
type part struct {
	from, to, middle int
	loads            []frame.NodalLoad
}

func abs(x float64) float64 { return math.Abs(x) }

func mechanism(err error) bool {
	if err == nil {
		return false
	}
	var m *frame.MechanismError
	return errors.As(err, &m)
}

func newRib(c *layout.Ceiling, memory *Memory) *rib {
	r := &rib{section: newSection(c)}
	intrados, arc := c.Vault.Intrados.Get(), c.Vault.Arc.Get()
	straps, lifts, seams, rails := stations(c, arc)
	middles := middles(c)
	r.at = cut(slices.Concat([]float64{0, arc / 2, arc}, middles, straps, lifts, seams, rails), arc)
	half := c.Rib.Depth.Get() / 2
	for _, s := range r.at {
		p := c.Vault.Behind(s, half)
		r.nodes = append(r.nodes, frame.Vector{X: p.Y, Y: p.Z})
	}
	r.bend(intrados, half)
	for _, m := range []struct {
		marks []float64
		nodes *[]int
	}{{straps, &r.straps}, {lifts, &r.lifts}, {seams, &r.seams}, {[]float64{0, arc}, &r.feet}} {
		for _, s := range m.marks {
			*m.nodes = append(*m.nodes, r.node(s))
		}
	}
	r.crown = r.node(arc / 2)
	r.springList(c, arc)
	r.load(c, memory)
	return r
}

// bend finds the curvature of the centre line, so far behind the intrados, within each
// element: where arcs of two radii meet at a node, each side has its own.
func (r *rib) bend(intrados curve.Curve, behind float64) {
	for e := range len(r.at) - 1 {
		near := within * (r.at[e+1] - r.at[e])
		r.bends = append(r.bends,
			parallel(intrados.Curvature(r.at[e]+near), behind),
			parallel(intrados.Curvature(r.at[e+1]-near), behind))
	}
}

// parallel is the curvature of a curve so far behind one of a curvature.
func parallel(curvature, behind float64) float64 { return curvature / (1 + curvature*behind) }

// stations are the arc lengths of straps, lifts, field joints, rails and fittings. A node
// lies at each, so that the lifts take part in where the rib is cut in elements.
func stations(c *layout.Ceiling, arc float64) (straps, lifts, seams, rails []float64) {
	for _, s := range c.Strap.Stations.Get() {
		straps = append(straps, s*arc)
	}
	piece := c.Panel.Arc.Get()
	for k := range c.Panel.Around.Get() {
		from := float64(k) * piece
		if k > 0 {
			seams = append(seams, from)
		}
		for _, s := range c.Lift.Stations.Get() {
			lifts = append(lifts, from+s*piece)
		}
	}
	around := c.Grid.Around.Get()
	for j := range around + 1 {
		rails = append(rails, arc*float64(j)/float64(around))
	}
	for _, p := range c.Panel.Parts.Get() {
		for _, at := range p.Points {
			if at.Kind == layout.Let {
				rails = append(rails, at.At)
			}
		}
	}
	return straps, lifts, seams, rails
}

// middles are the arc lengths of the middles of the pieces. A node lies at each, by
// which a piece that hangs by itself is held.
func middles(c *layout.Ceiling) (out []float64) {
	for _, p := range c.Panel.Parts.Get() {
		out = append(out, (p.From+p.To)/2)
	}
	return out
}

// cut divides the arc at every mark and evenly between.
func cut(marks []float64, arc float64) []float64 {
	slices.Sort(marks)
	var at []float64
	for i, s := range marks {
		if i > 0 && s-at[len(at)-1] > apart {
			from := at[len(at)-1]
			n := max(1, int(math.Ceil((s-from)/arc*elements-even)))
			for k := 1; k < n; k++ {
				at = append(at, from+(s-from)*float64(k)/float64(n))
			}
			at = append(at, s)
		}
		if i == 0 {
			at = append(at, s)
		}
	}
	return at
}

// node is the node at an arc length.
func (r *rib) node(s float64) int {
	i, _ := slices.BinarySearchFunc(r.at, s, func(a, b float64) int {
		switch {
		case a < b-apart:
			return -1
		case a > b+apart:
			return 1
		default:
			return 0
		}
	})
	return i
}

// springList numbers straps first, so that a strap's number is its spring's.
// Every spring that there may be is in the model, and a case leaves out what
// does not carry in it.
func (r *rib) springList(c *layout.Ceiling, arc float64) {
	area := c.Strap.Width.Get() * c.Strap.Thickness.Get()
	for i, n := range r.straps {
		r.kinds, r.names, r.numbers = append(r.kinds, strapKind), append(r.names, fmt.Sprintf("strap %d", i+1)), append(r.numbers, i+1)
		stiff := float64(bearing) // of one of no length, its framing on the extrados
		if length := c.StrapLength(r.at[n] / arc); length > 0 {
			stiff = steelModulus * area / length
		}
		r.stiff = append(r.stiff, stiff)
	}
	for _, side := range []string{"left", "right"} {
		r.kinds, r.stiff, r.names = append(r.kinds, ledgerKind), append(r.stiff, bearing), append(r.names, side+" ledger")
	}
	for i := range r.lifts {
		r.kinds, r.stiff, r.names = append(r.kinds, liftKind), append(r.stiff, bearing), append(r.names, fmt.Sprintf("lift %d", i+1))
	}
}

// springs are the numbers of those of a kind, and but of those of any other.
func (r *rib) springs(k kind) []int {
	var out []int
	for i, had := range r.kinds {
		if had == k {
			out = append(out, i)
		}
	}
	return out
}

func (r *rib) but(k kind) []int {
	var out []int
	for i, had := range r.kinds {
		if had != k {
			out = append(out, i)
		}
	}
	return out
}

// load is half the weight of each piece of the arch: rails and fittings where they are, ribs
// and skin as their feet are cut. Tenons, and straps, which the framing carries
// and no rib is balanced by, lie evenly along its arc.
func (r *rib) load(c *layout.Ceiling, memory *Memory) {
	weighing := c.Weighing()
	for _, p := range c.Panel.Parts.Get() {
		one := part{from: r.node(p.From), to: r.node(p.To), middle: r.node((p.From + p.To) / 2)}
		rest := p.Mass
		one.loads = make([]frame.NodalLoad, 0, 2*(len(p.Points)+one.to-one.from)) // two of each point and stretch
		for _, at := range p.Points {
			m, n := at.Mass*float64(at.Count), r.node(at.At)
			rest -= m
			one.loads = append(one.loads, frame.NodalLoad{Node: n, Y: -m * quantity.Gravity / 2})
			one.couple(n, m, at.Centre.Y-r.nodes[n].X)
		}
		stretches, length := make([]float64, one.to-one.from), 0.0
		r.spread = slices.Grow(r.spread, len(stretches))
		for i, lump := range memory.stretches(weighing, r.bounds(p, one)) {
			e := one.from + i
			a, b := r.nodes[e], r.nodes[e+1]
			stretches[i] = lump.Mass / distance(a, b)
			rest -= lump.Mass
			length += distance(a, b)
			for _, n := range one.toMiddle(e) {
				one.couple(n, lump.Mass/2, lump.Centre.Y-(a.X+b.X)/2)
			}
		}
		for i, mass := range stretches {
			r.spread = append(r.spread, frame.SpreadLoad{Element: one.from + i, Y: -(mass + rest/length) * quantity.Gravity / 2, Per: frame.PerLength})
		}
		r.weight += p.Mass * quantity.Gravity / 2
		r.loads = append(slices.Grow(r.loads, len(one.loads)), one.loads...)
		r.parts = append(r.parts, one)
	}
}

// bounds are the places of a piece's nodes along the arc; at its ends its own, so
// that round-off leaves no foot uncut.
func (r *rib) bounds(p layout.Part, one part) []float64 {
	at := slices.Clone(r.at[one.from : one.to+1])
	at[0], at[len(at)-1] = p.From, p.To
	return at
}

// toMiddle is, twice, the end of an element that is nearer to the middle of its
// piece, and both ends of the element in the middle: pieces that mirror each other
// stay so.
func (p *part) toMiddle(element int) [2]int {
	switch before, after := element-p.from, p.to-1-element; {
	case before < after:
		return [2]int{element + 1, element + 1}
	case before > after:
		return [2]int{element, element}
	default:
		return [2]int{element, element + 1}
	}
}

// couple adds what a mass beside a node turns it by. At the ends of a piece, of
// which one may be a hinge, the node before takes it.
func (p *part) couple(node int, mass, beside float64) {
	n := min(max(node, p.from+1), p.to-1)
	p.loads = append(p.loads, frame.NodalLoad{Node: n, Couple: -mass * quantity.Gravity / 2 * beside})
}

func distance(a, b frame.Vector) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// model is the whole rib with all its springs, hinged at its field joints.
func (r *rib) model() frame.Model {
	m := frame.Chain(r.nodes, r.section.stiffness())
	for _, n := range r.seams {
		m.Elements[n-1].FreeJ = true
	}
	m.Supports = []frame.Support{{Node: r.crown, Direction: frame.AlongX}}
	nodes := r.sprung()
	for i, n := range nodes {
		s := frame.Spring{Node: n, Stiffness: r.stiff[i], Toward: frame.Vector{Y: -1}, Sense: frame.CompressionOnly}
		if r.kinds[i] == strapKind {
			s.Toward, s.Sense = frame.Vector{Y: 1}, frame.TensionOnly
		}
		m.Springs = append(m.Springs, s)
	}
	return m
}

// sprung are the nodes of the springs.
func (r *rib) sprung() []int { return slices.Concat(r.straps, r.feet, r.lifts) }

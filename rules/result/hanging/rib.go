package hanging

import (
	"errors"
	"math"
	"slices"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/layout"
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
	// gravity is standard, in m/s2, exact by definition.
	gravity = 9.80665
	// even keeps round-off from cutting one side of an arch finer than the other.
	even = 1e-6
	// apart is how near two nodes may be, in m: nearer ones are one.
	apart = 1e-6
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
	nodes   []frame.Point
	radii   []float64 // of the centre line at each node; +Inf where straight
	section section
	straps  []int // nodes
	lifts   []int
	feet    []int
	crown   int
	seams   []int // nodes of field joints
	packed  bool
	weight  float64
	loads   []frame.NodalLoad
	spread  []frame.SpreadLoad
	kinds   []kind // of each spring
	stiff   []float64
}

func abs(x float64) float64 { return math.Abs(x) }

func mechanism(err error) bool {
	var m *frame.MechanismError
	return errors.As(err, &m)
}

func newRib(c *layout.Ceiling) *rib {
	r := &rib{section: newSection(c), packed: c.Spec.Ledger != nil && c.Spec.Ledger.Packed && c.LedgerReaches()}
	straps, lifts, seams, rails := stations(c)
	marks := slices.Concat([]float64{0, c.Vault.Arc / 2, c.Vault.Arc}, straps, lifts, seams, rails)
	r.at = cut(marks, c.Vault.Arc)
	half := c.Rib.Depth / 2
	for _, s := range r.at {
		p, n := c.Vault.Intrados.At(s), curve.Normal(c.Vault.Intrados.Tangent(s))
		r.nodes = append(r.nodes, frame.Point{X: p.Y + half*n.Y, Y: p.Z + half*n.Z})
		r.radii = append(r.radii, 1/c.Vault.Intrados.Curvature(s)+half)
	}
	for _, m := range []struct {
		marks []float64
		nodes *[]int
	}{{straps, &r.straps}, {lifts, &r.lifts}, {seams, &r.seams}, {[]float64{0, c.Vault.Arc}, &r.feet}} {
		for _, s := range m.marks {
			*m.nodes = append(*m.nodes, r.node(s))
		}
	}
	r.crown = r.node(c.Vault.Arc / 2)
	r.springList(c)
	r.load(c, rails)
	return r
}

// stations are the arc lengths of straps, lifts, field joints and rails.
func stations(c *layout.Ceiling) (straps, lifts, seams, rails []float64) {
	for _, s := range c.Spec.Strap.Stations {
		straps = append(straps, float64(s)*c.Vault.Arc)
	}
	slices.Sort(straps)
	if l := c.Spec.Lift; l != nil && c.Panel.Around == 1 {
		for _, s := range l.Stations {
			lifts = append(lifts, float64(s)*c.Vault.Arc)
		}
		slices.Sort(lifts)
	}
	for k := 1; k < c.Panel.Around; k++ {
		seams = append(seams, float64(k)*c.Panel.Arc)
	}
	for j := range c.Grid.Around + 1 {
		rails = append(rails, c.Vault.Arc*float64(j)/float64(c.Grid.Around))
	}
	return straps, lifts, seams, rails
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
func (r *rib) springList(c *layout.Ceiling) {
	area := float64(*c.Spec.Strap.Width * *c.Spec.Strap.Thickness)
	for _, n := range r.straps {
		r.kinds = append(r.kinds, strapKind)
		r.stiff = append(r.stiff, steelModulus*area/c.StrapLength(r.at[n]/c.Vault.Arc))
	}
	if r.packed {
		for range r.feet {
			r.kinds, r.stiff = append(r.kinds, ledgerKind), append(r.stiff, bearing)
		}
	}
	for range r.lifts {
		r.kinds, r.stiff = append(r.kinds, liftKind), append(r.stiff, bearing)
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

// load is half the panel's weight: its rails where they are, the rest along the
// arc.
func (r *rib) load(c *layout.Ceiling, rails []float64) {
	arch := c.Panel.Mass * float64(c.Panel.Around)
	whole, halfRail := 0.0, 0.0
	bays := math.Max(1, math.Round(c.Panel.Modules))
	for _, p := range c.Panel.Pieces {
		switch p.Kind {
		case layout.Rail:
			whole = p.Mass * bays
		case layout.HalfRail:
			halfRail = p.Mass * bays
		}
	}
	r.weight = arch * gravity / 2
	rest := r.weight
	for j, s := range rails {
		mass := whole
		switch n := r.node(s); {
		case j == 0 || j == len(rails)-1:
			mass = halfRail
		case slices.Contains(r.seams, n):
			mass = 2 * halfRail
		}
		force := mass * gravity / 2
		rest -= force
		r.loads = append(r.loads, frame.NodalLoad{Node: r.node(s), Y: -force})
	}
	length := 0.0
	for i := range len(r.nodes) - 1 {
		length += distance(r.nodes[i], r.nodes[i+1])
	}
	for i := range len(r.nodes) - 1 {
		r.spread = append(r.spread, frame.SpreadLoad{Element: i, Y: -rest / length, Per: frame.PerLength})
	}
}

func distance(a, b frame.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// model is the whole rib with all its springs, hinged at its field joints.
func (r *rib) model() frame.Model {
	m := frame.Chain(r.nodes, r.section.stiffness)
	for _, n := range r.seams {
		m.Elements[n-1].FreeJ = true
	}
	m.Supports = []frame.Support{{Node: r.crown, Direction: frame.AlongX}}
	nodes := slices.Concat(r.straps, ifPacked(r), r.lifts)
	for i, n := range nodes {
		s := frame.Spring{Node: n, Stiffness: r.stiff[i], Toward: frame.Point{Y: -1}, Sense: frame.CompressionOnly}
		if r.kinds[i] == strapKind {
			s.Toward, s.Sense = frame.Point{Y: 1}, frame.TensionOnly
		}
		m.Springs = append(m.Springs, s)
	}
	return m
}

func ifPacked(r *rib) []int {
	if r.packed {
		return r.feet
	}
	return nil
}

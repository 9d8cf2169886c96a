package frame_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/calculix"
	"dryfit/rules/kernel/frame/framecases"
)

// outsideRib is a rib for an outside solver: bars of one solid rectangle from
// point to point, held sideways at the middle one.
type outsideRib struct {
	name    string
	points  []frame.Vector
	breadth float64
	depth   float64
	springs []frame.Spring
	loads   []frame.NodalLoad
	misfits []frame.Misfit
	without []int
	slack   []int // springs that must be found slack, so that the case shows something
	sheared bool  // shear strain must matter to the result
}

// What all outside ribs are made of: without lateral strain, so that G = E/2, and
// of a weight in N/m.
const (
	outsideE      = 12e9
	outsideWeight = 40.0
)

func TestRibsAgainstCalculiX(t *testing.T) {
	ccx := outside.Program(t, "ccx")
	for _, rib := range outsideRibs() {
		t.Run(rib.name, func(t *testing.T) { rib.compare(t, ccx) })
	}
}

// outsideRibs are ribs of 2 m radius or so; straps are at nodes.
func outsideRibs() []outsideRib {
	const n = 320
	strap := func(k float64, nodes ...int) []frame.Spring {
		var s []frame.Spring
		for _, node := range nodes {
			s = append(s, frame.Spring{Node: node, Toward: frame.Vector{Y: 1}, Stiffness: k, Sense: frame.TensionOnly})
		}
		return s
	}
	ledger := func(node int) frame.Spring {
		return frame.Spring{Node: node, Toward: frame.Vector{Y: -1}, Stiffness: 1e8, Sense: frame.CompressionOnly}
	}
	semicircle := framecases.Arc(2, -90, 90, n)
	return []outsideRib{
		{
			name: "segmental, five straps", points: framecases.Arc(2, -60, 60, n), breadth: 0.04, depth: 0.09,
			springs: strap(4e6, 0, n/4, n/2, 3*n/4, n),
		},
		{
			name: "semicircular, the left strap of five lost", points: semicircle, breadth: 0.04, depth: 0.09,
			springs: strap(4e6, 0, n/4, n/2, 3*n/4, n), without: []int{0},
		},
		{
			name: "semicircular, packed on ledgers, the right strap set long", points: semicircle, breadth: 0.04, depth: 0.09,
			springs: append(strap(4e6, n/4, n/2, 3*n/4), ledger(0), ledger(n)),
			misfits: []frame.Misfit{{Spring: 2, Longer: 0.002}}, slack: []int{2},
		},
		{
			name: "pointed, four straps", points: pointed(n), breadth: 0.03, depth: 0.08,
			springs: strap(2e6, 20, 120, n-120, n-20),
		},
		{
			name: "flat and deep, overhanging, pulled up at one end", points: straight(2.4, n), breadth: 0.05, depth: 0.3,
			springs: strap(1e9, 0, 40, 280), loads: []frame.NodalLoad{{Node: 0, Y: 30}, {Node: n, Y: -60}},
			slack: []int{0}, sheared: true,
		},
	}
}

// pointed is a drop arch of 2.4 m span, both arcs of 1.6 m radius.
func pointed(n int) []frame.Vector {
	const r, halfSpan = 1.6, 1.2
	sweep := 180 / math.Pi * math.Acos((r-halfSpan)/r)
	left := framecases.Arc(r, -90, -90+sweep, n/2)
	points := make([]frame.Vector, n+1)
	for i, p := range left {
		x := p.X + r - halfSpan
		points[i], points[n-i] = frame.Vector{X: x, Y: p.Y}, frame.Vector{X: -x, Y: p.Y}
	}
	return points
}

func straight(length float64, n int) []frame.Vector {
	points := make([]frame.Vector, n+1)
	for i := range points {
		points[i].X = length * float64(i) / float64(n)
	}
	return points
}

// compare solves the rib here and outside. Forces, movements and moments may
// differ by 0.5 % of the largest of each.
//
// The outside solver turns a beam into bricks, one through the depth, whose shear
// strain is the same over the depth: κ = 1, not 5/6 as for a true rectangle. It
// prints moments averaged over the elements at a node, which cuts off the peaks
// at springs and loads, so these are left to their neighbours.
func (rib outsideRib) compare(t *testing.T, ccx string) {
	section := frame.Rectangle(outsideE, outsideE/2, rib.breadth, rib.depth)
	section.GA = outsideE / 2 * rib.breadth * rib.depth
	here := rib.solve(t, section)
	m, c := rib.parts(section)
	deck := calculix.Deck{Model: m, Case: c, E: outsideE, G: outsideE / 2, Breadth: rib.breadth, Depth: rib.depth}
	there, err := deck.Solve(ccx, t.TempDir())
	require.NoError(t, err)

	var forces, moved, moments, outsideMoments []float64
	for i, s := range here.Springs {
		forces = append(forces, s.Force)
		assert.Equal(t, slices.Contains(rib.slack, i), s.Slack, "spring %d", i)
	}
	for i, node := range here.Nodes {
		moved = append(moved, node.X, node.Y)
		if i > 0 && i < len(rib.points)-1 && !rib.peaksAt(i) {
			moments = append(moments, here.At(i, 0).M)
			outsideMoments = append(outsideMoments, there.Moments[i])
		}
	}
	calculix.Alike(t, "spring force", forces, there.Forces)
	calculix.Alike(t, "movement", moved, there.Moved)
	calculix.Alike(t, "moment", moments, outsideMoments)

	if rib.sheared {
		section.GA = math.Inf(1)
		end := len(rib.points) - 1
		without, with := rib.solve(t, section).Nodes[end].Y, here.Nodes[end].Y
		assert.Greater(t, math.Abs(with-without), 0.05*math.Abs(with), "shear strain must show")
	}
}

func (rib outsideRib) solve(t *testing.T, section frame.Section) *frame.Result {
	t.Helper()
	m, c := rib.parts(section)
	return solve(t, m, c)
}

// parts are the rib as a frame, and what acts on it.
func (rib outsideRib) parts(section frame.Section) (frame.Model, frame.Case) {
	m := frame.Chain(rib.points, section)
	m.Supports = []frame.Support{{Node: len(rib.points) / 2, Direction: frame.AlongX}}
	m.Springs = rib.springs
	return m, frame.Case{
		Loads: rib.loads, Misfits: rib.misfits, Without: rib.without,
		Spread: framecases.Everywhere(m, 0, -outsideWeight, frame.PerLength),
	}
}

// peaksAt says whether the moment has a corner at a node between the ends.
func (rib outsideRib) peaksAt(node int) bool {
	return slices.ContainsFunc(rib.springs, func(s frame.Spring) bool { return s.Node == node })
}

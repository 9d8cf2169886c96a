// Package frame solves plane frames of straight elements: the movement of every
// node and the forces in every element, support and spring.
//
// Units. Any consistent set; this program calls it with N, m and rad, so that
// stiffnesses are N, N·m² and N/m. Axes are x to the right and y up, turning is
// positive anticlockwise, and a load acts along the axis it names.
//
// Theory. Small movements, linear material, plane sections; bending, axial and
// shear strain (Timoshenko's beam). The nodal results of straight elements are
// exact, so a curved member differs from its chain of chords by the geometry
// alone, an error that falls with the square of the number of elements.
//
// Use. A [Model] is compiled once into a [Solver], which then solves any number
// of [Case] values: loads, straps set long or short, settled supports, springs
// taken away.
package frame

// Vector is a place in the plane, or a direction, or a movement.
type Vector struct{ X, Y float64 }

// Direction is one way in which a node can move.
type Direction uint8

// The directions.
const (
	AlongX Direction = iota + 1
	AlongY
	Turning
)

// String names the direction as an error prints it.
func (d Direction) String() string {
	switch d {
	case AlongX:
		return "along x"
	case AlongY:
		return "along y"
	case Turning:
		return "turning"
	default:
		return "no direction"
	}
}

// Section is the stiffness of a cross-section.
type Section struct {
	EA float64 // axial, N
	EI float64 // bending in the plane, N·m²
	GA float64 // shear, κ·G·A, N; math.Inf(1) leaves shear strain out
}

// Rectangle is the section of width b and depth d, in m and the depth lying in the
// plane, of a material of moduli E and G, in Pa: EA = E·b·d, EI = E·b·d³/12 and,
// since the shear stress is a parabola over the depth, GA = 5/6·G·b·d (Timoshenko,
// Strength of Materials, part I, from memory; from the strain energy of the
// parabola, derived). Sizes are not checked here: Compile rejects a stiffness that
// is not positive.
func Rectangle(E, G, b, d float64) Section {
	return Section{EA: E * b * d, EI: E * b * d * d * d / 12, GA: 5.0 / 6 * G * b * d}
}

// Element is a straight uniform beam from node I to node J. A free end turns
// apart from its node: a hinge. Of the ends that meet at a node one must stay
// attached, or the node itself has nothing to hold it from turning.
type Element struct {
	I, J         int
	Section      Section
	FreeI, FreeJ bool
}

// Support holds one direction of a node. A case may move it by a given amount.
type Support struct {
	Node      int
	Direction Direction
}

// Sense is the way in which a spring can work.
type Sense uint8

// The senses.
const (
	BothWays Sense = iota + 1
	TensionOnly
	CompressionOnly
)

// Spring ties a node to a fixed anchor. Toward points from the node to the
// anchor and need not be of unit length: {0, 1} is a strap from above, {0, -1} a
// ledger from below. The spring lengthens as the node moves away from the
// anchor; lengthening is tension, and tension is positive.
type Spring struct {
	Node      int
	Toward    Vector
	Stiffness float64 // N/m
	Sense     Sense
}

// Model is a frame without its loads. Elements, supports and springs are known
// by their index. The order of nodes and elements is free; chains, branches and
// rings all solve.
type Model struct {
	Nodes    []Vector
	Elements []Element
	Supports []Support
	Springs  []Spring
}

// Chain is the model of one member through the points in order, without supports:
// element i runs from node i to node i+1. Fewer than two points make no element,
// which Compile rejects.
func Chain(points []Vector, section Section) Model {
	m := Model{Nodes: points, Elements: make([]Element, 0, max(0, len(points)-1))}
	for i := range len(points) - 1 {
		m.Elements = append(m.Elements, Element{I: i, J: i + 1, Section: section})
	}
	return m
}

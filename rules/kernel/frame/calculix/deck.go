// Package calculix solves a plane frame with CalculiX, an outside program, so that
// tests can compare what it finds.
package calculix

import (
	"bytes"
	"fmt"
	"math"
	"slices"

	"dryfit/rules/kernel/frame"
)

// Deck is a frame, what acts on it, and what CalculiX needs beside. All members
// are of one solid rectangle.
type Deck struct {
	Model          frame.Model // its sections are not read
	Case           frame.Case  // loads along members by their length; no settlements
	E, G           float64     // G as it enters: the shear strain is the same over the depth
	Breadth, Depth float64     // of every member, the depth in the plane
	Parts          int         // that each member is cut in
}

// firstAnchor numbers the anchors of the springs, above all nodes of a frame.
const firstAnchor = 100001

// writer writes a deck. Nodes of the frame are numbered from 1; those that are
// made here follow.
type writer struct {
	Deck
	bytes.Buffer
	nodes   []frame.Vector
	loads   []frame.Vector // on each node
	couples []float64      // on each member's end at a node of the frame
	ties    [][2]int       // nodes that move together and turn apart
	members int
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(w, format+"\n", args...) }

// write is the frame as input of CalculiX: linear beams, which it expands to
// bricks; springs to an anchor, with a table of force against lengthening for the
// one-sided; a misfit as a movement of the anchor.
func (d Deck) write() *writer {
	w := &writer{Deck: d, nodes: slices.Clone(d.Model.Nodes), loads: make([]frame.Vector, len(d.Model.Nodes))}
	w.couples = make([]float64, len(w.nodes))
	for _, l := range d.Case.Loads {
		w.push(l.Node+1, l.X, l.Y)
		w.couples[l.Node] += l.Couple / float64(d.attached(l.Node))
	}
	var beams bytes.Buffer
	for i, e := range d.Model.Elements {
		for _, ends := range w.cut(i, e) {
			w.members++
			w.beam(&beams, ends)
		}
	}
	w.line("*NODE, NSET=NAXIS")
	for i, p := range w.nodes {
		w.line("%d, %.12g, %.12g, 0", i+1, p.X, p.Y)
	}
	w.line("*MATERIAL, NAME=MRIB\n*ELASTIC, TYPE=ENGINEERING CONSTANTS")
	w.line("%.9g, %.9g, %.9g, 0., 0., 0., %.9g, %.9g\n%.9g, 293.", d.E, d.E, d.E, d.G, d.G, d.G)
	w.Write(beams.Bytes())
	for _, t := range w.ties {
		for axis := 1; axis <= 2; axis++ {
			w.line("*EQUATION\n2\n%d, %d, 1., %d, %d, -1.", t[1], axis, t[0], axis)
		}
	}
	w.springs()
	w.step()
	return w
}

func (w *writer) push(node int, x, y float64) {
	w.loads[node-1].X += x
	w.loads[node-1].Y += y
}

func (w *writer) node(p frame.Vector) int {
	w.nodes, w.loads = append(w.nodes, p), append(w.loads, frame.Vector{})
	return len(w.nodes)
}

// cut is the parts of a member, from node to node, with its loads on them.
func (w *writer) cut(element int, e frame.Element) (parts [][2]int) {
	a, b := w.nodes[e.I], w.nodes[e.J]
	from, to := w.end(e.I, e.FreeI), w.end(e.J, e.FreeJ)
	load := frame.Vector{}
	for _, l := range w.Case.Spread {
		if l.Element == element {
			load.X, load.Y = load.X+l.X, load.Y+l.Y
		}
	}
	n := max(1, w.Parts)
	half := math.Hypot(b.X-a.X, b.Y-a.Y) / float64(n) / 2
	for k := 1; k <= n; k++ {
		next := to
		if k < n {
			t := float64(k) / float64(n)
			next = w.node(frame.Vector{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)})
		}
		parts = append(parts, [2]int{from, next})
		w.push(from, half*load.X, half*load.Y)
		w.push(next, half*load.X, half*load.Y)
		from = next
	}
	if !e.FreeI {
		w.twist(parts[0], w.couples[e.I])
	}
	if !e.FreeJ {
		w.twist(parts[n-1], w.couples[e.J])
	}
	return parts
}

// twist puts a couple on a part, as two forces on its ends.
func (w *writer) twist(ends [2]int, couple float64) {
	a, b := w.nodes[ends[0]-1], w.nodes[ends[1]-1]
	x, y := b.X-a.X, b.Y-a.Y
	f := couple / (x*x + y*y)
	w.push(ends[1], -f*y, f*x)
	w.push(ends[0], f*y, -f*x)
}

// attached counts the ends of members that turn with a node.
func (d Deck) attached(node int) (ends int) {
	for _, e := range d.Model.Elements {
		if e.I == node && !e.FreeI || e.J == node && !e.FreeJ {
			ends++
		}
	}
	return ends
}

// end is the node at the end of a member: the frame's, or one of its own that is
// tied to it.
func (w *writer) end(node int, free bool) int {
	if !free {
		return node + 1
	}
	own := w.node(w.nodes[node])
	w.ties = append(w.ties, [2]int{node + 1, own})
	return own
}

// beam is one part, with the material's first axis along it.
func (w *writer) beam(b *bytes.Buffer, ends [2]int) {
	i, from, to := w.members, w.nodes[ends[0]-1], w.nodes[ends[1]-1]
	x, y := to.X-from.X, to.Y-from.Y
	fmt.Fprintf(b, "*ELEMENT, TYPE=B31, ELSET=E%d\n%d, %d, %d\n", i, i, ends[0], ends[1])
	fmt.Fprintf(b, "*ORIENTATION, NAME=O%d, SYSTEM=RECTANGULAR\n%.9g, %.9g, 0., %.9g, %.9g, 0.\n", i, x, y, -y, x)
	fmt.Fprintf(b, "*BEAM SECTION, ELSET=E%d, MATERIAL=MRIB, ORIENTATION=O%d, SECTION=RECT\n%.12g, %.12g\n0, 0, 1\n", i, i, w.Breadth, w.Depth)
}

func (w *writer) springs() {
	first := len(w.Model.Elements)*max(1, w.Parts) + 1
	w.line("*NODE, NSET=NANCHOR")
	for i, s := range w.Model.Springs {
		p := w.nodes[s.Node]
		w.line("%d, %.12g, %.12g, 0", firstAnchor+i, p.X+s.Toward.X, p.Y+s.Toward.Y)
	}
	for i, s := range w.Model.Springs {
		w.line("*ELEMENT, TYPE=SPRINGA, ELSET=ES%d\n%d, %d, %d", i, first+i, s.Node+1, firstAnchor+i)
		w.line("*SPRING, ELSET=ES%d, NONLINEAR\n%s", i, w.table(i))
	}
}

// table is the force of spring i against its lengthening, after the empty line
// that the direction would stand on; a number without a point would be one.
func (w *writer) table(i int) string {
	s := w.Model.Springs[i]
	pull, push := s.Stiffness, -s.Stiffness
	if s.Sense == frame.TensionOnly || slices.Contains(w.Case.Without, i) {
		push = 0
	}
	if s.Sense == frame.CompressionOnly || slices.Contains(w.Case.Without, i) {
		pull = 0
	}
	return fmt.Sprintf("\n%.1f, -1.\n0., 0.\n%.1f, 1.", push, pull)
}

// step is what is held, what acts, and what is asked for.
func (w *writer) step() {
	w.line("*BOUNDARY\nNAXIS, 3, 3\nNANCHOR, 1, 3")
	for _, s := range w.Model.Supports {
		w.line("%d, %d, %d", s.Node+1, s.Direction, s.Direction)
	}
	w.line("*STEP, NLGEOM\n*STATIC\n*CLOAD")
	for i, l := range w.loads {
		w.line("%d, 1, %.12g\n%d, 2, %.12g", i+1, l.X, i+1, l.Y)
	}
	for _, f := range w.Case.Misfits {
		toward := w.Model.Springs[f.Spring].Toward
		w.line("*BOUNDARY\n%d, 1, 1, %g\n%d, 2, 2, %g", firstAnchor+f.Spring, -f.Longer*toward.X, firstAnchor+f.Spring, -f.Longer*toward.Y)
	}
	w.line("*NODE PRINT, NSET=NANCHOR\nRF\n*NODE PRINT, NSET=NAXIS\nU, RF")
	w.line("*EL FILE, SECTION FORCES, OUTPUT=2D\nS\n*END STEP")
}

package hanging

import (
	"math"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
)

// Section is half a rib's, net of its reveal, as it enters the frame.
type Section struct {
	E     float64 // modulus of elasticity, free of shear, Pa
	G     float64 // shear modulus, Pa
	A     float64 // area, m2
	I     float64 // second moment, m4
	Shear float64 // area in shear, m2
}

// shearShare is the part of a rectangle's area that counts in shear: the stress
// over it is a parabola.
const shearShare = 5.0 / 6

func (s Section) stiffness() frame.Section {
	return frame.Section{EA: s.E * s.A, EI: s.E * s.I, GA: s.G * s.Shear}
}

// section is that of half a rib, and what carries of it.
type section struct {
	Section
	whole resistance
	left  resistance // what carries at a joint of one layer of a sawn rib
	width float64    // m
	depth float64    // m
}

// resistance is what a force and a moment are multiplied by, one over the area and the
// lesser section modulus; nothing where no wood is left.
type resistance struct {
	byForce  float64 // 1/m2
	byMoment float64 // 1/m3
}

func resist(strips []strip) resistance {
	area, _, modulus := shape(strips)
	if !(area > 0) {
		return resistance{}
	}
	return resistance{1 / area, 1 / modulus}
}

func (r resistance) stress(force, moment float64) float64 {
	return math.Abs(force)*r.byForce + math.Abs(moment)*r.byMoment
}

// strip is a rectangle of the section: its width, and the depths it lies
// between.
type strip struct{ width, from, to float64 }

// shape is the area, in m2, the second moment, in m4, and the lesser section
// modulus, in m3, of strips side by side: Σ(b·d³/12 + b·d·off²) about their common
// centroid (parallel axis theorem), and that by the distance of the further face. A
// strip of negative width is taken off. All are 0 where no area is left.
func shape(strips []strip) (area, second, modulus float64) {
	first := 0.0
	low, high := math.Inf(1), 0.0
	for _, s := range strips {
		a := s.width * (s.to - s.from)
		area += a
		first += a * (s.from + s.to) / 2
		if s.width > 0 {
			low, high = min(low, s.from), max(high, s.to)
		}
	}
	if !(area > 0) {
		return 0, 0, 0
	}
	centre := first / area
	for _, s := range strips {
		d := s.to - s.from
		off := (s.from+s.to)/2 - centre
		second += s.width*d*d*d/12 + s.width*d*off*off
	}
	return area, second, second / max(centre-low, high-centre)
}

func newSection(c *layout.Ceiling) section {
	strips := halfRib(c)
	area, second, _ := shape(strips)
	E, G := moduli(c)
	s := section{
		Section: Section{E: E, G: G, A: area, I: second, Shear: shearShare * area},
		width:   c.Rib.Width.Get() / 2, depth: c.Rib.Depth.Get(),
	}
	s.whole = resist(strips)
	s.left = s.whole
	if layered(c) {
		s.left = resist(withoutLargest(strips))
	}
	return s
}

func moduli(c *layout.Ceiling) (E, G float64) {
	species := c.Rib.Species.Get()
	return species.TrueMOE(), species.ShearModulus()
}

// layered reports whether the rib is sawn in layers, each of which may be
// jointed.
func layered(c *layout.Ceiling) bool {
	return c.Rib.Construction.Get() == "sawn" && c.Rib.Layers.Get() > 0
}

// Jointed reports whether the layers of the rib have joints in their length.
func Jointed(c *layout.Ceiling) bool {
	return layered(c) && !(c.Rib.Segments.Given() && c.Rib.Segments.Get() == 1)
}

// CarriesAtJoint reports whether anything of half a rib in layers is left to carry
// where one of them, taken as the largest, is jointed.
func CarriesAtJoint(c *layout.Ceiling) bool {
	area, _, _ := shape(withoutLargest(halfRib(c)))
	return area > 0
}

// sliver is how much of a layer in half a rib, in m, is the round-off of the
// rib's width, and carries nothing.
const sliver = 0.0005

// halfRib is the layers of half a rib, less the groove of a reveal, which is a
// strip of negative width.
func halfRib(c *layout.Ceiling) []strip {
	var strips []strip
	left := c.Rib.Width.Get() / 2
	for _, l := range c.RibLayers.Get() {
		w := min(l.Width, left)
		if w < sliver {
			break
		}
		strips = append(strips, strip{w, l.From, l.To})
		left -= w
	}
	if r := c.Grid.Reveal; r.Cuts(c.Rib.Member) {
		w := r.Width.Get() / 2
		if r.At.Get() == "sides" {
			w = r.Width.Get()
		}
		strips = append(strips, strip{-w, 0, r.Depth.Get()})
	}
	return strips
}

// withoutLargest leaves out the layer that is cut through at a joint.
func withoutLargest(strips []strip) []strip {
	at := 0
	for i, s := range strips {
		if s.width*(s.to-s.from) > strips[at].width*(strips[at].to-strips[at].from) {
			at = i
		}
	}
	out := append([]strip{}, strips[:at]...)
	return append(out, strips[at+1:]...)
}

package hanging

import (
	"math"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/layout"
)

// section is that of half a rib, net of its reveal.
type section struct {
	stiffness frame.Section
	area      float64 // m2; of a sawn rib, what carries at a joint of one layer
	modulus   float64 // m3, the lesser of the two faces; likewise
	width     float64 // m
	depth     float64 // m
}

// strip is a rectangle of the section: its width, and the depths it lies
// between.
type strip struct{ width, from, to float64 }

// shape is the centroid, area, second moment and least section modulus of
// strips side by side.
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
	species := c.Rib.Species.Get()
	E, G := species.TrueMOE(), species.ShearModulus()
	s := section{
		// 5/6: the shear stress over a rectangle is a parabola.
		stiffness: frame.Section{EA: E * area, EI: E * second, GA: 5.0 / 6 * G * area},
		width:     c.Rib.Width.Get() / 2, depth: c.Rib.Depth.Get(),
	}
	carrying := strips
	if c.Rib.Construction.Get() == "sawn" && len(c.RibLayers.Get()) > 1 {
		carrying = withoutLargest(strips)
	}
	s.area, _, s.modulus = shape(carrying)
	return s
}

// halfRib is the layers of half a rib, less the groove of a reveal, which is a
// strip of negative width.
func halfRib(c *layout.Ceiling) []strip {
	var strips []strip
	left := c.Rib.Width.Get() / 2
	for _, l := range c.RibLayers.Get() {
		w := min(l.Width, left)
		if w <= 0 {
			break
		}
		strips = append(strips, strip{w, l.From, l.To})
		left -= w
	}
	if r := c.Grid.Reveal; r.Given() && r.At.Get() != "layers" {
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

package shop

import (
	"fmt"
	"math"
	"strings"

	"dryfit/rules/model/layout"
)

// Sawn is how the ribs of one piece of an arch are sawn of plank.
type Sawn struct {
	Piece         int
	Angle         float64 // that a whole segment spans where the curve is tightest
	Length, Width float64 // of a whole segment, between its two ends and between parallel lines
	Layers        []SawnLayer
	Blanks        []Blank // those of different shape
	Layup         Pattern // the rib's outline with the joints of all layers
}

// SawnLayer is one layer of a half rib, in the order of the spec.
type SawnLayer struct {
	Number        int
	Stock         int     // quarters of an inch
	Thickness     float64 // surfaced
	From, To      float64 // depths behind the intrados
	Pieces        int
	Joints        []Station
	Length, Width float64 // of the largest piece, along and square to the chord of its inner edge
	Sizes         []Box   // of all pieces from the left
}

// Blank is a shape that pieces are sawn to.
type Blank struct {
	Pattern
	Stock  int
	Box    Box
	Count  int     // in one half rib
	Places []Place // by layer, from the left
}

// Place is where a piece lies in a half rib: its layer, and its number in that from
// the left.
type Place struct{ Layer, Piece int }

// said are places in words, those that follow one another together.
func said(places []Place) string {
	var parts []string
	for i := 0; i < len(places); {
		from, to := places[i], i
		for to+1 < len(places) && places[to+1] == (Place{from.Layer, places[to].Piece + 1}) {
			to++
		}
		part := fmt.Sprintf("layer %d, piece %d", from.Layer, from.Piece)
		if to > i {
			part = fmt.Sprintf("layer %d, pieces %d to %d", from.Layer, from.Piece, places[to].Piece)
		}
		parts, i = append(parts, part), to+1
	}
	return strings.Join(parts, "; ") + " from the left"
}

// sawn is how each piece of an arch is sawn; nothing of other ribs, of ribs without
// layers or of an unknown number of segments.
func sawn(c *layout.Ceiling) []Sawn {
	if c.Rib.Construction.Get() != "sawn" || c.Rib.Layers.Get() == 0 || !c.Rib.Segments.Given() {
		return nil
	}
	out := make([]Sawn, c.Panel.Around.Get())
	for k := range out {
		out[k] = sawnPiece(c, k)
	}
	return out
}

func sawnPiece(c *layout.Ceiling, k int) Sawn {
	s := Sawn{Piece: k + 1}
	depth, inner := c.Rib.Depth.Get(), c.Vault.TightestRadius.Get()
	if straightRib := math.IsInf(inner, 1); straightRib {
		s.Length, s.Width = c.Panel.Arc.Get()/float64(c.Rib.Segments.Get()), depth
	} else {
		s.Angle = c.SegmentAngle()
		s.Length = 2 * (inner + depth) * math.Sin(s.Angle/2)
		s.Width = inner + depth - inner*math.Cos(s.Angle/2)
	}
	rib := rib(c, k)
	s.Layup = Pattern{Name: fmt.Sprintf("layup-%d", k+1), Title: fmt.Sprintf("Layers of the ribs of piece %d of the arch, and their joints", k+1), Outline: rib.Outline}
	for i, l := range halfLayers(c) {
		s.layer(c, k, i, l)
	}
	return s
}

// halfLayers are those that a half rib is made of.
func halfLayers(c *layout.Ceiling) []layout.Layer {
	const sliver = 0.0005
	left := c.Rib.Width.Get() / 2
	var out []layout.Layer
	for _, l := range c.RibLayers.Get() {
		if min(l.Width, left) < sliver {
			break
		}
		out = append(out, l)
		left -= l.Width
	}
	return out
}

// layer divides one layer into its pieces.
func (s *Sawn) layer(c *layout.Ceiling, k, i int, l layout.Layer) {
	s0, s1 := c.Piece(k)
	n := c.Rib.Segments.Get()
	segment := (s1 - s0) / float64(n)
	layer := SawnLayer{Number: i + 1, Stock: c.LayerStock(i), Thickness: l.Width, From: l.From, To: l.To}
	marks := []float64{s0}
	_, first := math.Modf(float64(i)*c.Rib.Stagger.Get() + jointSlack)
	if first -= jointSlack; first <= jointSlack {
		first = 1
	}
	for j := range n {
		if at := s0 + (first+float64(j))*segment; at < s1-jointSlack*segment {
			marks = append(marks, at)
		}
	}
	marks = append(marks, s1)
	in := levelled(c.Vault.Parallel(s0, s1, 0))
	for j, at := range marks[1 : len(marks)-1] {
		on, behind := in.at(c.Vault.Behind(at, l.From)), in.at(c.Vault.Behind(at, l.To))
		layer.Joints = append(layer.Joints, Station{Number: j + 1, Intrados: at - s0, Back: math.NaN(), On: on, Behind: behind})
		s.Layup.Marks = append(s.Layup.Marks, line(Joint, straight(on, behind)), label(behind, 0, fmt.Sprintf("layer %d", i+1)))
	}
	run := Run{Name: fmt.Sprintf("joints of layer %d along the intrados", i+1), Length: s1 - s0}
	for _, p := range layer.Joints {
		run.Stations = append(run.Stations, Stop{fmt.Sprintf("joint %d", p.Number), p.Intrados, p.On})
	}
	if i == 0 {
		inner := c.Vault.Parallel(s0, s1, 0)
		s.Layup.Runs = append(s.Layup.Runs, closing("intrados", inner.Length(), in.at(inner.At(inner.Length()))))
	}
	if len(run.Stations) > 0 {
		s.Layup.Runs = append(s.Layup.Runs, run)
	}
	for j := range len(marks) - 1 {
		s.piece(c, &layer, marks[j], marks[j+1], j)
	}
	layer.Pieces = len(layer.Sizes)
	s.Layers = append(s.Layers, layer)
}

// jointSlack is the share of a segment that round-off may put a joint past another.
const jointSlack = 1e-9

// piece is one piece of a layer, in the frame of its own inner edge's chord.
func (s *Sawn) piece(c *layout.Ceiling, l *SawnLayer, from, to float64, j int) {
	inner, outer := c.Vault.Parallel(from, to, l.From), c.Vault.Parallel(from, to, l.To)
	if !(inner.Length() > 0 && outer.Length() > 0) {
		return // a sliver, of which the foot leaves one edge, is not cut
	}
	in := levelled(inner)
	o := between(in.chain(inner), in.chain(outer))
	box := BoxOf(o)
	l.Length, l.Width = max(l.Length, box.Length), max(l.Width, box.Width)
	l.Sizes = append(l.Sizes, box)
	place := Place{l.Number, j + 1}
	for i := range s.Blanks {
		if b := &s.Blanks[i]; b.Stock == l.Stock && congruent(b.Outline, o) {
			b.Count++
			b.Places = append(b.Places, place)
			return
		}
	}
	b := Blank{Stock: l.Stock, Box: box, Count: 1, Places: []Place{place}}
	b.Name, b.Title = fmt.Sprintf("segment-%d-%d", s.Piece, len(s.Blanks)+1), fmt.Sprintf("Segment of piece %d of the arch", s.Piece)
	b.Outline = o
	b.Marks = in.grain(inner, outer, box.Length/4, c.Vault.TightestRadius.Get())
	s.Blanks = append(s.Blanks, b)
}

// congruent reports whether two outlines are of one shape, or mirror each other left
// to right, to a hundredth of a millimetre.
func congruent(a, b Outline) bool {
	const alike = 1e-5
	if len(a) != len(b) {
		return false
	}
	same := func(b Outline) bool {
		for i, s := range b {
			if apart(a[i].From, s.From) > alike || apart(a[i].To, s.To) > alike || math.Abs(a[i].Bulge-s.Bulge) > alike {
				return false
			}
		}
		return true
	}
	return same(b) || same(b.mirrored())
}

// mirrored is the outline of a piece seen from its other side, in the same order:
// the inner edge from the left, the right end, the outer edge, the left end.
func (o Outline) mirrored() Outline {
	n := 0 // segments of the inner edge: up to its right end, which lies on the chord
	for n < len(o) && !(n > 0 && math.Abs(o[n-1].To[1]) < 1e-9 && o[n-1].To[0] > 1e-9) {
		n++
	}
	width := o[n-1].To[0]
	flip := func(s Segment) Segment {
		return Segment{PatternPoint{width - s.To[0], s.To[1]}, PatternPoint{width - s.From[0], s.From[1]}, s.Bulge}
	}
	var out Outline
	add := func(part Outline) {
		for i := len(part) - 1; i >= 0; i-- {
			out = append(out, flip(part[i]))
		}
	}
	add(o[:n])
	add(o[len(o)-1:])
	add(o[n+1 : len(o)-1])
	add(o[n : n+1])
	return out
}

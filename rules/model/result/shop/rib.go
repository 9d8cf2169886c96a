package shop

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
)

// Rib is the pattern of the edge ribs of one piece of an arch.
type Rib struct {
	Pattern
	Piece          int     // of the arch, from 1 at the left
	From, To       float64 // along the arc of the whole intrados
	Intrados, Back float64 // lengths of the two edges, ends as cut
	Chord, Rise    float64 // of the intrados
	Left, Right    End
	Box            Box
	Rails          []Station // whole ones, and at a pointed crown the mitred one
	Straps, Tenons []Station
	Stick          []Width // both edges of each rail along the intrados
	Holes          []Hole  // of the straps' screws
}

// End is how a rib's end is cut.
type End struct {
	Length float64 // of the cut
	Bevel  float64 // from square to the intrados, rad
}

// Station is a place along a rib by its running dimensions, of its centre.
type Station struct {
	Number   int
	Intrados float64      // along the intrados, from its left end
	Back     float64      // NaN where the normal of the station misses the back
	On       PatternPoint // the place on the intrados
	Behind   PatternPoint // on the back
}

// Width is where a rail begins and ends along the intrados.
type Width struct {
	Rail     int
	From, To float64
}

// Hole is that of a screw in a rib.
type Hole struct {
	Strap, Screw int
	Back         float64 // along the back, from its left end
	Down         float64 // from the back, of a hole in a side; 0 of one in the back
	Depth        float64 // of the thread in the wood; NaN where the spec does not say
}

// section is a rib's piece while its pattern is made.
type section struct {
	*Rib
	c     *layout.Ceiling
	f     frame
	inner curve.Curve
	outer curve.Curve
}

// ribs are the patterns of the edge ribs, piece of an arch by piece.
func ribs(c *layout.Ceiling) []Rib {
	out := make([]Rib, c.Panel.Around.Get())
	for k := range out {
		out[k] = rib(c, k)
	}
	return out
}

func rib(c *layout.Ceiling, k int) Rib {
	s0, s1 := c.Piece(k)
	depth := c.Rib.Depth.Get()
	r := Rib{Piece: k + 1, From: s0, To: s1}
	r.Name, r.Title = fmt.Sprintf("rib-%d", k+1), "Edge rib"
	if c.Panel.Around.Get() > 1 {
		r.Title = fmt.Sprintf("Edge rib of piece %d of the arch from the left", k+1)
	}
	s := section{Rib: &r, c: c, inner: c.Vault.Parallel(s0, s1, 0), outer: c.Vault.Parallel(s0, s1, depth)}
	s.f = levelled(s.inner)
	s.shape()
	s.rails()
	s.straps()
	s.tenons()
	s.grooves()
	s.runs()
	return r
}

func (s *section) shape() {
	inner, outer := s.f.chain(s.inner), s.f.chain(s.outer)
	s.Outline = between(inner, outer)
	s.Intrados, s.Back = s.inner.Length(), s.outer.Length()
	s.Chord, s.Rise = apart(inner.start(), inner.end()), rise(s.inner, s.f)
	s.Box = BoxOf(s.Outline)
	s.Left = s.cut(0, inner.start(), outer.start())
	s.Right = s.cut(s.inner.Length(), inner.end(), outer.end())
}

// cut is the end of the rib at a place along its intrados, from its inner corner
// to its outer one.
func (s *section) cut(at float64, from, to PatternPoint) End {
	t := s.inner.Tangent(at)
	n := s.f.turned(curve.Normal(t))
	x, y := to[0]-from[0], to[1]-from[1]
	return End{Length: math.Hypot(x, y), Bevel: math.Abs(math.Atan2(n[0]*y-n[1]*x, n[0]*x+n[1]*y))}
}

// rise is the greatest distance of a curve from the chord of its ends. It bends one
// way only, so that there is one greatest.
func rise(c curve.Curve, f frame) float64 {
	const golden, steps = 0.6180339887498949, 80
	from, to := 0.0, c.Length()
	high := func(s float64) float64 { return f.at(c.At(s))[1] }
	for range steps {
		d := golden * (to - from)
		if high(to-d) > high(from+d) {
			to = from + d
		} else {
			from = to - d
		}
	}
	return high((from + to) / 2)
}

// station is a place along the whole arc, counted by a number.
func (s *section) station(number int, at float64) Station {
	v := s.c.Vault
	behind := v.Behind(at, s.c.Rib.Depth.Get())
	return Station{
		Number: number, Intrados: at - s.From, Back: s.along(behind),
		On: s.f.at(v.Intrados.Get().At(at)), Behind: s.f.at(behind),
	}
}

// along is where a point of the back lies along it; NaN past its ends.
func (s *section) along(p curve.Point) float64 { return alongCurve(s.outer, p) }

// alongCurve is where a point of a curve lies along it; NaN past its ends. The curve
// runs along its chord, and never back.
func alongCurve(c curve.Curve, p curve.Point) float64 {
	from, to := c.At(0), c.At(c.Length())
	chord := curve.Point{Y: to.Y - from.Y, Z: to.Z - from.Z}
	by := func(q curve.Point) float64 { return (q.Y-from.Y)*chord.Y + (q.Z-from.Z)*chord.Z }
	want, low, high := by(p), 0.0, c.Length()
	if slack := missed * (chord.Y*chord.Y + chord.Z*chord.Z); want < -slack || want > by(to)+slack {
		return math.NaN()
	}
	for range 60 {
		if m := (low + high) / 2; by(c.At(m)) < want {
			low = m
		} else {
			high = m
		}
	}
	return (low + high) / 2
}

// missed is by how much of its chord a point may lie past the back by round-off.
const missed = 1e-9

// turned is a direction of the section on the pattern.
func (f frame) turned(d curve.Point) PatternPoint {
	return PatternPoint{d.Y*f.along.Y + d.Z*f.along.Z, d.Z*f.along.Y - d.Y*f.along.Z}
}

// raised is a place on the pattern at a depth square to the intrados at a place
// along the arc.
func (s *section) raised(at, depth float64) PatternPoint { return s.f.at(s.c.Vault.Behind(at, depth)) }

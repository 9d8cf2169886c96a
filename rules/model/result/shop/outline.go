package shop

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// PatternPoint is a place on a pattern, in m: x along its chord from the left, y away from
// the room.
type PatternPoint = [2]float64

// Segment is a straight line, or an arc of a circle: its bulge is the tangent of a
// quarter of the angle that it turns by, over nothing where it turns to the left.
type Segment struct {
	From, To PatternPoint
	Bulge    float64
}

// Outline is a chain of lines and arcs, each of which begins where the last one
// ends. That of a pattern is closed, and runs along the intrados from the left, and
// along the back to the left again.
type Outline []Segment

// straight is a line from one place to another.
func straight(a, b PatternPoint) Outline { return Outline{{From: a, To: b}} }

// Turn is the angle that an arc turns by, in rad from −2π to 2π and over nothing to
// the left: 4·atan(bulge), the bulge's own definition. 0 of a line.
func (s Segment) Turn() float64 { return 4 * math.Atan(s.Bulge) }

// Radius is that of an arc, in m: half the chord over the sine of half the turn;
// +Inf of a line. Closed form.
func (s Segment) Radius() float64 {
	if s.Bulge == 0 {
		return math.Inf(1)
	}
	return apart(s.From, s.To) / 2 / math.Abs(math.Sin(s.Turn()/2))
}

// Centre is that of an arc, in m, on the pattern's axes. A line has none: its
// places are not finite.
func (s Segment) Centre() PatternPoint {
	// From the chord's middle, square to it, by half the chord over the tangent of
	// half the turn.
	k := (1/s.Bulge - s.Bulge) / 4
	return PatternPoint{
		(s.From[0]+s.To[0])/2 - k*(s.To[1]-s.From[1]),
		(s.From[1]+s.To[1])/2 + k*(s.To[0]-s.From[0]),
	}
}

// Length is that along the segment, in m: radius by turn, or the chord of a line.
func (s Segment) Length() float64 {
	if s.Bulge == 0 {
		return apart(s.From, s.To)
	}
	return s.Radius() * math.Abs(s.Turn())
}

// reversed is the segment from its end to its beginning.
func (s Segment) reversed() Segment { return Segment{s.To, s.From, -s.Bulge} }

// Length is that along all segments, in m.
func (o Outline) Length() float64 {
	sum := 0.0
	for _, s := range o {
		sum += s.Length()
	}
	return sum
}

// Bounds is the least upright box around the outline, in m, arcs between their ends
// included. Without a segment low is +Inf and high −Inf.
func (o Outline) Bounds() (low, high PatternPoint) {
	low, high = PatternPoint{math.Inf(1), math.Inf(1)}, PatternPoint{math.Inf(-1), math.Inf(-1)}
	include := func(p PatternPoint) {
		for k, v := range p {
			low[k], high[k] = min(low[k], v), max(high[k], v)
		}
	}
	for _, s := range o {
		include(s.From)
		include(s.To)
		for _, p := range s.extremes() {
			include(p)
		}
	}
	return low, high
}

// extremes are the places of an arc that are furthest along an axis and not at its
// ends.
func (s Segment) extremes() (out []PatternPoint) {
	if s.Bulge == 0 {
		return nil
	}
	c, r, turn := s.Centre(), s.Radius(), s.Turn()
	start := math.Atan2(s.From[1]-c[1], s.From[0]-c[0])
	for quarter := range 4 {
		angle := float64(quarter) * math.Pi / 2
		by := math.Mod(angle-start, 2*math.Pi)
		if by < 0 {
			by += 2 * math.Pi
		}
		if turn < 0 {
			by = 2*math.Pi - by
		}
		if by < math.Abs(turn) {
			sin, cos := math.Sincos(angle)
			out = append(out, PatternPoint{c[0] + r*cos, c[1] + r*sin})
		}
	}
	return out
}

// reversed is the chain from its end to its beginning.
func (o Outline) reversed() Outline {
	out := make(Outline, len(o))
	for i, s := range o {
		out[len(o)-1-i] = s.reversed()
	}
	return out
}

// start and end are those of an open chain.
func (o Outline) start() PatternPoint { return o[0].From }
func (o Outline) end() PatternPoint   { return o[len(o)-1].To }

// between closes two chains that run the same way, the first of which is nearer to
// the room.
func between(inner, outer Outline) Outline {
	out := append(Outline{}, inner...)
	out = append(out, straight(inner.end(), outer.end())...)
	out = append(out, outer.reversed()...)
	return append(out, straight(outer.start(), inner.start())...)
}

func apart(a, b PatternPoint) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// within is how far an arc of a pattern may lie off an ellipse, in m.
const within = 0.00002

// frame turns places of the section into those of a pattern, its chord level.
type frame struct{ o, along curve.Point }

// levelled is the frame of a curve: its left end, and the direction of its chord.
func levelled(c curve.Curve) frame {
	from, to := c.At(0), c.At(c.Length())
	d := math.Hypot(to.Y-from.Y, to.Z-from.Z)
	return frame{from, curve.Point{Y: (to.Y - from.Y) / d, Z: (to.Z - from.Z) / d}}
}

func (f frame) at(p curve.Point) PatternPoint {
	y, z := p.Y-f.o.Y, p.Z-f.o.Z
	return PatternPoint{y*f.along.Y + z*f.along.Z, z*f.along.Y - y*f.along.Z}
}

// chain is a curve in the frame.
func (f frame) chain(c curve.Curve) Outline {
	var out Outline
	for _, s := range c.Arcs(within) {
		out = append(out, Segment{f.at(s.From), f.at(s.To), -math.Tan(s.Turn / 4)})
	}
	return out
}

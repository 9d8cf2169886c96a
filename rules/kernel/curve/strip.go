package curve

import "math"

// Strip is the area, in the square of the unit of its points, and the centroid of the
// figure between the parallels at distances from and to, outward where they are
// positive, and between the normals at arc lengths s0 and s1. It reports false where the
// figure must be drawn, see [Region.Moments]: where it is not within one line or one
// arc, touches a joint, or is folded.
//
// Source: closed form, a rectangle or a part of a ring; the centroid of a sector of
// radius r and half angle h is at 2/3·r·sin h/h from its centre (textbook).
func (c Curve) Strip(s0, s1, from, to float64) (area float64, centre Point, ok bool) {
	near, start := coincident*c.Length(), 0.0
	for i, s := range c.segments {
		end := c.ends[i]
		if s1 <= end+near {
			joined := c.neighbour(i-1) != nil && s0 <= start+near || c.neighbour(i+1) != nil && s1 >= end-near
			if joined || s0 < start-near || !(s0 < s1) || !(from < to) {
				return 0, Point{}, false
			}
			return strip(s, s0-start, s1-start, from, to)
		}
		start = end
	}
	return 0, Point{}, false
}

// strip is [Curve.Strip] of a piece, by the arc length from its start.
func strip(s segment, s0, s1, from, to float64) (area float64, centre Point, ok bool) {
	switch s := s.(type) {
	case line:
		middle := s.at((s0 + s1) / 2)
		return (s1 - s0) * (to - from), middle.add(Normal(s.tangent(0)).scale((from + to) / 2)), true
	case arc:
		r, q := s.radius+from, s.radius+to
		if !(r > 0) {
			return 0, Point{}, false
		}
		half := (s1 - s0) / (2 * s.radius)
		out := 2.0 / 3 * (r*r + r*q + q*q) / (r + q) * math.Sin(half) / half
		return half * (q - r) * (q + r), s.centre.add(direction(s.start - (s0+s1)/(2*s.radius)).scale(out)), true
	default:
		return 0, Point{}, false
	}
}

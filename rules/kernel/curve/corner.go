package curve

import "math"

// joint is where two pieces of a curve meet: those that arrive and leave at arc
// length s, if it lies at the end of one. At the end of a part of a curve that
// was cut at a corner, one of them is not in the part.
func (c Curve) joint(s float64) (in, out segment) {
	near := coincident * c.Length()
	if math.Abs(s) <= near {
		return c.before, c.segments[0]
	}
	for i, end := range c.ends {
		if math.Abs(s-end) <= near {
			return c.segments[i], c.neighbour(i + 1)
		}
	}
	return nil, nil
}

// neighbour is the i-th piece, from −1 for the one before the curve.
func (c Curve) neighbour(i int) segment {
	switch {
	case i < 0:
		return c.before
	case i == len(c.segments):
		return c.after
	default:
		return c.segments[i]
	}
}

// Tangents are the unit vectors along the curve with which it arrives at arc length
// s and leaves it, s clamped to [0, Length]: two only at a corner. The end of a
// part that was cut at a corner counts as the corner.
func (c Curve) Tangents(s float64) (in, out Point) {
	if a, b := c.joint(s); a != nil && b != nil {
		return a.tangent(a.length()), b.tangent(0)
	}
	t := c.Tangent(s)
	return t, t
}

// Kink is half of the angle, in rad, by which the curve turns right at once at arc
// length s: 0 but at a corner. It is the angle of the mitre with the square cut.
func (c Curve) Kink(s float64) float64 {
	in, out := c.Tangents(s)
	return math.Atan2(-in.cross(out), in.Y*out.Y+in.Z*out.Z) / 2
}

// Beside is the point of the parallel at distance d, outward where d is positive,
// that belongs to arc length s: square to the curve, and at a corner on its mitre.
// s is clamped to [0, Length].
//
// Errors. A *FoldError where the parallels of the two pieces at a corner fold or do
// not meet. Elsewhere no fold is looked for: [Curve.Offset] tells.
func (c Curve) Beside(s, d float64) (Point, error) {
	in, out := c.joint(s)
	if in == nil || out == nil {
		return c.At(s).add(Normal(c.Tangent(s)).scale(d)), nil
	}
	a, b, err := parallels(in, out, d)
	if err != nil {
		return Point{}, err
	}
	past, _, err := mitre(a, b, d)
	if err != nil {
		return Point{}, err
	}
	return a.at(a.length() + past), nil
}

func parallels(a, b segment, d float64) (pa, pb segment, err error) {
	if pa, err = a.parallel(d); err != nil {
		return nil, nil, err
	}
	pb, err = b.parallel(d)
	return pa, pb, err
}

// level is the sine of the angle between tangents that are one.
const level = 1e-9

// mitre is how far a piece runs on past its end, and the next one starts before
// its own, for the two to meet: nothing where they are tangent. Of the pieces
// here only arcs meet at an angle; their circles cross at a height of √(r² − x²)
// over the line of their centres.
func mitre(a, b segment, d float64) (past, before float64, err error) {
	if math.Abs(a.tangent(a.length()).cross(b.tangent(0))) < level {
		return 0, 0, nil
	}
	p, q := a.(arc), b.(arc)
	apart := p.centre.distance(q.centre)
	way := q.centre.sub(p.centre).scale(1 / apart)
	x := (apart*apart + p.radius*p.radius - q.radius*q.radius) / (2 * apart)
	if p.radius < math.Abs(x) {
		return 0, 0, &FoldError{-d, min(p.radius, q.radius) - d}
	}
	foot, up := p.centre.add(way.scale(x)), Normal(way).scale(math.Sqrt(p.radius*p.radius-x*x))
	meet, end := foot.add(up), p.at(p.length())
	if other := foot.sub(up); other.distance(end) < meet.distance(end) {
		meet = other
	}
	return p.to(meet) - p.length(), -q.to(meet), nil
}

// to is the arc length at which the arc's circle passes a point of it, within
// half a turn of the arc's middle.
func (a arc) to(p Point) float64 {
	r := p.sub(a.centre)
	middle := a.start - a.sweep/2
	turn := math.Remainder(middle-math.Atan2(r.Z, r.Y), 2*math.Pi)
	return a.length()/2 + a.radius*turn
}

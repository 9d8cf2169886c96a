package curve

import "math"

// Extended is the curve run on past its ends by the arc lengths before and after,
// each end along the line or circle that it ends in; of an ellipse along the circle
// of its curvature there. A length below 0 cuts the end off: it must leave a part
// of the end's piece, or the curve has no meaning. The zero Curve panics unless
// both are 0.
//
// Source: closed forms of the line, the circle and the curvature of an ellipse,
// ab/(a²sin²t + b²cos²t)^(3/2).
func (c Curve) Extended(before, after float64) Curve {
	segments := append([]segment(nil), c.segments...)
	last := len(segments) - 1
	if before != 0 {
		segments[0] = prolonged(segments[0], before, 0)
		if e, ok := c.segments[0].(ellipse); ok && before > 0 {
			segments = append([]segment{osculating(e, 0, -before, 0)}, c.segments...)
			last++
		}
	}
	if after != 0 {
		if e, ok := segments[last].(ellipse); ok && after > 0 {
			segments = append(segments, osculating(e, e.length(), 0, after))
		} else {
			segments[last] = prolonged(segments[last], 0, after)
		}
	}
	return chain(segments...)
}

// prolonged is a line or an arc run on, or any piece cut off.
func prolonged(s segment, before, after float64) segment {
	if _, ok := s.(ellipse); ok && before+after > 0 {
		return s
	}
	return s.part(-before, s.length()+after)
}

// osculating is the circle of an ellipse's curvature at s, from one length along
// it to another.
func osculating(e ellipse, s, from, to float64) segment {
	t, r := e.tangent(s), 1/e.curvature(s)
	n := Normal(t)
	return arc{centre: e.at(s).sub(n.scale(r)), radius: r, start: math.Atan2(n.Z, n.Y)}.part(from, to)
}

// Recurved is the curve with every curvature multiplied by a factor and every
// length kept: the shape to which a member springs when its layers let go, or from
// which it springs. It begins where the curve does, in the same direction. With a
// factor of 0 or less it is straight. A corner is lost, since each piece begins in
// the direction in which the last one ended: cut there first, with [Curve.Between].
// It panics for the zero Curve.
//
// An ellipse is followed in arcs of its mean curvature each, four in each step of
// its table. Derived here.
func (c Curve) Recurved(factor float64) Curve {
	var segments []segment
	at, heading := c.At(0), c.Tangent(0)
	add := func(length, curvature float64) {
		var s segment = line{at, at.add(heading.scale(length))}
		if curvature > 0 {
			n := Normal(heading)
			s = arc{centre: at.sub(n.scale(1 / curvature)), radius: 1 / curvature, start: math.Atan2(n.Z, n.Y), sweep: length * curvature}
		}
		segments = append(segments, s)
		at, heading = s.at(s.length()), s.tangent(s.length())
	}
	for _, s := range c.segments {
		e, ok := s.(ellipse)
		if !ok {
			add(s.length(), factor*s.curvature(0))
			continue
		}
		const fine = 4 // parts of each step of the table
		for i := range fine * ellipseSteps {
			from := e.t0 + (e.t1-e.t0)*float64(i)/(fine*ellipseSteps)
			to := e.t0 + (e.t1-e.t0)*float64(i+1)/(fine*ellipseSteps)
			length := e.stretch(from, to)
			add(length, -factor*math.Asin(e.tangentAt(from).cross(e.tangentAt(to)))/length)
		}
	}
	return chain(segments...)
}

package curve

import "math"

// Way is a direction of a curve and the arc length that counts as going there.
type Way struct {
	Tangent Point // of length 1
	Length  float64
}

// The steps of [Curve.Ways]: an arc turns by no more in one, in rad, and the table of a
// part of an ellipse has so many in one.
const (
	turnOfWay  = 0.25
	tableOfWay = 2
)

// Ways are what a function f of the tangent is summed up by along the curve: Σ f·Length
// is ∫f ds to some ten figures where f is smooth, corners between pieces being no
// matter. Source: Gauss-Legendre quadrature with five points a step, over the parameter
// of an ellipse.
func (c Curve) Ways() []Way {
	var out []Way
	for _, s := range c.segments {
		switch s := s.(type) {
		case line:
			out = append(out, Way{s.tangent(0), s.length()})
		case arc:
			steps := int(math.Ceil(s.sweep / turnOfWay))
			out = summed(out, 0, s.length(), steps, func(at float64) Way { return Way{s.tangent(at), 1} })
		case ellipse:
			steps := (s.steps() + tableOfWay - 1) / tableOfWay
			out = summed(out, s.t1, s.t0, steps, func(t float64) Way { return Way{s.tangentAt(t), s.speed(t)} })
		default:
			panic("curve: no ways along a piece of another kind")
		}
	}
	return out
}

// summed appends the ways at the points of a quadrature of so many steps, their lengths
// being by that over which it goes.
func summed(out []Way, from, to float64, steps int, way func(at float64) Way) []Way {
	half := (to - from) / float64(2*steps)
	for i := range steps {
		mid := from + half*float64(2*i+1)
		for k, x := range gaussNodes {
			w := way(mid + x*half)
			w.Length *= gaussWeights[k] * half
			out = append(out, w)
		}
	}
	return out
}

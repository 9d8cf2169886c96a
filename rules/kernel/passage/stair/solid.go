package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// halfSpace has a place at n·v − at over it, n of length 1: in m.
type halfSpace struct {
	n  space.Vec
	at float64
}

// solid is a convex obstacle, as planes that each have all of it below them. What lies
// over one of them is outside, and at least that far off. Planes between two faces, about
// the edge they make, let pass what is over the edge and over neither halfSpace.
type solid []halfSpace

// over is the halfSpace with a normal through a place.
func over(n, at space.Vec) halfSpace {
	n = n.Times(1 / n.Length())
	return halfSpace{n, n.Dot(at)}
}

// off is how far at the least some places' hull is off the solid, if that is less than
// most.
func (s solid) off(places []space.Vec, most float64) float64 {
	off := none
	for _, h := range s {
		if off = max(off, h.below(places, off)); off >= most {
			break
		}
	}
	return off
}

// beyond reports whether a place is further than so far off the solid for certain.
func (s solid) beyond(at space.Vec, far float64) bool {
	for _, h := range s {
		if h.n.Dot(at)-h.at >= far {
			return true
		}
	}
	return false
}

// below is how far the lowest of some places is over the plane, or no more than least.
func (h halfSpace) below(places []space.Vec, least float64) float64 {
	low := math.Inf(1)
	for _, v := range places {
		if low = min(low, h.n.Dot(v)-h.at); low <= least {
			return low
		}
	}
	return low
}

// aboutEdge is how many planes are looked at about an edge: fewer find less.
const aboutEdge = 5

// edge is the solid of two faces with such normals that meet at a place.
func edge(from, to, at space.Vec) (out solid) {
	from, to = from.Times(1/from.Length()), to.Times(1/to.Length())
	for k := range aboutEdge {
		f := float64(k) / (aboutEdge - 1)
		out = append(out, over(from.Times(1-f).Add(to.Times(f)), at))
	}
	return out
}

// solids are all that is in the way on a stair, past whose flights there are floors and
// soffits alone.
func (s Stair) solids() []solid {
	deep, slope, run := s.Rise*float64(s.Risers), s.slope(), s.run()
	up, down, on, back, right, left := space.Vec{Z: 1}, space.Vec{Z: -1}, space.Vec{Y: 1}, space.Vec{Y: -1}, space.Vec{X: 1}, space.Vec{X: -1}
	steps, soffit := space.Vec{Y: -slope, Z: 1}, space.Vec{Y: slope, Z: -1}
	flight := edge(down, soffit, space.Vec{Y: -run, Z: s.Headroom - deep})
	out := []solid{{over(right, space.Vec{})}, edge(up, steps, space.Vec{}), {over(up, space.Vec{Z: -deep})}}
	if s.Turn == Straight {
		out = append(out, flight, solid{over(down, space.Vec{Z: s.Headroom})})
		if !s.Placed {
			return append(out, solid{over(left, space.Vec{X: s.Width})})
		}
		walls := s.landing()
		out[0] = edge(right, on, space.Vec{})
		return append(out, edge(left, on, space.Vec{X: s.Width}), solid{over(right, space.Vec{X: walls.Low})}, solid{over(left, space.Vec{X: walls.High})})
	}
	// The flight that goes on: its steps begin at the landing's edge, a rise higher.
	ahead, edgeAt, end := right, space.Vec{X: s.Across}, space.Vec{X: s.Width}
	if s.Turn == Half {
		ahead, edgeAt = back, space.Vec{}
	}
	next := ahead.Times(-1)
	top := edgeAt.Add(ahead.Times(run - s.Going)).Add(up.Times(deep))
	onward := append(edge(next, up.Minus(ahead.Times(slope)), edgeAt.Add(up.Times(s.Rise))), edge(up.Minus(ahead.Times(slope)), up, top)...)
	flight = append(flight, edge(soffit, on, space.Vec{Z: s.Headroom})...)
	out = append(out, edge(down, down.Add(ahead.Times(slope)), edgeAt.Add(up.Times(s.Headroom))), solid{over(down, space.Vec{Z: s.Headroom + deep})}, solid{over(back, space.Vec{Y: s.Length})})
	if s.Turn == Quarter {
		return append(out, flight, onward, edge(left, on, end))
	}
	far := space.Vec{X: s.Across - s.Width}
	return append(out, append(flight, over(right, end)), append(onward, over(left, far)),
		append(edge(left, on, end), edge(on, right, far)...), solid{over(left, space.Vec{X: s.Across})})
}

// piece is a convex part of a body, as its corners, all within a distance of a place.
type piece struct {
	corners []space.Vec
	centre  space.Vec
	radius  float64
}

// How a body is cut into pieces: until on average no more than a hollow, in m, is between
// a piece and its hull, or so many times.
const (
	hollow    = 0.003
	pieceCuts = 6
)

// piecesOf are convex parts whose union holds the body.
func piecesOf(b *passage.Body) (out []piece) {
	for _, hull := range convex(b.Section(), pieceCuts) {
		var p piece
		low, high := space.Box(hull)
		p.centre = space.Vec{X: 0, Y: (low.X + high.X) / 2, Z: (low.Y + high.Y) / 2}
		for _, q := range hull {
			for _, x := range [2]float64{-b.Half(), b.Half()} {
				v := space.Vec{X: x, Y: q.X, Z: q.Y}
				p.corners = append(p.corners, v)
				p.radius = max(p.radius, v.Minus(p.centre).Length())
			}
		}
		out = append(out, p)
	}
	return out
}

// convex are hulls whose union holds a polygon: it is cut across its longest extent until
// they fill little more than it.
func convex(section []space.Point, cuts int) [][]space.Point {
	hull := space.Hull(section)
	if len(hull) < 3 {
		return nil
	}
	var from, along space.Point
	far := 0.0
	for i, p := range hull {
		for _, q := range hull[:i] {
			if d := p.Minus(q); space.Dot(d, d) > far*passage.Further {
				from, along, far = q, d, space.Dot(d, d)
			}
		}
	}
	far = math.Sqrt(far)
	if cuts == 0 || math.Abs(space.SignedArea(hull))-math.Abs(space.SignedArea(section)) <= hollow*far {
		return [][]space.Point{hull}
	}
	middle := space.Dot(from, along)/far + far/2
	var out [][]space.Point
	for _, side := range [2]float64{1, -1} {
		out = append(out, convex(halfOf(section, space.Point{X: side * along.X / far, Y: side * along.Y / far}, side*middle), cuts-1)...)
	}
	return out
}

// halfOf is what of a polygon is no further along a direction than at.
func halfOf(section []space.Point, along space.Point, at float64) (out []space.Point) {
	if len(section) == 0 {
		return nil
	}
	last := section[len(section)-1]
	for _, p := range section {
		a, b := space.Dot(last, along)-at, space.Dot(p, along)-at
		if a <= 0 != (b <= 0) {
			f := a / (a - b)
			out = append(out, space.Point{X: last.X + f*(p.X-last.X), Y: last.Y + f*(p.Y-last.Y)})
		}
		if b <= 0 {
			out = append(out, p)
		}
		last = p
	}
	return out
}

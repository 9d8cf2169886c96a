package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// landing is a stair's landing as the body turns on it, everything off from the walls.
type landing struct {
	b    *passage.Body
	s    Stair
	half bool // the way goes back beside the flight, and not on from the side
	off  float64
}

// berth is the body at a turn, hard against the outer wall of the flight and the
// landing's end, where it is freest of the wall between the flights.
type berth struct {
	turn space.Turn
	x, y float64      // of the origin
	free float64      // from the end of the wall
	wide float64      // left before the wall on the other side
	z    turns.Bounds // between floor and soffit
}

func (b *berth) ok() bool { return b.free >= 0 && b.wide >= 0 && b.z.Low <= b.z.High }

// flight is the one that comes up, seen from its side.
func (l *landing) flight() side {
	return side{
		slope: l.s.slope(), headroom: l.s.Headroom, length: l.s.Length, deep: l.s.Rise * float64(l.s.Risers),
	}
}

// onward is the flight that goes on, as if that came up.
func (l *landing) onward() side {
	out := l.flight()
	if out.lower = l.s.Rise; !l.half {
		out.length = l.s.Across
	}
	return out
}

// overhead is a turn as it is seen from the flight that goes on, as if that came up: by
// a half turn about Y, or about the diagonal between X and Y.
func (l *landing) overhead(t space.Turn) space.Turn {
	if l.half {
		return space.Turn{t[0].Times(-1), t[1], t[2].Times(-1)}
	}
	return space.Turn{t[1].Times(-1), t[0].Times(-1), t[2].Times(-1)}
}

// back is a place that is seen so, as it is.
func (l *landing) back(p space.Pose) space.Pose {
	if l.half {
		return space.Pose{Turn: l.overhead(p.Turn), At: space.Vec{X: l.s.Across - p.At.X, Y: p.At.Y, Z: l.s.Headroom - p.At.Z}}
	}
	return space.Pose{Turn: l.overhead(p.Turn), At: space.Vec{X: l.s.Across - p.At.Y, Y: l.s.Length - p.At.X, Z: l.s.Headroom - p.At.Z}}
}

// berth is that at a turn.
func (l *landing) berth(t space.Turn, flight side) berth {
	b := l.b
	left, ahead := b.Reach(t[0].Times(-1)).Dot(t[0]), b.Reach(t[1]).Dot(t[1])
	out := berth{turn: t, x: l.off - left, y: l.s.Length - l.off - ahead}
	out.wide = l.s.Across - 2*l.off - b.Width(t[0])
	side := sidelongOf(b, flight, t, l.off)
	out.z = side.heights(out.y)
	if !l.half {
		out.wide = math.Inf(1)
		side = sidelongOf(b, l.onward(), l.overhead(t), l.off)
		z := side.heights(l.s.Across - out.x)
		out.z = out.z.Both(turns.Bounds{Low: l.s.Headroom - z.High, High: l.s.Headroom - z.Low})
	}
	if out.free = none; out.wide >= 0 && out.z.Low <= out.z.High {
		around := space.Turn{t[0], t[1].Times(-1), t[2].Times(-1)} // a corner's Y comes from the other side
		out.free = corner.Hold(b.Wrapped(l.off), corner.Corner{Width: l.s.Width, Onward: l.s.Length, Height: math.Inf(1)}, around).Free
	}
	return out
}

// shortTurn is a step, in rad, that is not halved any more.
const shortTurn = 5e-4

// turns takes the body from one berth to another: the ones on the way, with the heights
// between them. Over an angle no place moves further against another than the body's
// diameter by it.
func (l *landing) turns(a, b *berth, flight side) (way []berth, ok bool) {
	angle := a.turn.Apart(b.turn)
	swing := angle * l.b.Diameter()
	rise := swing * (1 + l.s.slope()) / 2
	if a.turn[2] == b.turn[2] {
		rise = swing * l.s.slope() / 2
	}
	z := a.z.Both(b.z)
	if a.free+b.free >= corner.Rate*swing && a.wide+b.wide >= swing && z.High-z.Low >= 2*rise {
		next := *b
		next.z = turns.Bounds{Low: z.Low + rise, High: z.High - rise}
		return []berth{next}, true
	}
	if angle < shortTurn {
		return nil, false
	}
	mid := l.berth(a.turn.Between(b.turn, 0.5), flight)
	if !mid.ok() {
		return nil, false
	}
	mid.turn[2] = levelled(a.turn[2], b.turn[2], mid.turn[2])
	first, ok := l.turns(a, &mid, flight)
	if !ok {
		return nil, false
	}
	second, ok := l.turns(&mid, b, flight)
	return append(first, second...), ok
}

// levelled is the upright between two that are the same: that.
func levelled(a, b, between space.Vec) space.Vec {
	if a == b {
		return a
	}
	return between
}

// pose is that of a berth at a height.
func (b *berth) pose(z float64) space.Pose {
	return space.Pose{Turn: b.turn, At: space.Vec{X: b.x, Y: b.y, Z: z}}
}

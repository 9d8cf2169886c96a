package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// straight are the plain ways of pushing the body through an opening of a by b,
// a across and b up, in a straight line. Along its length its section is turned
// in the opening; in any direction square to its length it is the rectangle of
// its length by its width across that direction, to which the theorem of Carver
// applies. The margins are exact to drawn.
func (b *Body) straight(a, h float64) []Motion {
	ways := make([]Motion, 0, 6) // with those of the curve
	ways = append(ways, b.alongAxis(a, h), b.square(AlongChord, 0, a, h), b.square(AlongRise, math.Pi/2, a, h))
	if own := math.Abs(b.own.Angle); own > 1e-6 && math.Abs(own-math.Pi/2) > 1e-6 && math.Abs(own-math.Pi) > 1e-6 {
		ways = append(ways, b.square(AlongOwnChord, b.own.Angle, a, h))
	}
	return ways
}

// alongAxis turns the section in the opening. Best first over stretches of the
// half turn, as within does it for all turns.
func (b *Body) alongAxis(a, h float64) Motion {
	best, angleOf := none, 0.0
	look := func(at, half float64) axisTurn {
		t := b.axis.get(b, at, half)
		if m := min(a-t.wide, h-t.high)/2 - b.wrap; m > best {
			best, angleOf = m, at
		}
		return t
	}
	const first = 8
	open, next := make([]axisTurn, 0, 2*first), make([]axisTurn, 0, 2*first)
	for i := range first {
		half := math.Pi / first / 2
		open = append(open, look(half*float64(2*i+1), half))
	}
	look(0, 0)
	look(math.Pi/2, 0)
	for len(open) > 0 {
		next = next[:0]
		for _, t := range open {
			if most := min(a-t.leastWide, h-t.leastHigh)/2 - b.wrap; most > best+drawn {
				next = append(next, look(t.at-t.half/2, t.half/2), look(t.at+t.half/2, t.half/2))
			}
		}
		open, next = next, open
	}
	s, c := math.Sincos(angleOf)
	turn := space.Turn{{X: 1}, {Y: c, Z: s}, {Y: -s, Z: c}}
	m := Motion{Way: AlongAxis, Margin: best, Depth: 2*b.half + 2*b.wrap, Angle: angleOf}
	m.Follow = func() []space.Pose { return b.push(turn, a, h, 0, 0) }
	return m
}

// square pushes the body square to its length, its extent across the direction
// of an angle from Z the one that counts.
func (b *Body) square(way Way, at, a, h float64) Motion {
	s, c := math.Sincos(at)
	across, along := b.across(s, c), b.across(c, -s)
	n := 2 * b.half
	fit := RectangleInRectangle(across, n, a, h)
	m := Motion{Way: way, Margin: fit.Margin - b.wrap, Depth: along + 2*b.wrap, Angle: fit.Angle}
	forward := space.Vec{Y: c, Z: -s}
	long := space.Vec{X: 1}
	if n < across {
		long = space.Vec{Y: s, Z: c}
	}
	m.Follow = func() []space.Pose { return b.push(inOpening(forward, long, fit.Angle, a < h), a, h, 0, 0) }
	return m
}

// inOpening is the turn that moves along a body axis, with another turned from
// the opening's longer side, which may be the upright one.
func inOpening(forward, long space.Vec, angle float64, upright bool) space.Turn {
	s, c := math.Sincos(angle)
	if upright {
		short := long.Cross(forward)
		return space.Turn{forward, long.Times(s).Add(short.Times(c)), long.Times(c).Minus(short.Times(s))}
	}
	short := forward.Cross(long)
	return space.Turn{forward, long.Times(c).Minus(short.Times(s)), long.Times(s).Add(short.Times(c))}
}

// push is the straight way at a turn through the middle of an opening that
// begins at y, z, from before the wall to beyond it.
func (b *Body) push(t space.Turn, a, h, y, z float64) []space.Pose {
	before := -b.Reach(t[0]).Dot(t[0]) - b.wrap
	beyond := b.Reach(t[0].Times(-1)).Dot(t[0].Times(-1)) + b.wrap
	from := space.Pose{Turn: t, At: space.Vec{X: before - 1, Y: y + a/2 - b.middleAlong(t[1]), Z: z + h/2 - b.middleAlong(t[2])}}
	to := from
	to.At.X = beyond + 1
	return []space.Pose{from, to}
}

// middleAlong is the middle of the body's extent along a direction.
func (b *Body) middleAlong(e space.Vec) float64 {
	return (b.Reach(e).Dot(e) - b.Reach(e.Times(-1)).Dot(e.Times(-1))) / 2
}

// best is the motion of most margin; of those that are equal to drawn the first
// that passes, or else the first.
func best(ways []Motion) Motion {
	if at := bestOf(ways); at >= 0 {
		return ways[at]
	}
	return Motion{Margin: none}
}

func bestOf(ways []Motion) int {
	at := -1
	for i, m := range ways {
		if at < 0 || m.Margin > ways[at].Margin+drawn || m.Margin >= 0 && ways[at].Margin < 0 {
			at = i
		}
	}
	return at
}

// drawn is the accuracy of a margin that is searched for: a tenth of what a
// drawing shows, in m.
const drawn = 1e-5

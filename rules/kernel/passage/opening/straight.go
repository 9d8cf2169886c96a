package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// Straight are the plain ways of pushing the body through an opening of a by h, in m,
// a across and h up, in a straight line. Along its length its section is turned
// in the opening; in any direction square to its length it is the rectangle of
// its length by its width across that direction, to which the theorem of Carver
// applies. The margins are exact to passage.Drawn.
func Straight(b *passage.Body, a, h float64) []passage.Motion {
	ways := make([]passage.Motion, 0, 6) // with those of the curve
	ways = append(ways, alongAxis(b, a, h), square(b, passage.AlongChord, 0, a, h), square(b, passage.AlongRise, math.Pi/2, a, h))
	if own := math.Abs(b.Own().Angle); own > 1e-6 && math.Abs(own-math.Pi/2) > 1e-6 && math.Abs(own-math.Pi) > 1e-6 {
		ways = append(ways, square(b, passage.AlongOwnChord, b.Own().Angle, a, h))
	}
	return ways
}

// alongAxis turns the section in the opening. Best first over stretches of the
// half turn, as turns.Within does it for all turns.
func alongAxis(b *passage.Body, a, h float64) passage.Motion {
	best, angleOf, axis := none, 0.0, &knownOf(b).axis
	look := func(at, half float64) axisTurn {
		t := axis.get(b, at, half)
		if m := min(a-t.wide, h-t.high)/2 - b.Wrap(); m > best {
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
			if most := min(a-t.leastWide, h-t.leastHigh)/2 - b.Wrap(); most > best+passage.Drawn {
				next = append(next, look(t.at-t.half/2, t.half/2), look(t.at+t.half/2, t.half/2))
			}
		}
		open, next = next, open
	}
	s, c := math.Sincos(angleOf)
	turn := space.Turn{{X: 1}, {Y: c, Z: s}, {Y: -s, Z: c}}
	m := passage.Motion{Way: passage.AlongAxis, Margin: best, Depth: 2*b.Half() + 2*b.Wrap(), Angle: angleOf}
	m.Follow = func() []space.Pose { return Push(b, turn, a, h, 0, 0) }
	return m
}

// square pushes the body square to its length, its extent across the direction
// of an angle from Z the one that counts.
func square(b *passage.Body, way passage.Way, at, a, h float64) passage.Motion {
	s, c := math.Sincos(at)
	across, along := b.Across(s, c), b.Across(c, -s)
	n := 2 * b.Half()
	fit := RectangleInRectangle(across, n, a, h)
	m := passage.Motion{Way: way, Margin: fit.Margin - b.Wrap(), Depth: along + 2*b.Wrap(), Angle: fit.Angle}
	forward := space.Vec{Y: c, Z: -s}
	long := space.Vec{X: 1}
	if n < across {
		long = space.Vec{Y: s, Z: c}
	}
	m.Follow = func() []space.Pose { return Push(b, inOpening(forward, long, fit.Angle, a < h), a, h, 0, 0) }
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

// Push is the straight way at a turn through the middle of an opening that
// begins at y, z, from before the wall to beyond it.
func Push(b *passage.Body, t space.Turn, a, h, y, z float64) []space.Pose {
	before := -b.Reach(t[0]).Dot(t[0]) - b.Wrap()
	beyond := b.Reach(t[0].Times(-1)).Dot(t[0].Times(-1)) + b.Wrap()
	from := space.Pose{Turn: t, At: space.Vec{X: before - 1, Y: y + a/2 - b.MiddleAlong(t[1]), Z: z + h/2 - b.MiddleAlong(t[2])}}
	to := from
	to.At.X = beyond + 1
	return []space.Pose{from, to}
}

package opening

import (
	"math"
	"sync"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// axisTurn is what the section takes up, turned about the body's length by an angle: in m,
// and the least of that over all angles within half of it.
type axisTurn struct {
	at, half             float64
	wide, high           float64
	leastWide, leastHigh float64
}

// axisTurns are those of a body that were looked at, by their angle: each has one half.
// Openings of any size ask for the same ones, since a half turn is always halved alike.
type axisTurns struct {
	mu sync.Mutex
	of map[float64]axisTurn
}

// mostAxisTurns is how many are kept.
const mostAxisTurns = 4096

func (c *axisTurns) get(b *passage.Body, at, half float64) axisTurn {
	c.mu.Lock()
	defer c.mu.Unlock()
	had, ok := c.of[at]
	if !ok {
		if c.of == nil || len(c.of) >= mostAxisTurns {
			c.of = map[float64]axisTurn{}
		}
		had = axisTurnAt(b, at, half)
		c.of[at] = had
	}
	return had
}

func axisTurnAt(b *passage.Body, at, half float64) axisTurn {
	s, c := math.Sincos(at)
	d, e := b.Span(space.Vec{Y: c, Z: s}), b.Span(space.Vec{Y: -s, Z: c})
	d.X, e.X = 0, 0
	w, v := d.Y*c+d.Z*s, e.Z*c-e.Y*s
	sin, cos := math.Sincos(half)
	r := space.Angle{Sin: sin, Cos: cos}
	return axisTurn{at, half, w, v, r.Least(w, d.Dot(d)), r.Least(v, e.Dot(e))}
}

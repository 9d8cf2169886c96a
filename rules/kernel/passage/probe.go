package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Probe is a place of the body, and how far it is from the origin.
type Probe struct {
	space.Vec
	Square float64 // of that distance, in m²
}

// Bounds is what a coordinate of a place is at least and at most over a cell of
// turns, in m.
type Bounds struct{ Low, High float64 }

// TurnBounds are those of d·e over every unit vector e within an angle of one for which
// the product is m, l2 being the square of d's length: see space.Angle.Least.
func TurnBounds(a space.Angle, m, l2 float64) Bounds {
	side, across := m*a.Cos, math.Sqrt(max(0, l2-m*m))*a.Sin
	out := Bounds{side - across, side + across}
	c := a.Cos * math.Abs(a.Cos) * l2
	if m*math.Abs(m)+c < 0 {
		out.Low = -math.Sqrt(l2)
	}
	if c-m*math.Abs(m) < 0 {
		out.High = math.Sqrt(l2)
	}
	return out
}

// Both is what is within two bounds.
func (b Bounds) Both(c Bounds) Bounds { return Bounds{max(b.Low, c.Low), min(b.High, c.High)} }

// Swings are how the world's axes turn over a cell: each of the cell's three sides
// moves the end of each axis by a vector, to first order, and second is what is
// left by it at most.
type Swings struct {
	of     [3][3]space.Vec // axis, side
	second float64
}

// Swings are those of a cell. From the quaternion p of its middle to p + d the
// body turns by the one whose imaginary part over the real one is
//
//	g = Im(p̄·d)/(|p|² + p·d),
//
// and a unit vector e becomes e + 2·(g × e + g × (g × e))/(1 + |g|²), but for the
// sign of g. The last term has along a vector v no more than sin²(ρ/2) of |v| ∓ v·e
// either way, ρ the greatest angle. Derived.
func (c Cube) Swings() Swings {
	q := c.spread()
	least := q.Dot(q)
	for i, h := range c.Half {
		least -= math.Abs(c.At[i]) * h
	}
	out := Swings{second: (1 - c.Radius().Cos) / 2}
	im := space.Vec{X: q[1], Y: q[2], Z: q[3]}
	turn := c.Turn()
	for i, part := range parts[c.Front] {
		g := im.Times(-1)
		if part > 0 {
			e := [3]space.Vec{{X: 1}, {Y: 1}, {Z: 1}}[part-1]
			g = e.Times(q[0]).Minus(im.Cross(e))
		}
		for k, e := range turn {
			out.of[k][i] = g.Cross(e).Times(2 * c.Half[i] / least)
		}
	}
	return out
}

// alongRow is how many probes a row along the length has; those around have more.
const alongRow = 3

// probes are places of the body in rows: around the section, then along the
// length.
type probes struct {
	at   []Probe
	rows [][]int32
}

// probes are places along the sides of the section, at both ends and half way.
func (b *Body) probes() probes {
	chain := b.Chain(probeStep)
	var out probes
	m := len(chain)
	for i, x := range [3]float64{-b.half, b.half, 0} {
		row := make([]int32, 0, m+1)
		for j, p := range chain {
			row = append(row, int32(i*m+j))
			v := space.Vec{X: x, Y: p.X, Z: p.Y}
			out.at = append(out.at, Probe{v, v.Dot(v)})
		}
		out.rows = append(out.rows, append(row, int32(i*m)))
	}
	for j := range m {
		out.rows = append(out.rows, []int32{int32(j), int32(2*m + j), int32(m + j)})
	}
	return out
}

// Chain are places around the section, each no further than a step from the next.
func (b *Body) Chain(step float64) (out []space.Point) {
	n := len(b.section)
	for i, p := range b.section {
		d := b.section[(i+1)%n].Minus(p)
		k := int(math.Ceil(math.Hypot(d.X, d.Y) / step))
		for j := range k {
			f := float64(j) / float64(k)
			out = append(out, space.Point{X: p.X + f*d.X, Y: p.Y + f*d.Y})
		}
	}
	return out
}

// ProbeCoarse is how far the body with fewer corners may be from the true one, in m.
const ProbeCoarse = 0.004

// probeStep is how far probes are apart at most, in m.
const probeStep = 0.4

// Seen is what the coordinates of each probe are.
type Seen [][3]Bounds

// parted is what is certainly in the door and what is certainly past it, at all
// depths from lo to hi.
type parted struct {
	Seen
	lo, hi float64
	// kinds is 1 for a probe that is certainly past the door, -1 for one that is
	// certainly before it.
	kinds      []int8
	door, past [2]reached
}

// sort fills the kinds, and takes the probes that are past the door.
func (p *parted) sort() {
	for i := range p.Seen {
		switch s := &p.Seen[i]; {
		case p.lo+s[0].Low >= 0:
			p.kinds[i] = 1
			for k := range p.past {
				p.past[k].add(s[k+1])
			}
		case p.hi+s[0].High <= 0:
			p.kinds[i] = -1
		default:
			p.kinds[i] = 0
		}
	}
}

// leaves is where, on the way from a probe that is certain to one that is not of
// its kind, that ends, as a share of it: the bounds of a coordinate over a cell are
// no further apart between two places than theirs are.
func (p *parted) leaves(i, j int32, kind int8) float64 {
	s, e := &p.Seen[i], &p.Seen[j]
	a, b := p.hi+s[0].High, p.hi+e[0].High
	if kind > 0 {
		a, b = p.lo+s[0].Low, p.lo+e[0].Low
	}
	if a == b {
		return 0
	}
	return min(1, max(0, a/(a-b)))
}

// on is a place on the way from one probe to another.
func (p *parted) on(i, j int32, f float64) (out [2]Bounds) {
	for k := range out {
		a, b := &p.Seen[i][k+1], &p.Seen[j][k+1]
		out[k] = Bounds{a.Low + f*(b.Low-a.Low), a.High + f*(b.High-a.High)}
	}
	return out
}

// add takes what is certain of a place along one side.
func (r *reached) add(b Bounds) {
	if b.Low > r.high {
		r.high = b.Low
	}
	if b.High < r.low {
		r.low = b.High
	}
}

// take adds a place to a part.
func (p *parted) take(to *[2]reached, at [2]Bounds) {
	to[0].add(at[0])
	to[1].add(at[1])
}

// row follows one row. Between a probe before the door and one past it there is
// a place in the door.
func (p *parted) row(row []int32) {
	i := row[0]
	ki := p.kinds[i]
	if len(row) == alongRow && ki == p.kinds[row[1]] && ki == p.kinds[row[2]] {
		return // the rows around have all three
	}
	last := ki
	var between [2]Bounds
	for _, j := range row[1:] {
		kj := p.kinds[j]
		if ki != kj {
			between = p.change(i, j, last, between)
		} else if kj == 0 && last != 0 {
			between = p.join(between, j)
		}
		if kj != 0 {
			last = kj
		}
		i, ki = j, kj
	}
}

// change goes from one probe to one of another kind: what is between the last one
// that was certain and here.
func (p *parted) change(i, j int32, last int8, between [2]Bounds) [2]Bounds {
	ki, kj := p.kinds[i], p.kinds[j]
	if ki != 0 {
		between = p.on(i, j, p.leaves(i, j, ki))
		if ki > 0 {
			p.take(&p.past, between)
		}
	}
	if kj == 0 {
		if last != 0 {
			between = p.join(between, j)
		}
		return between
	}
	enter := p.on(j, i, p.leaves(j, i, kj))
	if kj > 0 {
		p.take(&p.past, enter)
	}
	if last != 0 && last != kj {
		p.take(&p.door, joined(between, enter))
	}
	return between
}

// join is the bounds of places with a probe.
func (p *parted) join(between [2]Bounds, j int32) [2]Bounds {
	return joined(between, [2]Bounds{p.Seen[j][1], p.Seen[j][2]})
}

// joined is the bounds of two places together.
func joined(a, b [2]Bounds) [2]Bounds {
	for k := range a {
		if b[k].Low < a[k].Low {
			a[k].Low = b[k].Low
		}
		if b[k].High > a[k].High {
			a[k].High = b[k].High
		}
	}
	return a
}

// left is what is left of the places across, between the sides of the door and
// between the walls.
func left(door, past reached, doorLow, doorHigh, low, high float64) float64 {
	return min(doorHigh-door.high, high-past.high) - max(doorLow-door.low, low-past.low)
}

package car

import (
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// alongRow is how many probes a row along the length has; those around have more.
const alongRow = 3

// probes are places of the body in rows: around the section, then along the
// length.
type probes struct {
	at   []turns.Probe
	rows [][]int32
}

// newProbes are places along the sides of the section, at both ends and half way.
func newProbes(b *passage.Body) probes {
	chain := b.Chain(probeStep)
	var out probes
	m := len(chain)
	for i, x := range [3]float64{-b.Half(), b.Half(), 0} {
		row := make([]int32, 0, m+1)
		for j, p := range chain {
			row = append(row, int32(i*m+j))
			v := space.Vec{X: x, Y: p.X, Z: p.Y}
			out.at = append(out.at, turns.Probe{Vec: v, Square: v.Dot(v)})
		}
		out.rows = append(out.rows, append(row, int32(i*m)))
	}
	for j := range m {
		out.rows = append(out.rows, []int32{int32(j), int32(2*m + j), int32(m + j)})
	}
	return out
}

// probeStep is how far probes are apart at most, in m.
const probeStep = 0.4

// parted is what is certainly in the door and what is certainly past it, at all
// depths from lo to hi.
type parted struct {
	turns.Seen
	lo, hi float64
	// kinds is 1 for a probe that is certainly past the door, -1 for one that is
	// certainly before it.
	kinds      []int8
	door, past [2]turns.Reached
}

// sort fills the kinds, and takes the probes that are past the door.
func (p *parted) sort() {
	for i := range p.Seen {
		switch s := &p.Seen[i]; {
		case p.lo+s[0].Low >= 0:
			p.kinds[i] = 1
			for k := range p.past {
				p.past[k].Add(s[k+1])
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
func (p *parted) on(i, j int32, f float64) (out [2]turns.Bounds) {
	for k := range out {
		a, b := &p.Seen[i][k+1], &p.Seen[j][k+1]
		out[k] = turns.Bounds{Low: a.Low + f*(b.Low-a.Low), High: a.High + f*(b.High-a.High)}
	}
	return out
}

// take adds a place to a part.
func (p *parted) take(to *[2]turns.Reached, at [2]turns.Bounds) {
	to[0].Add(at[0])
	to[1].Add(at[1])
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
	var between [2]turns.Bounds
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
func (p *parted) change(i, j int32, last int8, between [2]turns.Bounds) [2]turns.Bounds {
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
func (p *parted) join(between [2]turns.Bounds, j int32) [2]turns.Bounds {
	return joined(between, [2]turns.Bounds{p.Seen[j][1], p.Seen[j][2]})
}

// joined is the bounds of two places together.
func joined(a, b [2]turns.Bounds) [2]turns.Bounds {
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
func left(door, past turns.Reached, doorLow, doorHigh, low, high float64) float64 {
	return min(doorHigh-door.High, high-past.High) - max(doorLow-door.Low, low-past.Low)
}

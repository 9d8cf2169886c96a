package remedy

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// probe is the rule of one finding, tried along one dial.
type probe struct {
	t     *trial
	st    *state
	f     engine.Finding
	least engine.Severity
	k     knob
	d     dial
	// fits, if set, is what a value that clears has to be besides.
	fits func(*state) bool
	had  map[int]reading // by steps, what was read
}

// reading is the outcome of one step of a probe.
type reading struct {
	cleared bool
	valid   bool    // the spec resolves and the rule is checked
	same    bool    // the finding says what it said
	gap     float64 // between measured and limit, in shares of the limit; NaN: no figure
	reviews int     // that it took
}

// read tries a step. One that was tried before is not tried again, and counts as
// as many reviews.
func (p *probe) read(steps int) reading {
	if p.t.over() {
		return reading{gap: math.NaN()}
	}
	r, known := p.had[steps]
	if known {
		p.t.reviews += r.reviews
		return r
	}
	before := p.t.reviews
	r = p.tried(steps)
	r.reviews = p.t.reviews - before
	if p.had == nil {
		p.had = map[int]reading{}
	}
	p.had[steps] = r
	return r
}

func (p *probe) tried(steps int) reading {
	value, ok := p.d.at(steps)
	if !ok {
		return reading{gap: math.NaN()}
	}
	next, ok := p.t.change(p.st, p.k, value)
	if !ok {
		return reading{gap: math.NaN()}
	}
	s := p.t.ask(next.tree, p.f)
	r := reading{valid: len(s.Problems) == 0 && !unchecked(s, p.f.Rule), gap: math.NaN()}
	r.cleared = r.valid && p.t.cleared(p.f, s, p.least) && (p.fits == nil || p.fits(next))
	if g, still := p.t.again(p.f, s, p.least); still {
		r.same = g.Text == p.f.Text && alike(g.Measured, p.f.Measured) && alike(g.Bound.Value, p.f.Bound.Value)
		r.gap = gap(g)
	}
	return r
}

// still is the share of a figure by which it stays where it is: above the round-off of
// the frame, which is another on another processor, and below what is printed.
const still = 1e-6

func alike(a, b quantity.Value) bool {
	return a.Unit == b.Unit && math.Abs(a.SI-b.SI) <= still*max(math.Abs(a.SI), math.Abs(b.SI))
}

func gap(f engine.Finding) float64 {
	if f.Measured.Unit == 0 || f.Bound.Unit != f.Measured.Unit {
		return math.NaN()
	}
	return math.Abs(f.Measured.SI-f.Bound.SI) / math.Max(math.Abs(f.Bound.SI), 1e-9)
}

// nearest is how many steps of the dial it takes for the finding to clear,
// upward where way is 1 and downward where it is -1.
func (p *probe) nearest(way int) (steps int, found bool) {
	most := p.d.up
	if way < 0 {
		most = p.d.down
	}
	if most < 1 {
		return 0, false
	}
	if p.d.each {
		return p.scan(way, most)
	}
	if n, ok := p.guessed(way, most); ok {
		return way * n, true
	}
	if !p.hopeful(way, most) {
		return 0, false
	}
	low, high, found := p.bracket(way, most)
	if !found {
		return 0, false
	}
	return way * p.bisect(way, low, high), true
}

// scan tries every step: a count that clears need not lie next to another.
func (p *probe) scan(way, most int) (int, bool) {
	same := 0
	for n := 1; n <= most && !p.t.over(); n++ {
		r := p.read(way * n)
		if r.cleared {
			return way * n, true
		}
		if r.valid && r.same {
			same++
		}
		if same == 3 && same == n {
			return 0, false // the finding does not hang on the key
		}
	}
	return 0, false
}

// guessed tries where the figures themselves say that the limit is met: a value
// that has to be equal to another has no wide range around it.
func (p *probe) guessed(way, most int) (int, bool) {
	m, b := p.f.Measured, p.f.Bound.Value
	if p.d.guess == nil || m.Unit == 0 || b.Unit != m.Unit {
		return 0, false
	}
	now := p.d.now
	for _, si := range []float64{b.SI, m.SI, now + b.SI - m.SI, now - b.SI + m.SI} {
		n, ok := p.d.guess(m.Unit, si)
		for _, near := range []int{n, n + way, n - way} {
			if at := near * way; ok && at >= 1 && at <= most && p.read(near).cleared {
				return p.bisect(way, 0, at), true
			}
		}
	}
	return 0, false
}

// hopeful reports whether the finding moves the right way at all: the end of
// the range is tried first, since most keys have nothing to do with a finding.
func (p *probe) hopeful(way, most int) bool {
	r := p.read(way * most)
	switch {
	case r.cleared, !r.valid:
		return true
	case r.same:
		return false
	case math.IsNaN(r.gap):
		return true
	default:
		near := p.read(way * max(1, most/16))
		nearer := gap(p.f) - still
		return near.cleared || !near.valid || math.IsNaN(near.gap) || near.gap < nearer || r.gap < nearer
	}
}

// bracket goes out in steps that double, to the first that clears.
func (p *probe) bracket(way, most int) (low, high int, found bool) {
	for n := 1; !p.t.over(); n *= 2 {
		n = min(n, most)
		if p.read(way * n).cleared {
			return low, n, true
		}
		low = n
		if n == most {
			break
		}
	}
	return 0, 0, false
}

// bisect narrows a range whose high end clears to the least step that does.
func (p *probe) bisect(way, low, high int) int {
	for high-low > 1 && !p.t.over() {
		middle := (low + high) / 2
		if p.read(way * middle).cleared {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// cures are the values of a key that clear a finding: the nearest each way of
// every dial that it has, and what the rule itself offers. Of counts and words
// only those are taken that fit, where that is asked.
func (t *trial) cures(st *state, f engine.Finding, least engine.Severity, k knob, fits func(*state) bool) []any {
	var out []any
	for _, d := range t.dials(st, k, t.value(st, k.key)) {
		p := &probe{t: t, st: st, f: f, least: least, k: k, d: d}
		if d.each {
			p.fits = fits
		}
		for _, way := range []int{1, -1} {
			if t.over() {
				return out
			}
			if n, ok := p.nearest(way); ok {
				v, _ := d.at(n)
				out = append(out, v)
			}
		}
	}
	for _, o := range f.Offers {
		if o.Key != k.key {
			continue
		}
		next, ok := t.change(st, k, o.Value)
		if ok && !t.over() && t.cleared(f, t.ask(next.tree, f), least) {
			return append(out, o.Value)
		}
	}
	return out
}

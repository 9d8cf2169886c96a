package stair

import (
	"math"

	"dryfit/rules/kernel/passage/turns"
)

// area is a rectangle of a stair's plan.
type area struct{ x, y turns.Bounds }

// areaSet is a set of a plan's least areas, a bit for each.
type areaSet [3]uint64

func (s *areaSet) add(o *areaSet) {
	for i := range s {
		s[i] |= o[i]
	}
}

func (s *areaSet) meets(o *areaSet) bool {
	for i := range s {
		if s[i]&o[i] != 0 {
			return true
		}
	}
	return false
}

// planArea is an area of a plan and those into which it is cut.
type planArea struct {
	area
	kids         []int
	least        areaSet // of which it consists
	around       areaSet // those and all that touch it
	foot, beyond bool    // it is at the end of the plan towards the foot, or at the other
}

// plan is where a place of the body goes on its way up a stair, as areas: strips of the
// flights, and the landing.
type plan struct {
	areas []planArea
	tops  []int // that are in no other
	count int   // of the least
}

// How a plan is cut.
const (
	strips      = 8   // of a flight
	stripCuts   = 2   // of a strip in two along the flight
	landingArea = 0.5 // m, that an area of the landing is at most
	mostAcross  = 5   // areas of the landing each way at most
	planBefore  = 1   // how far down the flight a plan reaches, as a share of its run
	planBeyond  = 0.5 // and how far beyond the landing's edge
)

// plan is that of a stair. Straight on nothing hangs on the place across.
func (s *Stair) plan() *plan {
	p := &plan{}
	down, on := planBefore*s.run(), planBeyond*s.run()
	up := area{turns.Bounds{High: s.Width}, turns.Bounds{Low: -down}}
	switch s.Turn {
	case Straight:
		p.cut(area{y: turns.Bounds{Low: -down, High: on}}, 1, 2*strips, 1, 2, stripCuts)
	case Quarter:
		p.cut(up, 1, strips, 1, 2, stripCuts)
		p.landing(s)
		p.cut(area{turns.Bounds{Low: s.Across, High: s.Across + on}, turns.Bounds{High: s.Length}}, strips, 1, 2, 1, stripCuts)
	default:
		p.cut(up, 1, strips, 1, 2, stripCuts)
		p.landing(s)
		p.cut(area{turns.Bounds{Low: s.Across - s.Width, High: s.Across}, turns.Bounds{Low: -on}}, 1, strips, 1, 2, stripCuts)
	}
	for i := range p.areas {
		a := &p.areas[i]
		a.foot = a.y.Low <= -down+touching && (s.Turn != Half || a.x.High <= s.Width+touching)
		switch s.Turn {
		case Straight:
			a.beyond = a.y.High >= on-touching
		case Quarter:
			a.beyond = a.x.High >= s.Across+on-touching
		default:
			a.beyond = a.y.Low <= -on+touching && a.x.Low >= s.Across-s.Width-touching
		}
		for k := range p.areas {
			if b := &p.areas[k]; len(b.kids) == 0 && a.touches(&b.area) {
				a.around.add(&b.least)
			}
		}
	}
	return p
}

// touching is how far apart, in m, areas are that touch but for round-off.
const touching = 1e-9

func (a *area) touches(b *area) bool {
	return a.x.Low <= b.x.High+touching && b.x.Low <= a.x.High+touching &&
		a.y.Low <= b.y.High+touching && b.y.Low <= a.y.High+touching
}

// size is the lesser side of an area, in m, or the other where that is nothing.
func (a *area) size() float64 {
	across, along := a.x.High-a.x.Low, a.y.High-a.y.Low
	if across == 0 {
		return along
	}
	return min(across, along)
}

func (p *plan) landing(s *Stair) {
	n := func(long float64) int { return min(mostAcross, int(math.Ceil(long/landingArea))) }
	p.cut(area{turns.Bounds{High: s.Across}, turns.Bounds{High: s.Length}}, n(s.Across), n(s.Length), 2, 2, 1)
}

// cut adds an area as so many across and along, each of which is cut again some times.
func (p *plan) cut(a area, across, along, againAcross, againAlong, times int) {
	for _, b := range a.parts(across, along) {
		p.tops = append(p.tops, p.add(b, againAcross, againAlong, times))
	}
}

func (p *plan) add(a area, across, along, times int) int {
	i := len(p.areas)
	p.areas = append(p.areas, planArea{area: a})
	if times == 0 {
		p.areas[i].least[p.count/64] |= 1 << (p.count % 64)
		p.count++
		return i
	}
	for _, b := range a.parts(across, along) {
		kid := p.add(b, across, along, times-1)
		p.areas[i].kids = append(p.areas[i].kids, kid)
		p.areas[i].least.add(&p.areas[kid].least)
	}
	return i
}

// parts is an area as so many across and along.
func (a area) parts(across, along int) (out []area) {
	part := func(b turns.Bounds, k, n int) turns.Bounds {
		at := func(k int) float64 { return b.Low + (b.High-b.Low)*float64(k)/float64(n) }
		return turns.Bounds{Low: at(k), High: at(k + 1)}
	}
	for i := range across {
		for k := range along {
			out = append(out, area{part(a.x, i, across), part(a.y, k, along)})
		}
	}
	return out
}

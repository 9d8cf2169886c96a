package raising

import (
	"math"

	"dryfit/rules/model/result/hanging"
)

// order is that in which the straps, counted from 0, are fixed: of the pairs that
// hold the piece alone within the limits the one of the widest base, then the
// outermost two of what is left, a single one last. Where no pair holds so, balance
// alone chooses the first.
func (p *planner) order() (order []int, byBalance bool) {
	left := count(len(p.Straps))
	if len(left) < 2 {
		return left, true
	}
	a, b, ok := p.widest(func(s *State) bool { return s.Holds() })
	if !ok {
		byBalance = true
		if a, b, ok = p.widest(func(s *State) bool { return !s.Falls }); !ok {
			a, b = 0, len(left)-1
		}
	}
	order = []int{a, b}
	left = without(without(left, a), b)
	for len(left) > 1 {
		order = append(order, left[0], left[len(left)-1])
		left = left[1 : len(left)-1]
	}
	return append(order, left...), byBalance
}

// widest is the pair of the widest base of those with which something holds, the
// lifts gone; the first of several alike.
func (p *planner) widest(holds func(*State) bool) (a, b int, ok bool) {
	base := 0.0
	for i := range p.Straps {
		for j := i + 1; j < len(p.Straps); j++ {
			wide := p.X[j] - p.X[i]
			if wide <= base*(1+hanging.Alike) {
				continue
			}
			if s := p.with([]int{i, j}, nil); holds(&s) {
				a, b, ok, base = i, j, true, wide
			}
		}
	}
	return a, b, ok
}

// pull is what, straight down on an end of its underside, tips the whole of it on two
// straps alone; 0 where nothing does, or where it falls by itself.
func (p *planner) pull(pair []int) float64 {
	l, r := p.X[pair[0]], p.X[pair[1]]
	weight, least := 2*p.Weight, math.Inf(1)
	if p.Centre <= l || p.Centre >= r {
		return 0
	}
	if out := l - p.ends[0]; out > 0 {
		least = weight * (p.Centre - l) / out
	}
	if out := p.ends[1] - r; out > 0 {
		least = min(least, weight*(r-p.Centre)/out)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

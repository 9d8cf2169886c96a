package framecases

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/frame"
)

// level is a straight beam along x with its nodes at the given places. A span is
// one element, since the results are exact inside too.
func level(s frame.Section, places ...float64) frame.Model {
	points := make([]frame.Vector, len(places))
	for i, x := range places {
		points[i].X = x
	}
	return frame.Chain(points, s)
}

// supported is the beam with node 0 pinned and the others named on rollers.
func supported(m frame.Model, rollers ...int) frame.Model {
	m.Supports = append(m.Supports, pin(0)...)
	for _, node := range rollers {
		m.Supports = append(m.Supports, roller(node)...)
	}
	return m
}

func clamped(m frame.Model, nodes ...int) frame.Model {
	for _, node := range nodes {
		m.Supports = append(m.Supports, clamp(node)...)
	}
	return m
}

func uniform(m frame.Model) frame.Case {
	return frame.Case{Spread: Everywhere(m, 0, -1, frame.PerLength)}
}

func pull(node int) frame.Case {
	return frame.Case{Loads: []frame.NodalLoad{{Node: node, Y: -1}}}
}

func beams() []Problem {
	shear := frame.Section{EA: 1e6, EI: 1, GA: 40}
	one := level(bending, 0, 1)
	two := level(bending, 0, 0.5, 1)
	deep := level(shear, 0, 1)
	deepTwo := level(shear, 0, 0.5, 1)
	const aisc = "AISC Manual, beam diagrams and formulas (from memory)"
	const strain = "Timoshenko, Strength of Materials, part I (from memory); derived from the shear strain V/κGA: "
	all := []Problem{
		{
			Name: "simple span, uniform", Source: aisc + ": wL²/8, 5wL⁴/384EI",
			Model: supported(one, 1), Case: uniform(one),
			Wants: []Want{
				want("moment", 1.0/8, moment(0, 0.5)), want("sag", 5.0/384, sag(0, 0.5)),
				want("left", 0.5, support(1)), want("end slope", -1.0/24, turned(0)),
			},
		},
		{
			Name: "simple span, load in the middle", Source: aisc + ": PL/4, PL³/48EI",
			Model: supported(two, 2), Case: pull(1),
			Wants: []Want{want("moment", 0.25, moment(0, 1)), want("sag", 1.0/48, sag(0, 1))},
		},
		{
			Name: "both ends clamped, uniform", Source: aisc + ": wL²/12, wL²/24, wL⁴/384EI",
			Model: clamped(one, 0, 1), Case: uniform(one),
			Wants: []Want{
				want("end moment", -1.0/12, moment(0, 0)), want("mid moment", 1.0/24, moment(0, 0.5)),
				want("sag", 1.0/384, sag(0, 0.5)), want("clamp's couple", 1.0/12, support(2)),
			},
		},
		{
			Name: "cantilever, load at the end", Source: aisc + ": PL³/3EI",
			Model: clamped(one, 0), Case: pull(1),
			Wants: []Want{want("sag", 1.0/3, sag(0, 1)), want("moment", -1, moment(0, 0))},
		},
		{
			Name: "cantilever, uniform", Source: aisc + ": wL⁴/8EI",
			Model: clamped(one, 0), Case: uniform(one),
			Wants: []Want{want("sag", 1.0/8, sag(0, 1)), want("moment", -0.5, moment(0, 0))},
		},
		{
			Name: "simple span with shear strain", Source: strain + "5wL⁴/384EI + wL²/8κGA",
			Model: supported(deep, 1), Case: uniform(deep),
			Wants: []Want{want("sag", 5.0/384+1.0/(8*40), sag(0, 0.5))},
		},
		{
			Name: "simple span with shear strain, load in the middle", Source: strain + "PL³/48EI + PL/4κGA",
			Model: supported(deepTwo, 2), Case: pull(1),
			Wants: []Want{want("sag", 1.0/48+1.0/(4*40), sag(0, 1))},
		},
		{
			Name: "both ends clamped with shear strain", Source: strain + "wL⁴/384EI + wL²/8κGA",
			Model: clamped(deep, 0, 1), Case: uniform(deep),
			Wants: []Want{want("sag", 1.0/384+1.0/(8*40), sag(0, 0.5)), want("end moment", -1.0/12, moment(0, 0))},
		},
		{
			Name: "cantilever with shear strain", Source: strain + "PL³/3EI + PL/κGA",
			Model: clamped(deep, 0), Case: pull(1),
			Wants: []Want{want("sag", 1.0/3+1.0/40, sag(0, 1))},
		},
	}
	return append(all, overhanging()...)
}

// overhanging are beams of length 1 on two supports at the share a from each end.
func overhanging() []Problem {
	beam := func(a float64) frame.Model {
		m := level(bending, 0, a, 1-a, 1)
		m.Supports = append(pin(1), roller(2)...)
		return m
	}
	fifth := beam(0.2)
	least := beam((math.Sqrt2 - 1) / 2)
	airy := beam(0.5 - 0.5/math.Sqrt(3))
	return []Problem{
		{
			Name:   "two overhangs of L/5",
			Source: "page 'Simply supported beam with both side overhanging subjected to U.D.L' (read): wa²/2, wL²/8 − waL/2, wL/2",
			Model:  fifth, Case: uniform(fifth),
			Wants: []Want{
				want("over the support", -0.02, moment(0, 1)), want("in the middle", 1.0/8-0.1, moment(1, 0.5)),
				want("left", 0.5, support(1)), want("right", 0.5, support(2)),
			},
		},
		{
			Name:   "overhangs of the least moment",
			Source: "derived: a = (√2 − 1)L/2, (3 − 2√2)wL²/8 both over the support and in the middle",
			Model:  least, Case: uniform(least),
			Wants: []Want{
				want("over the support", -(3-2*math.Sqrt2)/8, moment(0, 1)),
				want("in the middle", (3-2*math.Sqrt2)/8, moment(1, 0.5)),
			},
		},
		{
			Name:   "supports at the Airy points",
			Source: "encyclopedia entry 'Airy points' (read): supports L/√3 apart leave the end faces upright",
			Model:  airy, Case: uniform(airy),
			Wants: []Want{{Name: "end slope", Of: turned(0), Value: 0, Within: 1e-9}},
		},
	}
}

// continuous are beams over equal spans of length 1 under a uniform load.
func continuous() []Problem {
	const table = "Civil Engineering Formulas, table 2.1, p. 50 (read); deflections derived"
	const lost = "derived by the three-moment equation"
	return []Problem{
		spans("two spans", table, []int{1, 1}, []float64{3.0 / 8, 5.0 / 4, 3.0 / 8}, []float64{1.0 / 8},
			Want{Name: "sagging", Of: moment(0, 0.375), Value: 0.0703, Within: 5e-5},
			Want{Name: "sag", Of: deepest(0), Value: 0.00542, Within: 5e-6}),
		spans("three spans", table, []int{1, 1, 1}, []float64{2.0 / 5, 11.0 / 10, 11.0 / 10, 2.0 / 5}, []float64{1.0 / 10, 1.0 / 10},
			want("sagging", 0.08, moment(0, 0.4)), want("sagging in the middle", 0.025, moment(1, 0.5)),
			Want{Name: "sag", Of: deepest(0), Value: 0.00688, Within: 5e-6}),
		spans("four spans", table, []int{1, 1, 1, 1},
			[]float64{11.0 / 28, 8.0 / 7, 13.0 / 14, 8.0 / 7, 11.0 / 28}, []float64{3.0 / 28, 1.0 / 14, 3.0 / 28},
			Want{Name: "sagging", Of: moment(0, 0.393), Value: 0.0772, Within: 5e-5},
			Want{Name: "sagging, second span", Of: moment(1, 0.536), Value: 0.0364, Within: 5e-5},
			Want{Name: "sag", Of: deepest(0), Value: 0.00646, Within: 5e-6}),
		spans("five spans", "derived by the three-moment equation: 4M₁ + M₂ = M₁ + 5M₂ = wL²/2, so M₁ = 2/19 and M₂ = 3/38",
			[]int{1, 1, 1, 1, 1},
			[]float64{15.0 / 38, 43.0 / 38, 37.0 / 38, 37.0 / 38, 43.0 / 38, 15.0 / 38},
			[]float64{4.0 / 38, 3.0 / 38, 3.0 / 38, 4.0 / 38}),
		spans("two spans, the middle support lost", lost, []int{2}, []float64{1, 1}, nil,
			want("sagging", 0.5, moment(0, 0.5)), want("sag", 0.20833, deepest(0))),
		spans("three spans, an inner support lost", lost, []int{2, 1}, []float64{13.0 / 16, 33.0 / 16, 1.0 / 8}, []float64{3.0 / 8},
			want("sag", 0.11612, deepest(0))),
		spans("four spans, the centre support lost", lost, []int{1, 2, 1},
			[]float64{7.0 / 32, 57.0 / 32, 57.0 / 32, 7.0 / 32}, []float64{9.0 / 32, 9.0 / 32},
			want("sag", 0.06771, deepest(1))),
	}
}

// spans is a continuous beam over spans of the given lengths with its reactions
// and the hogging moments over its inner supports.
func spans(name, source string, lengths []int, reactions, hogging []float64, more ...Want) Problem {
	places, rollers := []float64{0}, []int{}
	for i, l := range lengths {
		places = append(places, places[i]+float64(l))
		rollers = append(rollers, i+1)
	}
	m := supported(level(bending, places...), rollers...)
	p := Problem{Name: name, Source: source, Model: m, Case: uniform(m), Wants: more}
	for i, r := range reactions {
		p.Wants = append(p.Wants, want(fmt.Sprintf("reaction %d", i), r, support(i+1)))
	}
	for i, h := range hogging {
		p.Wants = append(p.Wants, want(fmt.Sprintf("hogging %d", i), -h, moment(i, 1)))
	}
	return p
}

// moved are beams with yielding supports.
func moved() []Problem {
	m := level(bending, 0, 1, 2)
	middle := supported(m, 1, 2)
	settle := frame.Case{Settlements: []frame.Settlement{{Support: 2, By: -0.01}}}

	hinged := supported(level(bending, 0, 1, 3), 2)
	tilt := frame.Case{Settlements: []frame.Settlement{{Support: 2, By: -0.3}}}
	propped := clamped(level(bending, 0, 1), 0, 1)
	drop := frame.Case{Settlements: []frame.Settlement{{Support: 4, By: -0.01}}}
	turn := frame.Case{Settlements: []frame.Settlement{{Support: 5, By: 0.01}}}
	all := []Problem{
		{
			Name: "two spans, the middle support settles", Source: "derived: what a force must be to bend a span of 2L by δ: 48EIδ/(2L)³ = 6EIδ/L³",
			Model: middle, Case: settle,
			Wants: []Want{
				want("middle", -0.06, support(2)), want("left", 0.03, support(1)),
				want("sag", 0.01, sag(0, 1)), want("moment", 0.03, moment(0, 1)),
			},
		},
		{
			Name: "a simple span tilts with its support", Source: "derived: a rigid motion, without force",
			Model: hinged, Case: tilt,
			Wants: []Want{
				want("inner point", -0.1, movedY(1)), want("turn", -0.1, turned(1)),
				{Name: "reaction", Of: support(1), Value: 0, Within: 1e-12},
			},
		},
		{
			Name: "both ends clamped, the right one settles", Source: "AISC Manual (from memory): 6EIδ/L², 12EIδ/L³",
			Model: propped, Case: drop,
			Wants: []Want{want("left", 0.12, support(1)), want("left moment", -0.06, moment(0, 0)), want("right moment", 0.06, moment(0, 1))},
		},
		{
			Name: "both ends clamped, the right one turned", Source: "AISC Manual (from memory): 4EIθ/L and 2EIθ/L",
			Model: propped, Case: turn,
			Wants: []Want{want("right couple", 0.04, support(5)), want("left couple", 0.02, support(2))},
		},
	}
	for _, k := range []float64{0.5, 6, 1e3, 1e8} {
		springy := supported(m, 2)
		springy.Springs = []frame.Spring{{Node: 1, Toward: frame.Vector{Y: -1}, Stiffness: k, Sense: frame.BothWays}}
		all = append(all, Problem{
			Name:   fmt.Sprintf("two spans, the middle support a spring of %v", k),
			Source: "derived: the spring shortens as far as the beam sinks: R = (5/4)wL/(1 + 6EI/kL³)",
			Model:  springy, Case: uniform(springy),
			Wants: []Want{want("spring", -1.25/(1+6/k), spring(0))},
		})
	}
	return all
}

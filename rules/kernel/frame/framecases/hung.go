package framecases

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/frame"
)

// HungRib is an arc of radius 1 of ±half degrees in n elements, hung on vertical
// tension-only straps of stiffness k at the given angles from the crown, and held
// sideways at the crown alone. Every angle must fall on a node, and n be even.
func HungRib(half float64, n int, s frame.Section, k float64, angles ...float64) frame.Model {
	m := frame.Chain(Arc(1, -half, half, n), s)
	m.Supports = []frame.Support{{Node: n / 2, Direction: frame.AlongX}}
	for _, a := range angles {
		m.Springs = append(m.Springs, frame.Spring{
			Node:      int(math.Round((a + half) / (2 * half) * float64(n))),
			Toward:    frame.Vector{Y: 1},
			Stiffness: k,
			Sense:     frame.TensionOnly,
		})
	}
	return m
}

// firm is the stiffness of a strap that yields a thousandth of a percent of what
// a rib of EI = R = 1 does.
const firm = 1e6

// hung are ribs under their own weight, 1 per length of arc.
func hung() []Problem {
	const (
		three  = "derived: crown force X = δ₀/(δ₁ + f), from the crown drop of the rib hung at its ends and the drop per unit of crown force"
		more   = "plane frame of 720 elements by another program, printed to four decimals"
		fourth = 1e-4 // straight chords of 144 elements, and the rounding of the table
	)
	quarter := []float64{-45, 0, 45}
	half := []float64{-90, 0, 90}
	s10 := []float64{-90, -45, 0, 45, 90}
	s11 := []float64{-60, -30, 0, 30, 60}
	s13 := []float64{-45, -15, 15, 45}
	all := []Problem{
		share("three straps on ±45°", three, 45, quarter, 2e-4, nil, 0.200991, 0.598018, 0.200991),
		share("three straps on ±90°", three, 90, half, 2e-4, nil, 0.264566, 0.470868, 0.264566),
		share("five straps on ±90°", more, 90, s10, fourth, nil, 0.1261, 0.2490, 0.2498, 0.2490, 0.1261),
		share("five straps on ±90°, crown lost", more, 90, s10, 5e-4, []int{2}, 0.008, 0.492, 0, 0.492, 0.008),
		share("five straps on ±90°, left end lost", more, 90, s10, fourth, []int{0}, 0, 0.4424, 0.1632, 0.2788, 0.1157),
		share("five straps on ±60°", more, 60, s11, fourth, nil, 0.1059, 0.2740, 0.2402, 0.2740, 0.1059),
		share("five straps on ±60°, left end lost", more, 60, s11, fourth, []int{0}, 0, 0.4788, 0.1145, 0.3084, 0.0983),
		share("five straps on ±60°, crown lost", more, 60, s11, fourth, []int{2}, 0.0439, 0.4561, 0, 0.4561, 0.0439),
		share("three straps inside ±60°", more, 60, []float64{-40, 0, 40}, fourth, nil, 0.3458, 0.3084, 0.3458),
		share("four straps on ±45°", more, 45, s13, fourth, nil, 0.1393, 0.3607, 0.3607, 0.1393),
		share("four straps on ±45°, left end lost", more, 45, s13, fourth, []int{0}, 0, 0.6517, 0.1731, 0.1752),
		share("four straps on ±45°, inner left lost", more, 45, s13, fourth, []int{1}, 0.2881, 0, 0.6686, 0.0434),
	}
	return append(all, level90(), setLong(), yielding())
}

// share is a hung rib and the share of its weight in each strap.
func share(name, source string, half float64, angles []float64, within float64, without []int, shares ...float64) Problem {
	m := HungRib(half, 144, bending, firm, angles...)
	p := Problem{Name: name, Source: source, Model: m, Case: uniform(m)}
	p.Case.Without = without
	weight := 2 * half * math.Pi / 180
	for i, s := range shares {
		force := spring(i)
		p.Wants = append(p.Wants, Want{
			Name:   fmt.Sprintf("share of strap %d", i),
			Of:     func(r *frame.Result) float64 { return force(r) / weight },
			Value:  s,
			Within: within,
		})
	}
	return p
}

// The rib of ±90° hung at its ends: crown drop per unit of an upward force at the
// crown, and the force that brings it back, under its own weight.
var (
	crownGive  = (3*math.Pi - 8) / 8
	crownForce = (8*math.Pi + 20 - 5*math.Pi*math.Pi) / (2 * (8 - 3*math.Pi))
)

func level90() Problem {
	m := HungRib(90, 144, bending, firm, -90, 0, 90)
	return Problem{
		Name:   "three straps on ±90°, level load",
		Source: "derived as for the weight: X = (4 − 3π)wR/(3(8 − 3π))",
		Model:  m,
		Case:   frame.Case{Spread: Everywhere(m, 0, -1, frame.PerProjection)},
		Wants:  []Want{want("crown strap", (4-3*math.Pi)/(3*(8-3*math.Pi)), spring(1))},
	}
}

// setLong has the crown strap longer by a quarter of what would slacken it.
func setLong() Problem {
	m := HungRib(90, 144, bending, firm, -90, 0, 90)
	c := uniform(m)
	c.Misfits = []frame.Misfit{{Spring: 1, Longer: crownForce * crownGive / 4}}
	return Problem{
		Name:   "three straps on ±90°, the crown strap set long",
		Source: "derived: X = (δ₀ − δ)/(δ₁ + f)",
		Model:  m,
		Case:   c,
		Wants:  []Want{want("crown strap", crownForce*3/4, spring(1))},
	}
}

// yielding has a crown strap as soft as the rib itself, the end straps being firm.
func yielding() Problem {
	m := HungRib(90, 144, bending, firm, -90, 0, 90)
	m.Springs[1].Stiffness = 1 / crownGive
	return Problem{
		Name:   "three straps on ±90°, the crown strap soft",
		Source: "derived: X = δ₀/(δ₁ + f) with f = δ₁",
		Model:  m,
		Case:   uniform(m),
		Wants:  []Want{want("crown strap", crownForce/2, spring(1))},
	}
}

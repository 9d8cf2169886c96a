package framecases

import (
	"fmt"
	"math"
	"slices"

	"dryfit/rules/kernel/frame"
)

// The section of the curved members: 0.75 in by 3 in, of E = 1.6e6 psi, bent to
// R = 72 in; without shear strain. Units lb and in.
const (
	depthR = 72.0
	ribEI  = 2.70e6
	ribEA  = 3.60e6
	beta   = ribEI / (ribEA * depthR * depthR)
)

var slender = frame.Section{EA: ribEA, EI: ribEI, GA: math.Inf(1)}

// half is the number of elements from springing to crown.
const half = 64

func curved() []Problem {
	return slices.Concat(quarterCircles(), twoHinged(), threeHinged(), spreading())
}

// quarterCircles are cantilevers from node 0, the tip, where the axis is level,
// to the clamp a quarter circle to the right and below.
func quarterCircles() []Problem {
	m := frame.Chain(Arc(depthR, 0, 90, half), slender)
	m.Supports = clamp(half)
	const R, V = depthR, 10.0
	return []Problem{
		{
			Name:   "quarter circle, load at the tip",
			Source: "Timoshenko, Strength of Materials, part I (from memory): πVR³/4EI + πVR/4EA down, VR³/2EI − VR/2EA sideways; derived by Castigliano: 1.085892 in, 0.691100 in; M = VR sin θ",
			Model:  m,
			Case:   frame.Case{Loads: []frame.NodalLoad{{Node: 0, Y: -V}}},
			Wants: []Want{
				want("down", -1.085892, movedY(0)),
				want("sideways", -0.691100, movedX(0)),
				want("moment at the clamp", -V*R, moment(half-1, 1)),
				want("moment at 45°", -V*R*math.Sin(math.Pi/4), moment(half/2-1, 1)),
			},
		},
		{
			Name:   "quarter circle, couple at the tip",
			Source: "Timoshenko, Strength of Materials, part I (from memory): πRM/2EI, MR²/EI, MR²(π/2 − 1)/EI",
			Model:  m,
			Case:   frame.Case{Loads: []frame.NodalLoad{{Node: 0, Couple: 1000}}},
			Wants: []Want{
				want("turn", math.Pi*R*1000/(2*ribEI), turned(0)),
				want("down", -1000*R*R/ribEI, movedY(0)),
				want("sideways", -1000*R*R*(math.Pi/2-1)/ribEI, movedX(0)),
			},
		},
	}
}

// archLoads are the three loads of the closed forms on an arch of radius R whose
// crown is the node crown.
func archLoads(m frame.Model, crown int) map[string]frame.Case {
	return map[string]frame.Case{
		"crown": {Loads: []frame.NodalLoad{{Node: crown, Y: -1}}},
		"level": {Spread: Everywhere(m, 0, -1, frame.PerProjection)},
		"arc":   {Spread: Everywhere(m, 0, -1, frame.PerLength)},
	}
}

func twoHinged() []Problem {
	var all []Problem
	arch := func(r, halfAngle float64, s frame.Section) frame.Model {
		m := frame.Chain(Arc(r, -halfAngle, halfAngle, 2*half), s)
		m.Supports = slices.Concat(pin(0), pin(2*half))
		return m
	}
	thrusts := func(name, source string, m frame.Model, crown, level, arc float64, more map[string][]Want) {
		loads := archLoads(m, half)
		for _, t := range []struct {
			load   string
			thrust float64
		}{{"crown", crown}, {"level", level}, {"arc", arc}} {
			all = append(all, Problem{
				Name: name + ", load " + t.load, Source: source, Model: m, Case: loads[t.load],
				Wants: append([]Want{
					want("thrust at the left", t.thrust, support(0)),
					want("thrust at the right", -t.thrust, support(2)),
				}, more[t.load]...),
			})
		}
	}

	source := "derived: H = ∫M₀y ds/∫y² ds without axial strain; M crown by statics; drop by Castigliano"
	for _, a := range []struct{ angle, crown, level, arc float64 }{
		{30, 1.4359599, 0.92338071, 0.94743608},
		{60, 0.63126024, 0.71335407, 0.78546243},
		{90, 0.31830989, 0.42441318, 0.50000000},
	} {
		var more map[string][]Want
		if a.angle == 90 {
			more = map[string][]Want{
				"crown": {want("crown moment", 0.5-1/math.Pi, moment(half-1, 1)), want("crown drop", 0.018942, sag(half-1, 1))},
				"level": {want("crown moment", 0.075587, moment(half-1, 1))},
				"arc":   {want("crown moment", 0.070796, moment(half-1, 1)), want("crown drop", 0.013455, sag(half-1, 1))},
			}
		}
		stiff := bending
		stiff.EA = 1e7 // the flat arch feels axial strain most
		thrusts(fmt.Sprintf("two-hinged arch of ±%.0f°", a.angle), source, arch(1, a.angle, stiff), a.crown, a.level, a.arc, more)
	}

	source = "derived: the same with axial strain, for which a semicircle has the factor (1 − β)/(1 + β), β = I/AR²"
	R, f := depthR, (1-beta)/(1+beta)
	thrusts("two-hinged semicircle with axial strain", source, arch(R, 90, slender),
		f/math.Pi, f*4/(3*math.Pi)*R, f*R/2, nil)
	return all
}

func threeHinged() []Problem {
	var all []Problem
	for _, a := range []struct{ angle, crown, level, arc float64 }{
		{90, 0.5, 0.5, math.Pi/2 - 1},
		{60, 0.866025, 0.75, 0.813799},
		{45, 1.207107, 0.853553, 0.896119},
	} {
		m := frame.Chain(Arc(1, -a.angle, a.angle, 2*half), bending)
		m.Supports = slices.Concat(pin(0), pin(2*half))
		m.Elements[half].FreeI = true
		loads := archLoads(m, half)
		for _, t := range []struct {
			load   string
			thrust float64
		}{{"crown", a.crown}, {"level", a.level}, {"arc", a.arc}} {
			all = append(all, Problem{
				Name:   fmt.Sprintf("three-hinged arch of ±%.0f°, load %s", a.angle, t.load),
				Source: "derived by statics: H = M₀ at the crown/rise",
				Model:  m,
				Case:   loads[t.load],
				Wants: []Want{
					want("thrust", t.thrust, support(0)),
					want("moment left of the hinge", 0, moment(half-1, 1)),
					want("moment right of the hinge", 0, moment(half, 0)),
				},
			})
		}
	}
	return all
}

func spreading() []Problem {
	m := frame.Chain(Arc(1, -90, 90, 2*half), bending)
	m.Supports = slices.Concat(pin(0), roller(2*half))
	loads := archLoads(m, half)
	return []Problem{
		{
			Name:   "semicircle on a roller, load at the crown",
			Source: "derived: PR³/2EI, (3π − 8)PR³/8EI",
			Model:  m,
			Case:   loads["crown"],
			Wants: []Want{
				want("spread", 0.5, movedX(2*half)),
				want("crown drop", (3*math.Pi-8)/8, sag(half-1, 1)),
			},
		},
		{
			Name:   "semicircle on a roller, level load",
			Source: "derived: 2wR⁴/3EI, (3π − 4)wR⁴/24EI",
			Model:  m,
			Case:   loads["level"],
			Wants: []Want{
				want("spread", 2.0/3, movedX(2*half)),
				want("crown drop", (3*math.Pi-4)/24, sag(half-1, 1)),
			},
		},
	}
}

// rings are whole circles pressed together by two opposite loads; node 0 is on
// top, and nodes are counted clockwise.
func rings() []Problem {
	const n = 128
	ring := func(r float64, s frame.Section) frame.Model {
		m := frame.Chain(Arc(r, 0, 360, n)[:n], s)
		m.Elements = append(m.Elements, frame.Element{I: n - 1, J: 0, Section: s})
		m.Supports = append(pin(n/2), frame.Support{Node: 0, Direction: frame.AlongX})
		return m
	}
	press := func(p float64) frame.Case { return frame.Case{Loads: []frame.NodalLoad{{Node: 0, Y: -p}}} }
	wider := func(r *frame.Result) float64 { return r.Nodes[n/4].X - r.Nodes[3*n/4].X }
	half := func(of func(*frame.Result) float64) func(*frame.Result) float64 {
		return func(r *frame.Result) float64 { return of(r) / 2 }
	}
	soft := frame.Section{EA: 200, EI: 1, GA: math.Inf(1)}
	return []Problem{
		{
			Name:   "ring under two opposite loads",
			Source: "verification page 'Pinched ring: diametrical deflection' (read): (π/4 − 2/π)PR³/EI + (π/4)PR/EA; Timoshenko (from memory): wider by (2/π − 1/2)PR³/EI, moments PR/π and (1/2 − 1/π)PR",
			Model:  ring(1, bending),
			Case:   press(1),
			Wants: []Want{
				want("shorter", math.Pi/4-2/math.Pi, sag(0, 0)),
				want("wider", 2/math.Pi-0.5, wider),
				want("moment under the load", 1/math.Pi, moment(0, 0)),
				want("moment at 90°", 1/math.Pi-0.5, moment(n/4, 0)),
			},
		},
		{
			Name:   "ring with axial strain",
			Source: "verification page 'Pinched ring: diametrical deflection' (read): (π/4 − 2/π)PR³/EI + (π/4)PR/EA",
			Model:  ring(1, soft),
			Case:   press(1),
			Wants:  []Want{want("shorter", math.Pi/4-2/math.Pi+math.Pi/4/200, sag(0, 0))},
		},
		{
			Name:   "steel ring, R = 2 m, P = 8 N",
			Source: "worked example 'Circular ring structure' (read), which cites Timoshenko 1955 and prints 1.79e-3 m, 1.64e-3 m, 5.09 N·m; here with one figure more from the same formulas",
			Model:  ring(2, frame.Section{EA: 2.0e11 * 4e-4, EI: 2.0e11 * 1.33333e-8, GA: math.Inf(1)}),
			Case:   press(8),
			Wants: []Want{
				want("radial movement under the load, m", 1.785e-3, half(sag(0, 0))),
				want("radial movement at 90°, m", 1.639e-3, half(wider)),
				want("moment under the load, N·m", 5.093, moment(0, 0)),
			},
		},
	}
}

package timber

import "math"

// Hankinson is the strength at an angle between stress and grain, in rad from 0 to
// π/2, from those along (P) and across it (Q), both positive and in its unit:
// P·Q/(P·sinⁿ + Q·cosⁿ). n is 2 for compression and 1.5 to 2 for tension, read on a page
// on the formula; the same for bending: Wood Handbook, FPL-GTR-190, chapter 5, from
// memory. Nothing is checked: an angle outside gives NaN if n is not whole.
func Hankinson(along, across, angle, n float64) float64 {
	s, c := math.Sincos(angle)
	return along * across / (along*math.Pow(s, n) + across*math.Pow(c, n))
}

// BendingAcross is the ratio of bending strength across the grain to that along
// it, and the exponent, for Hankinson's formula: the middle of the handbook's
// ranges, 0.04 to 0.10 and 1.5 to 2 (from memory); with them the formula comes
// within two points of ASTM D245's ratios.
const BendingAcross, BendingExponent = 0.05, 1.5

// BendingAtSlope is the share of its bending strength, from 0.05 to 1, that wood
// keeps with its grain at an angle to the member, in rad from 0 to π/2; the caller
// clamps the angle. It is [Hankinson] with [BendingAcross] and [BendingExponent],
// since a table's few rows give nothing between them.
func BendingAtSlope(angle float64) float64 {
	return Hankinson(1, BendingAcross, angle, BendingExponent)
}

// Least radii by the thickness of a lamination, of hardwood and of softwood, for
// which the curvature factor is published. Source: Civil Engineering Formulas,
// p. 167.
const hardwoodCurvature, softwoodCurvature = 100, 125

// CurvatureFactor is the share of its bending strength that a curved glued member
// keeps: 1 − 2000·(t/R)², t the thickness of a lamination and R the radius, both in
// m. Laminations that are thicker for their radius than R/t = 100 (hardwood) or 125
// (softwood) are a *RangeError; so the share is from 0.80 or 0.87 to 1. Source:
// Civil Engineering Formulas, eq. 6.29 and p. 167.
func CurvatureFactor(thickness, radius float64, g Group) (float64, error) {
	least := float64(hardwoodCurvature)
	if g == Softwood {
		least = softwoodCurvature
	}
	if ratio := radius / thickness; !(ratio >= least*(1-atEnd)) {
		return 0, &RangeError{What: "radius by strip thickness", Value: ratio, From: least, To: math.Inf(1), Published: "the curvature factor"}
	}
	return 1 - 2000*math.Pow(thickness/radius, 2), nil
}

// RadialStress is the greatest stress across the grain of a curved member with a
// constant rectangular section, in Pa: 3M/(2·R·b·d), M the moment in N·m, R the
// radius of the centre line, b and d its width and depth, in m, all but M positive.
// It has the sign of M. A moment that opens the curve pulls the layers apart.
// Source: the National Design Specification, 5.4.1, read on a page that reprints
// it; that clause number from memory.
func RadialStress(moment, radius, width, depth float64) float64 {
	return 3 * moment / (2 * radius * width * depth)
}

// scarfs are the strength that a plain scarf leaves, by its slope, the steepest
// first. Source: Wood Handbook, from memory. Its chapter 10 (FPL-GTR-190), which was
// read, says only that 1 in 12 or flatter is the strongest.
var scarfs = []struct{ slope, left float64 }{{8, 0.80}, {10, 0.85}, {12, 0.90}}

// ScarfFactor is the share of its bending strength, from 0.80 to 0.90, that wood
// keeps at a plain scarf whose length is a multiple of its thickness, the slope:
// 0.80 from 8, 0.85 from 10, 0.90 from 12. Between two rows it is that of the
// steeper one, and past the last row no more is given. A scarf steeper than 8, and
// NaN, is a *RangeError. Source: Wood Handbook, from memory.
func ScarfFactor(slope float64) (float64, error) {
	left := 0.0
	for _, row := range scarfs {
		if slope >= row.slope*(1-atEnd) {
			left = row.left
		}
	}
	if left == 0 {
		return 0, &RangeError{What: "slope of a scarf, length by thickness,", Value: slope, From: scarfs[0].slope, To: math.Inf(1), Published: "the strength of scarfs"}
	}
	return left, nil
}

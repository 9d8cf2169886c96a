package timber

import (
	"fmt"
	"math"
)

// RangeError says that a figure lies outside what a formula or a table was
// published for, and is not given.
type RangeError struct {
	What      string
	Value     float64 // in SI; so are From and To
	From, To  float64 // the range, both ends in it
	Unit      string  // "", "m", "C", "%": how the three print
	Published string  // where the range comes from
}

// Error prints SI as people write it: fractions in percent, thicknesses in mm.
func (e *RangeError) Error() string {
	scale, unit := 1.0, e.Unit
	switch e.Unit {
	case "%":
		scale = 100
	case "m":
		scale, unit = 1000, "mm"
	}
	if math.IsInf(e.To, 1) {
		return fmt.Sprintf("%s %.4g%s is under %.4g%s, the least for %s", e.What, scale*e.Value, unit, scale*e.From, unit, e.Published)
	}
	return fmt.Sprintf("%s %.4g%s is outside %.4g%s to %.4g%s, the range of %s",
		e.What, scale*e.Value, unit, scale*e.From, unit, scale*e.To, unit, e.Published)
}

// atEnd lets a value that was converted from other units, and so differs from
// the end of the range in its last digits, be at it.
const atEnd = 1e-9

// within checks a range; NaN is never within.
func (e RangeError) within(v float64) error {
	if slack := atEnd * (e.To - e.From); e.From-slack <= v && v <= e.To+slack {
		return nil
	}
	e.Value = v
	return &e
}

var (
	temperatures = RangeError{What: "temperature", From: -1.2, To: 132.3, Unit: "C", Published: "the Wood Handbook's table of moisture content (30F to 270F)"}
	humidities   = RangeError{What: "relative humidity", From: 0, To: 0.95, Unit: "%", Published: "the Wood Handbook's equation for moisture content"}
)

// EMC is the equilibrium moisture content of wood, a fraction, at a temperature in
// °C and a relative humidity h, a fraction:
//
//	M = 1800/W · [K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²)] %
//
// with W, K, K1 and K2 quadratics in the temperature. It is the mean of wetting and
// drying; real wood lies a point or more to either side. Valid from −1.2 °C (30 °F)
// to 132 °C, and up to 95 % relative humidity, where the table behind it ends.
// Outside it, and for NaN, it is a *RangeError.
//
// Source: Wood Handbook, FPL-GTR-282, equation 4-5, in °C.
func EMC(temperature, humidity float64) (float64, error) {
	if err := temperatures.within(temperature); err != nil {
		return 0, err
	}
	if err := humidities.within(humidity); err != nil {
		return 0, err
	}
	return emc(temperature, humidity), nil
}

func emc(T, h float64) float64 {
	W := 349 + 1.29*T + 0.0135*T*T
	K := 0.805 + 0.000736*T - 0.00000273*T*T
	K1 := 6.27 - 0.00938*T - 0.000303*T*T
	K2 := 1.91 + 0.0407*T - 0.000293*T*T
	kh := K * h
	return 18 / W * (kh/(1-kh) + (K1*kh+2*K1*K2*kh*kh)/(1+K1*kh+K1*K2*kh*kh))
}

// HumidityFor is the inverse of [EMC], by bisection to the last bit: the relative
// humidity, a fraction, in which wood comes to a moisture content, a fraction, at a
// temperature in °C. A temperature outside the range of EMC, or a moisture content
// that it does not reach up to 95 % relative humidity, is a *RangeError.
func HumidityFor(temperature, moisture float64) (float64, error) {
	most, err := EMC(temperature, humidities.To)
	if err != nil {
		return 0, err
	}
	reach := RangeError{What: "moisture content", From: 0, To: most, Unit: "%", Published: humidities.Published}
	if err := reach.within(moisture); err != nil {
		return 0, err
	}
	lo, hi := 0.0, humidities.To
	for range 60 { // to the last bit
		if mid := (lo + hi) / 2; emc(temperature, mid) < moisture {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}

// How much heavier than its tabulated density wood may be.
const (
	// SolidSpread is the coefficient of variation of clear wood's specific
	// gravity: Wood Handbook, FPL-GTR-282, table 5-6, from memory.
	SolidSpread = 0.10
	// SheetSpread is what retail plywood weight charts say to allow.
	SheetSpread = 0.15
)

// Density is in kg/m3, from the specific gravity G at the same moisture content M,
// a fraction: 1000·G·(1 + M). No range is checked: it is a product. Source: Wood
// Handbook, FPL-GTR-190, chapter 4.
func Density(sg, moisture float64) float64 { return 1000 * sg * (1 + moisture) }

// saturation is the moisture content above which wood does not move.
const saturation = 0.30

// linear is the range in which movement is proportional to moisture content.
const linearFrom, linearTo = 0.06, 0.14

var belowSaturation = RangeError{What: "moisture content", From: 0, To: saturation, Unit: "%", Published: "shrinkage, which ends at fibre saturation"}

// ErrNoChange says that the species has no coefficient of movement here.
var ErrNoChange = fmt.Errorf("dryfit has no published coefficient of movement for the species")

// Movement is the change of a size, in the size's unit, when the moisture content
// goes from one value to another, both fractions: growth is positive. Where both
// lie between 6 and 14 %,
//
//	ΔD = D·C·(M_f − M_i)
//
// with C the change coefficient by one whole of moisture content, and otherwise,
// with the shrinkage S from green to ovendry, a fraction,
//
//	ΔD = D·(M_f − M_i)/(0.30/S − 0.30 + M_i)
//
// At the ends of the range the two differ by up to a tenth.
//
// Errors. A *RangeError for a moisture content below 0 or above 0.30, and for NaN;
// ErrNoChange where the one of C and S that is needed is 0.
//
// Source: Wood Handbook, FPL-GTR-190, chapter 13: equation 13-2, its range, the use of
// 13-3 beyond it and the limit of 30 % were read; the formula of 13-3 is from memory.
func Movement(size, change, shrinkage, from, to float64) (float64, error) {
	for _, m := range []float64{from, to} {
		if err := belowSaturation.within(m); err != nil {
			return 0, err
		}
	}
	if min(from, to) >= linearFrom && max(from, to) <= linearTo {
		if change == 0 {
			return 0, ErrNoChange
		}
		return size * change * (to - from), nil
	}
	if shrinkage == 0 {
		return 0, ErrNoChange
	}
	return size * (to - from) / (saturation/shrinkage - saturation + from), nil
}

// Curved is what a curved member does when its depth changes by a fraction e, above
// −1, and its length along the grain does not: the angle it spans becomes angle/(1
// + e) and its radius R·(1 + e), in the units that they have. Drying, e below 0,
// closes the curve. Derived: the lengths of both faces stay, and their difference
// is depth by angle.
func Curved(angle, radius, strain float64) (newAngle, newRadius float64) {
	return angle / (1 + strain), radius * (1 + strain)
}

// Mitred is what the angle of a mitre with the square cut, in rad below π/2,
// becomes when the depth of the member changes by a fraction e, above −1, and its
// length along the grain does not: atan(tan(angle)/(1 + e)). Drying, e below 0,
// makes it steeper: the mitres of a frame then open inside. Derived: the mitre's
// run along the grain stays, and its rise across it changes with the depth.
func Mitred(angle, strain float64) float64 { return math.Atan(math.Tan(angle) / (1 + strain)) }

// Springback is the share of its curvature, from 0 to 1, that a stack of n equal
// layers, glued on a form, loses when it is let go: 1/n², since the glued stack is
// n³ times as stiff as one layer and the loose stack n times. n is at least 1,
// which is not checked: a single layer loses all. Derived from beam theory; see
// [SpringbackUncertainty] for what a workshop found.
func Springback(layers float64) float64 {
	return 1 / (layers * layers)
}

// SpringbackUncertainty is the share of the expected springback that may come
// beside it or not: four strips of 3/32 in on a form of 20 in came to 22 in, where
// the rule gives 21.33 in, half as much again in the change of radius. Source: a
// workshop thread on the springback of bent laminations.
const SpringbackUncertainty = 0.5

// FormRadius is the radius of the form, in the unit of the radius, on which n
// layers come to that radius once they spring back: R·(1 − 1/n²). One layer springs
// back whole: 0 is no form. Derived, with [Springback].
func FormRadius(radius, layers float64) float64 {
	return radius * (1 - Springback(layers))
}

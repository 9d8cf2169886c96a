package begin

import (
	"fmt"
	"math"

	"dryfit/spec/quantity"
)

// sizes are those that a shop of one unit system works in. Lengths are in m.
type sizes struct {
	system   quantity.System
	step     float64 // of what is set out
	room     float64 // step of the room's own sizes
	width    float64 // of a rib
	depths   []float64
	strips   []float64 // of laminations, thickest first
	skins    []float64 // thickest first
	sheet    [2]float64
	reveal   [2]float64
	tenon    [3]float64
	spacing  float64
	edge     float64
	heights  []float64 // floor to springing
	above    float64
	gap      float64 // first one
	settings []float64
	panels   []float64 // tolerances of a panel, widest first
	loose    float64   // tolerance of the room
	form     float64
	seam     [2]float64 // gap, tolerance
	strap    [2]float64
	lap      float64
}

const (
	mm   = 0.001
	inch = quantity.Inch
	foot = quantity.Foot
)

func times(unit float64, list ...float64) []float64 {
	for i := range list {
		list[i] *= unit
	}
	return list
}

func sizesOf(s quantity.System) sizes {
	if s == quantity.Imperial {
		return sizes{
			system: s, step: inch / 16, room: inch / 2, width: 3.5 * inch,
			depths: times(inch, 2.25, 2.5, 3, 3.5, 4, 5, 6, 7, 8),
			strips: times(inch, 0.5, 0.375, 0.3125, 0.25, 0.1875, 0.125, 0.09375, 0.0625),
			skins:  times(inch, 0.375, 0.3125, 0.25, 0.1875, 0.125),
			sheet:  [2]float64{4 * foot, 8 * foot}, reveal: [2]float64{0.375 * inch, 0.3125 * inch},
			tenon: [3]float64{0.375 * inch, inch, 2 * inch}, spacing: 11 * inch, edge: 3 * inch,
			heights: times(foot, 9, 10, 12, 14, 16, 20, 24, 30, 36, 48), above: 18 * inch, gap: 0.75 * inch,
			settings: times(inch, 1.0/32, 1.0/64), panels: times(inch, 1.0/16, 1.0/32, 1.0/64), loose: inch / 4, form: inch / 8,
			seam: [2]float64{inch / 64, inch / 64}, strap: [2]float64{1.25 * inch, inch / 16}, lap: 2.5 * inch,
		}
	}
	return sizes{
		system: s, step: mm, room: 10 * mm, width: 90 * mm,
		depths: times(mm, 60, 72, 80, 90, 100, 120, 150, 180, 200),
		strips: times(mm, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5),
		skins:  times(mm, 9, 8, 6.5, 5, 3.5),
		sheet:  [2]float64{1220 * mm, 2440 * mm}, reveal: [2]float64{10 * mm, 8 * mm},
		tenon: [3]float64{10 * mm, 24 * mm, 50 * mm}, spacing: 280 * mm, edge: 75 * mm,
		heights: times(mm, 2700, 3000, 3600, 4200, 4800, 6000, 7200, 9000, 11000, 15000), above: 450 * mm, gap: 20 * mm,
		settings: times(mm, 1, 0.5), panels: times(mm, 1.5, 1, 0.5), loose: 6 * mm, form: 3 * mm,
		seam: [2]float64{0.4 * mm, 0.3 * mm}, strap: [2]float64{30 * mm, 1.5 * mm}, lap: 60 * mm,
	}
}

// up is the least length on a step that is not under m.
func up(m, step float64) float64 { return math.Ceil(m/step-1e-9) * step }

// parts is the finest fraction of an inch that a draft writes.
const parts = 64

// written is a length as a spec writes it.
func (s sizes) written(m float64) string {
	if s.system != quantity.Imperial {
		return fmt.Sprintf("%.7gmm", m/mm)
	}
	return quantity.FeetText(int(math.Round(m/inch*parts)), parts)
}

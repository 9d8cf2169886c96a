package engine

import (
	"fmt"
	"math"

	"dryfit/spec/quantity"
)

// Lengths are offered in steps that a shop sets out: a quarter of a millimetre
// or a thirty-second of an inch where the figure has to come down to something
// thin, a whole millimetre or a sixteenth elsewhere.
const (
	fineStep   = 0.00025
	fineInch   = 1.0 / 32
	coarseStep = 0.001
	coarseInch = 1.0 / 16
	inch       = quantity.Inch
	tenth      = 0.0001
	thin       = 0.02 // strips, skins, tenons and gaps are set out finer
	// onStep keeps round-off from moving a figure that is on a step already.
	onStep = 1e-9
)

// Below is the greatest length on a step that is not over m, as a spec writes
// it: of what is thin on a fine step.
func (p *Pass) Below(m float64) string {
	metric, parts := coarseStep, coarseInch
	if m < thin {
		metric, parts = fineStep, fineInch
	}
	if p.Ceiling.Units == quantity.Imperial {
		return inchText(math.Floor(m/inch/parts+onStep) * parts)
	}
	return millimetres(math.Floor(m/metric+onStep) * metric)
}

// Above is the least length on a step that is not under m, as a spec writes it.
func (p *Pass) Above(m float64) string {
	if p.Ceiling.Units == quantity.Imperial {
		return inchText(p.Raised(m) / inch)
	}
	return millimetres(p.Raised(m))
}

// Raised is that length, in m.
func (p *Pass) Raised(m float64) float64 {
	step := coarseStep
	if p.Ceiling.Units == quantity.Imperial {
		step = coarseInch * inch
	}
	return math.Ceil(m/step-onStep) * step
}

// Exactly is a length as a spec writes it, to a tenth of a millimetre or a
// thirty-second of an inch.
func (p *Pass) Exactly(m float64) string {
	if p.Ceiling.Units == quantity.Imperial {
		return inchText(m / inch)
	}
	return millimetres(math.Round(m/tenth) * tenth)
}

func millimetres(m float64) string {
	return fmt.Sprintf("%.6gmm", m*1000)
}

// inchText writes inches in thirty-seconds, exactly.
func inchText(in float64) string {
	return quantity.InchText(int(math.Round(in*32)), 32)
}

package hanging

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A rib that hangs askew sags by what it drops below the chord between its
// supports, and an overhang by what its end drops below the last support, over
// twice its length; 0.6 of the drop comes with the years.
func TestSagsAreBelowTheChord(t *testing.T) {
	r := &runner{rib: &rib{at: []float64{0, 0.5, 1.5, 2.5, 3.5, 4.5}}}
	held := []bool{false, true, false, false, true, false}
	// From 10mm at 0.5m to 40mm at 3.5m the chord is at 20mm and 30mm between.
	most, byRun := r.sags([]float64{0.011, 0.010, 0.025, 0.032, 0.040, 0.042}, held)
	assert.InDelta(t, 1.6*0.005, most.Drop, 1e-12)
	assert.InDelta(t, 3.0, most.Run, 1e-12)
	// By their runs: 5mm in 3m, 2mm in 2m, 1mm in 1m.
	assert.Equal(t, most, byRun)
	most, byRun = r.sags([]float64{0.013, 0.010, 0.025, 0.032, 0.040, 0.044}, held)
	assert.InDelta(t, 1.6*0.005, most.Drop, 1e-12)
	assert.InDelta(t, 1.6*0.003, byRun.Drop, 1e-12, "3mm in 1m is steeper, and 4mm in 2m")
	assert.InDelta(t, 1.0, byRun.Run, 1e-12)
	most, _ = r.sags([]float64{0, 0, 0, 0, 0, 0}, make([]bool, 6))
	assert.Zero(t, most, "held nowhere")
}

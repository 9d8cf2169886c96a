package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/sample"
)

// Straps and lifts are numbered from the left foot in whatever order the file
// lists them, and keep their places in it.
func TestStationsAreNumberedFromTheLeft(t *testing.T) {
	c := sample.Room(t, map[string]any{
		"strap.stations": []any{"64%", "10%", "90%", "36%"},
		"lift.stations":  []any{"75%", "25%"},
	})
	assert.InDeltaSlice(t, []float64{0.10, 0.36, 0.64, 0.90}, c.Strap.Stations.Get(), 1e-12)
	assert.InDeltaSlice(t, []float64{0.25, 0.75}, c.Lift.Stations.Get(), 1e-12)
	var places []string
	for i := range c.Strap.Stations.Get() {
		places = append(places, c.Strap.Stations.Place(i))
	}
	assert.Equal(t, []string{"strap.stations.2", "strap.stations.4", "strap.stations.1", "strap.stations.3"}, places)
	assert.Equal(t, "lift.stations.2", c.Lift.Stations.Place(0))
}

package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/spec/quantity"
)

// rowsOf are the forces of the straps' diagram by the name of their row.
func rowsOf(in sheet.Input) map[string][]float64 {
	out := map[string][]float64{}
	for _, row := range strapCases(in.Assessment.Results.Hanging()) {
		out[row.name] = row.forces
	}
	return out
}

// Dry and wet stand apart, each the worst of its own cases; in each case by itself the
// straps of one rib carry its weight, for all of them are upright: the panel's mass times
// 9.80665 m/s², half of it (statics).
func TestTheSeasonsStandApart(t *testing.T) {
	in := input(t)
	h, rows := in.Assessment.Results.Hanging(), rowsOf(in)
	weight := in.Ceiling().Panel.Mass.Get() * quantity.Gravity / 2
	for name, season := range map[string]string{inDry: "dry", inWet: "wet"} {
		most := make([]float64, 4)
		for _, c := range h.Seasonal.Get().Is {
			if c.Season != season {
				continue
			}
			sum := 0.0
			for i, f := range c.Straps {
				sum, most[i] = sum+f, math.Max(most[i], f)
			}
			assert.InDelta(t, weight, sum, 0.001*weight, "%s, strap %d %d", season, c.Strap, c.Way)
		}
		assert.Equal(t, most, rows[name])
	}
	assert.NotEqual(t, rows[inDry], rows[inWet])
	s, err := Draw("straps", in, sheet.Options{})
	require.NoError(t, err)
	said := strings.Join(texts(s.Items), "\n")
	for i := range 4 {
		dry, wet := in.Format(quantity.Force(rows[inDry][i]).Value()), in.Format(quantity.Force(rows[inWet][i]).Value())
		assert.Contains(t, said, "dry "+dry+"\nwet "+wet)
	}
	assert.Contains(t, strings.Join(words(s.Items), " "), "the two of a panel carry "+in.Format(quantity.Force(2*weight).Value()))
}

// A flat ceiling bends in no season and has no such rows; one that is hung in the wet
// season and in the dry one has both.
func TestWhereThereAreNoSeasons(t *testing.T) {
	flat := rowsOf(input(t, profiles()["flat"]))
	assert.NotContains(t, flat, inDry)
	assert.NotContains(t, flat, inWet)
	assert.Contains(t, flat, "first hung")
	room := rowsOf(input(t, map[string]any{"strap.hung": "room"}))
	assert.Contains(t, room, inDry)
	assert.Contains(t, room, inWet)
}

// The worst that is drawn is the worst of all cases but of a lost strap.
func TestTheDiagramHasTheWorst(t *testing.T) {
	in := input(t)
	most := 0.0
	for name, forces := range rowsOf(in) {
		for _, f := range forces {
			if name != "one strap lost" {
				most = math.Max(most, f)
			}
		}
	}
	h := in.Assessment.Results.Hanging()
	worst := 0.0
	all, err := h.Envelope()
	require.NoError(t, err)
	for _, c := range all {
		for _, f := range c.Straps {
			worst = math.Max(worst, f)
		}
	}
	assert.InDelta(t, worst, most, 1e-9)
}

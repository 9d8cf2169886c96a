package making

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/sample"
)

func takeoff(t testing.TB, changes map[string]any) Takeoff {
	c := sample.Room(t, changes)
	return Takeoff{Path: "hall.ceiling.toml", Ceiling: c, Takeoff: stock.Of(c, nil)}
}

// A spreadsheet can add up every column but the first four, in the unit that
// its head names.
func TestTakeoffCSVHasNumbersInItsColumns(t *testing.T) {
	for units, u := range map[string]struct {
		length, mass string
		metres, kg   float64
	}{"metric": {"mm", "kg", 0.001, 1}, "imperial": {"in", "lb", 0.0254, 0.45359237}} {
		made := takeoff(t, map[string]any{"project.units": units})
		made.Sheets[0].Material = "=HYPERLINK(\"x\")\u202e"
		var b bytes.Buffer
		require.NoError(t, TakeoffCSV(&b, made))
		table, err := csv.NewReader(&b).ReadAll()
		require.NoError(t, err)
		head, at := table[0], map[string]int{}
		for i, name := range head {
			at[name] = i
		}
		sum := map[string]float64{}
		for _, row := range table[1:] {
			for i, cell := range row {
				if i < 4 || cell == "" {
					assert.False(t, strings.HasPrefix(cell, "="), cell)
					continue
				}
				x, err := strconv.ParseFloat(cell, 64)
				require.NoError(t, err, "%s: %s", head[i], cell)
				sum[row[0]+" "+head[i]] += x
			}
		}
		masses, lengths := 0.0, 0.0
		for _, p := range made.Pieces {
			masses, lengths = masses+p.Mass, lengths+p.Length
		}
		assert.InEpsilon(t, masses/u.kg, sum["piece mass ("+u.mass+")"], 1e-5)
		assert.InEpsilon(t, lengths/u.metres, sum["piece length ("+u.length+")"], 1e-5)
		assert.InEpsilon(t, made.Boards[0].BoardFeet, sum["lumber board measure (bd.ft)"], 1e-5)
		assert.InEpsilon(t, 100*made.Boards[0].Waste, sum["lumber waste (%)"], 1e-5)
		assert.InEpsilon(t, float64(made.Sheets[0].Count), sum["sheet count"], 1e-9)
		assert.Equal(t, "'=HYPERLINK(\"x\")\\u202e", table[1+len(made.Pieces)+len(made.Boards)][at["material"]])
	}
}

// Sheets that are not computed are told at their place, and are no number.
func TestTakeoffSaysWhatIsNotComputed(t *testing.T) {
	made := takeoff(t, nil)
	made.Sheets[0].Count, made.Sheets[0].Err = 0, errors.New("not computed: there are 5000 pieces of skin; the maximum is 2000")
	for name, write := range map[string]func(io.Writer, Takeoff) error{"text": TakeoffText, "csv": TakeoffCSV, "json": TakeoffJSON} {
		var b bytes.Buffer
		require.NoError(t, write(&b, made))
		assert.Contains(t, b.String(), "not computed: there are 5000 pieces of skin; the maximum is 2000", name)
		assert.NotContains(t, b.String(), `"count": 0`, name)
	}
}

package main

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/sample"
)

// The model is whole: in every case the springs bear the weight that it states.
func TestModelOfTheFrameIsInBalance(t *testing.T) {
	type load struct {
		Member int
		Y      float64
	}
	for _, name := range []string{"reading-room", "orangery", "alcove"} {
		var sheet struct {
			Model struct {
				Frames []struct {
					Nodes   []struct{ X, Y float64 }
					Members []struct{ From, To int }
					Weight  struct{ Nodes, Members []load } `json:"self_weight"`
					Cases   []struct {
						Key     string
						Springs []struct{ Force float64 }
						Moves   []struct{}
					}
				}
			}
		}
		out, status := writtenJSON(t, "calcs", "--format", "json", sample.Path(name, ".ceiling.toml"))
		require.Zero(t, status)
		require.NoError(t, json.Unmarshal(out, &sheet))
		require.NotEmpty(t, sheet.Model.Frames, name)
		for _, f := range sheet.Model.Frames {
			weight := 0.0
			for _, l := range f.Weight.Nodes {
				weight -= l.Y
			}
			for _, l := range f.Weight.Members {
				m := f.Members[l.Member-1]
				a, b := f.Nodes[m.From-1], f.Nodes[m.To-1]
				weight -= l.Y * math.Hypot(b.X-a.X, b.Y-a.Y)
			}
			require.NotEmpty(t, f.Cases)
			for _, c := range f.Cases {
				held := 0.0
				for _, s := range c.Springs {
					held += math.Abs(s.Force)
				}
				assert.InEpsilon(t, weight, held, 1e-6, "%s %s", name, c.Key)
				assert.Len(t, c.Moves, len(f.Nodes))
			}
		}
	}
}

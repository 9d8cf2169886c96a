package ruletest

import (
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// shot is all that a review gives of a spec but its words: the figures of the
// calculation sheet, the values of its tables, what is found with its figure, and
// what is not checked.
type shot struct {
	figures map[string]quantity.Value
	found   map[string]bool
}

// shotOf is that of a spec, empty where it is no ceiling.
func shotOf(tree map[string]any) shot {
	s, faults := review.Tree(tree, review.Options{Rules: every, Standards: standards.BuiltIn(), On: On})
	if len(faults) > 0 {
		return shot{}
	}
	return shotFrom(s)
}

func shotFrom(s *review.Assessment) shot {
	out := shot{map[string]quantity.Value{}, map[string]bool{}}
	for _, f := range s.Results.Figures() {
		out.figures[f.Key] = f.Value
	}
	for _, table := range s.Results.Tables() {
		if table.Key == "survey.straps" {
			continue // rounded up to a step of the spec's units
		}
		for _, row := range table.Rows {
			for i, v := range row.Values {
				out.figures[table.Key+": "+row.Label+": "+table.Head[i+1]] = v
			}
		}
	}
	out.found["verdict "+s.Verdict.String()] = true
	for _, f := range s.Findings {
		line := fmt.Sprint(f.Severity, " ", f.Rule.ID, " ", place(f))
		if f.Accepted != nil {
			line = "accepted " + line
		}
		out.found[line] = true
		out.most(line+" measured", f.Measured)
		out.most(line+" limit", f.Bound.Value)
	}
	for _, n := range s.NotChecked {
		out.found[fmt.Sprintf("not checked %s %s, failed: %v", n.Rule.ID, n.Key, n.Failed)] = true
	}
	return out
}

// place is the key of a finding; of one that stands at the first from the left of
// those that it is of, the key of them all.
func place(f engine.Finding) string {
	if f.Rule.ID == "strap.framing" {
		return spec.Pattern(f.At)
	}
	return f.At
}

// most keeps the greatest figure of like findings.
func (s shot) most(key string, v quantity.Value) {
	if had, ok := s.figures[key]; !ok || v.SI > had.SI {
		s.figures[key] = v
	}
}

// nearly is the share by which two figures may differ that should be one, and
// least is what is nothing of each unit.
const nearly = 1e-6

var least = map[quantity.Unit]float64{
	quantity.Metre: 1e-9, quantity.Newton: 1e-5, quantity.Pascal: 1, quantity.NewtonMetre: 1e-6, quantity.NewtonPerMetre: 1e-3,
}

func alike(a, b quantity.Value) bool {
	if math.IsInf(a.SI, 0) || math.IsInf(b.SI, 0) || math.IsNaN(a.SI) {
		return a.SI == b.SI || math.IsNaN(a.SI) && math.IsNaN(b.SI)
	}
	return a.Unit == b.Unit && math.Abs(a.SI-b.SI) <= max(nearly*max(math.Abs(a.SI), math.Abs(b.SI)), least[a.Unit], 1e-12)
}

// same holds two shots to one another.
func same(t *testing.T, a, b shot) {
	t.Helper()
	for line := range a.found {
		assert.True(t, b.found[line], "lost: %s", line)
	}
	for line := range b.found {
		assert.True(t, a.found[line], "new: %s", line)
	}
	for key, v := range a.figures {
		w, ok := b.figures[key]
		if assert.True(t, ok, "no more: %s", key) {
			assert.True(t, alike(v, w), "%s: %v and %v", key, v, w)
		}
	}
	for key := range b.figures {
		_, ok := a.figures[key]
		assert.True(t, ok, "not before: %s", key)
	}
}

// One spec in metric and in imperial units is one ceiling.
func TestRandomInOtherUnits(t *testing.T) {
	for _, d := range random(t) {
		t.Run(d.name, func(t *testing.T) { same(t, d.shot(), shotOf(inOtherUnits(d.tree))) })
	}
}

// go test ./rules/engine/ruletest -run Elsewhere -write FILE keeps the figures of the
// random specs, and -against FILE compares with them, on another processor.
var (
	write   = flag.String("write", "", "the file that the figures of the random specs are written to")
	against = flag.String("against", "", "a file of such figures to compare with")
)

// kept is a shot in a file.
type kept struct {
	Figures map[string]float64
	Found   []string
}

// What is worked out is the same on every processor. One that fuses a product and
// a sum rounds otherwise.
func TestRandomElsewhere(t *testing.T) {
	if *write == "" && *against == "" {
		*write = filepath.Join(t.TempDir(), "figures.json")
		*against = *write
	}
	if *write != "" {
		out := map[string]kept{}
		for _, d := range random(t) {
			k := kept{Figures: map[string]float64{}, Found: slices.Sorted(maps.Keys(d.shot().found))}
			for key, v := range d.shot().figures {
				if !math.IsInf(v.SI, 0) && !math.IsNaN(v.SI) {
					k.Figures[key] = v.SI
				}
			}
			out[d.name] = k
		}
		text, err := json.Marshal(out)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(*write, text, 0o644))
	}
	if *against != "" {
		compareKept(t)
	}
}

func compareKept(t *testing.T) {
	read, err := os.ReadFile(*against)
	require.NoError(t, err)
	var there map[string]kept
	require.NoError(t, json.Unmarshal(read, &there))
	for _, d := range random(t) {
		t.Run(d.name, func(t *testing.T) {
			other := shot{map[string]quantity.Value{}, map[string]bool{}}
			here := shot{map[string]quantity.Value{}, d.shot().found}
			for _, line := range there[d.name].Found {
				other.found[line] = true
			}
			for key, v := range d.shot().figures {
				if !math.IsInf(v.SI, 0) && !math.IsNaN(v.SI) {
					here.figures[key] = v
				}
			}
			for key, v := range there[d.name].Figures {
				other.figures[key] = quantity.Value{SI: v, Unit: here.figures[key].Unit}
			}
			same(t, here, other)
		})
	}
}

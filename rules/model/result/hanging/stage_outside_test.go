package hanging

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/calculix"
	"dryfit/rules/model/sample"
)

// deckOf is a piece of an arch for CalculiX: a rectangle of the section's stiffness,
// on those springs that carry. They act both ways, since the program finds no start
// where all are one-sided; which carry is held to the signs of what it finds.
func deckOf(r *rib, carry []int, misfits []frame.Misfit) calculix.Deck {
	const e = 12e9
	s := r.section.stiffness()
	area, depth := s.EA/e, math.Sqrt(12*s.EI/s.EA)
	acts := frame.Case{Loads: r.loads, Spread: r.spread}
	for _, m := range misfits {
		if slices.Contains(carry, m.Spring) {
			acts.Misfits = append(acts.Misfits, m)
		}
	}
	model := r.model()
	for i := range model.Springs {
		model.Springs[i].Sense = frame.BothWays
		if !slices.Contains(carry, i) {
			acts.Without = append(acts.Without, i)
		}
	}
	return calculix.Deck{Model: model, Case: acts, E: e, G: s.GA / area, Depth: depth, Breadth: area / depth, Parts: 4}
}

// Each state, staged by an outside program too: it finds the shape on the lifts, its
// straps are so much longer there, and the lifts go. What it finds of each support is
// held to 0.5% of the greatest.
func TestStagedStatesAgainstCalculiX(t *testing.T) {
	ccx := outside.Program(t, "ccx")
	for name, changes := range map[string]map[string]any{
		"whole": {},
		"split": {"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}},
		"five":  {"strap.stations": []any{"10%", "30%", "50%", "70%", "90%"}},
	} {
		changes["lift.stations"] = []any{"25%", "75%"}
		staged := Of(sample.Room(t, changes), nil).Staged.Get()
		require.NoError(t, staged.Err)
		for _, s := range staged.Is {
			t.Run(fmt.Sprint(name, s.Piece), func(t *testing.T) { s.compare(t, ccx) })
		}
	}
}

func (s *Staging) compare(t *testing.T, ccx string) {
	r := s.run.rib
	on, err := deckOf(r, r.springs(liftKind), nil).Solve(ccx, t.TempDir())
	require.NoError(t, err)
	var fixed []frame.Misfit
	for i, n := range r.straps {
		fixed = append(fixed, frame.Misfit{Spring: i, Longer: -on.Moved[2*n+1]})
	}
	every := make([]int, len(s.Straps))
	for i := range every {
		every[i] = i
	}
	up := r.springs(liftKind)
	for _, state := range []struct{ straps, lifts []int }{
		{every, nil},
		{every, []int{0}},
		{every, []int{1}},
		{every[1:], []int{0}},
		{[]int{0, len(every) - 1}, nil},
	} {
		got, err := s.With(state.straps, state.lifts)
		require.NoError(t, err)
		if got.Falls {
			continue
		}
		var carry []int
		for i, f := range got.Straps {
			if f > 0 {
				carry = append(carry, i)
			}
		}
		for i, f := range got.Lifts {
			if f > 0 {
				carry = append(carry, up[i])
			}
		}
		there, err := deckOf(r, carry, fixed).Solve(ccx, t.TempDir())
		require.NoError(t, err, "straps %v on lifts %v", state.straps, state.lifts)
		for _, i := range state.straps {
			if got.Straps[i] == 0 {
				assert.Greater(t, there.Moved[2*r.straps[i]+1], -fixed[i].Longer, "strap %d is slack: its point lies over where it was fixed", i+1)
			}
		}
		largest := max(slices.Max(got.Straps), slices.Max(got.Lifts))
		for i, f := range got.Straps {
			assert.InDelta(t, there.Forces[i], f, 0.005*largest, "strap %d of %v on lifts %v", i+1, state.straps, state.lifts)
		}
		for i, f := range got.Lifts {
			assert.InDelta(t, -there.Forces[up[i]], f, 0.005*largest, "lift %d of %v on straps %v", i+1, state.lifts, state.straps)
		}
	}
}

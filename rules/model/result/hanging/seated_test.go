package hanging_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
)

// measured is a survey of the sample's room with the seats of both walls at both of
// its ends; the springing is 1m over the level line.
func measured(nearLeft, nearRight, farLeft, farRight string) map[string]any {
	station := func(at, left, right string) map[string]any {
		return map[string]any{"at": at, "left": "2120mm", "right": "2120mm", "seat": map[string]any{"left": left, "right": right}}
	}
	return map[string]any{
		"accuracy": "1mm", "springing": "1000mm",
		"near": map[string]any{"left": "0mm", "right": "0mm"}, "far": map[string]any{"left": "7144mm", "right": "7144mm"},
		"station": []any{station("0mm", nearLeft, nearRight), station("7144mm", farLeft, farRight)},
	}
}

// straight is a beam of constant section on a ledger at both ends, with two straps at
// shares of its length.
type straight struct {
	long             float64
	bending, shear   float64 // E·I, G·A_s
	strap, ledger    float64 // stiffness
	first, second    float64
	raised, andRight float64 // seats
}

// sags is by how much a force of 1 at share b lowers the beam at share a, between
// supports that do not give: the textbook's deflection of a simply supported beam, and
// in shear the influence line by G·A_s.
func (s straight) sags(a, b float64) float64 {
	x, rest, l := min(a, b)*s.long, (1-max(a, b))*s.long, s.long
	return rest*x*(l*l-rest*rest-x*x)/(6*l*s.bending) + x*rest/(l*s.shear)
}

// forces is what the seats change in the straps and in the ledgers. With X₁ and X₂ on
// the straps, the beam rises at strap i by what the seats raise the chord there, less
// what the forces change: X_i/k_s + Σ X_j·(sags_ij + what the ledgers give by 1) =
// −raised_i.
func (s straight) forces() (straps, ledgers [2]float64) {
	at := [2]float64{s.first, s.second}
	var m [2][2]float64
	var rise [2]float64
	for i := range at {
		rise[i] = s.raised*(1-at[i]) + s.andRight*at[i]
		for j := range at {
			m[i][j] = s.sags(at[i], at[j]) + ((1-at[i])*(1-at[j])+at[i]*at[j])/s.ledger
		}
		m[i][i] += 1 / s.strap
	}
	det := m[0][0]*m[1][1] - m[0][1]*m[1][0]
	straps = [2]float64{(-rise[0]*m[1][1] + rise[1]*m[0][1]) / det, (-rise[1]*m[0][0] + rise[0]*m[1][0]) / det}
	for j, x := range straps {
		ledgers[0] -= x * (1 - at[j])
		ledgers[1] -= x * at[j]
	}
	return straps, ledgers
}

// A straight rib on its ledgers and two straps, by the force method.
func TestSeatsOfAStraightRib(t *testing.T) {
	for _, e := range []struct {
		left, right      string
		raised, andRight float64
	}{
		{"1000mm", "1000mm", 0, 0},
		{"999.9mm", "999.95mm", -0.0001, -0.00005},
		{"1000.2mm", "999.9mm", 0.0002, -0.0001},
		{"999.9mm", "1000.2mm", -0.0001, 0.0002},
	} {
		c := sample.Room(t, map[string]any{
			"vault": map[string]any{"profile": "flat", "span": "4200mm", "length": "7080mm"}, "springing": map[string]any{},
			"ledger.packed": true, "ledger.projection": "200mm", "strap.stations": []any{"35%", "60%"},
			"survey": measured(e.left, e.right, e.left, e.right),
		})
		h := solve(t, c)
		seated := h.Seated.Get().Is
		require.Len(t, seated, 6)
		assert.Equal(t, "packed-panel-6", seated[5].Key())
		f := h.Frames()[0]
		require.Equal(t, "arch", f.Key)
		require.InDelta(t, f.Model.Springs[0].Stiffness, f.Model.Springs[1].Stiffness, 1e-6)
		straps, ledgers := straight{
			long: f.Model.Nodes[len(f.Model.Nodes)-1].X - f.Model.Nodes[0].X, bending: f.Section.E * f.Section.I, shear: f.Section.G * f.Section.Shear,
			strap: f.Model.Springs[0].Stiffness, ledger: f.Model.Springs[2].Stiffness, first: 0.35, second: 0.60,
			raised: e.raised, andRight: e.andRight,
		}.forces()
		for i := range seated {
			require.Equal(t, []bool{false, false}, seated[i].Slack)
			for k, want := range straps {
				assert.InDelta(t, want, seated[i].Straps[k]-h.Packed.Straps[k], 1e-3+1e-4*abs(want), "%s, %s: strap %d", e.left, e.right, k+1)
			}
		}
		bears := map[hanging.ID][2]float64{}
		for _, a := range f.Cases {
			bears[a.ID] = [2]float64{a.Springs[2].Force, a.Springs[3].Force}
		}
		for k, want := range ledgers {
			// Compression is negative.
			assert.InDelta(t, want, bears[h.Packed.ID][k]-bears[seated[0].ID][k], 1e-3+1e-4*abs(want), "%s, %s: ledger %d", e.left, e.right, k+1)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// The seats of each panel are those at its middle: they fall by 6mm along the left
// wall, so that the panel at the near end is lifted and that at the far end not. They
// are part of the envelope, and of a ledger that is not packed there are none.
func TestSeatsByPanel(t *testing.T) {
	room := map[string]any{
		"ledger.packed": true, "ledger.projection": "200mm", "strap.stations": []any{"20%", "40%", "60%", "80%"},
		"survey": measured("1003mm", "1000mm", "997mm", "1000mm"),
	}
	h := solve(t, sample.Room(t, room))
	seated := h.Seated.Get().Is
	require.Len(t, seated, 6)
	assert.Equal(t, "with the ledgers packed to the measured seats of panel 1", seated[0].Words())
	for i := 1; i < len(seated); i++ {
		assert.LessOrEqual(t, sum(seated[i].Straps), sum(seated[i-1].Straps)+1e-9, "the nearer to the near end, the more the ledger takes")
	}
	assert.Less(t, sum(seated[5].Straps), sum(h.Packed.Straps)-1)
	all, err := h.Envelope()
	require.NoError(t, err)
	in := 0
	for _, c := range all {
		if c.Kind == hanging.Seated {
			in++
		}
	}
	assert.Equal(t, 6, in)
	room["ledger.packed"] = false
	assert.Empty(t, solve(t, sample.Room(t, room)).Seated.Get().Is)
	room["ledger.packed"] = true
	delete(room, "survey")
	assert.Empty(t, solve(t, sample.Room(t, room)).Seated.Get().Is)
}

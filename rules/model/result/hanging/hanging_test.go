package hanging_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
)

// solved is every case of a ceiling.
type solved struct {
	*hanging.Hanging
	Weight                     float64
	First                      hanging.Case
	Shape                      []hanging.Station
	Alone, Raised, Packed      *hanging.Case
	Lost, LostPack, Set, Moved []hanging.Case
	Changes                    []hanging.Change
	Thrust                     *float64
}

func solve(t testing.TB, c *layout.Ceiling) *solved {
	h := hanging.Of(c, nil)
	require.NoError(t, h.Err())
	first := h.First.Get().Is
	return &solved{
		h, h.Weight.Get(), first.Case, first.Shape(), h.Alone.Get().Is, h.Raised.Get().Is, h.Packed.Get().Is,
		h.Lost.Get().Is, h.LostPack.Get().Is, h.Set.Get().Is.Cases, h.Moved.Get().Is, h.Set.Get().Is.Changes, h.Thrust.Get().Is,
	}
}

func sum(forces []float64) float64 {
	total := 0.0
	for _, f := range forces {
		total += f
	}
	return total
}

// bare is a rib that is all weight along its arc, on straps so stout that they
// do not stretch: no rails to speak of, feet cut square.
func bare(t *testing.T, vault map[string]any, stations ...any) *layout.Ceiling {
	vault["length"] = "7080mm"
	return sample.Room(t, map[string]any{
		"vault": vault, "springing.cut": "radial", "grid.around": int64(2), "grid.reveal": map[string]any{"at": "seam"},
		"rail":       map[string]any{"species": "white oak", "width": "1mm", "depth": "1mm"},
		"skin":       map[string]any{"material": "bendable plywood", "setback": "51mm"},
		"room.above": "10mm",
		"strap":      map[string]any{"stations": stations, "width": "400mm", "thickness": "400mm", "setting": "0mm"},
		"lift":       map[string]any{"units": int64(2)},
	})
}

// Shares of a hung rib's own weight, three to five straps, thin bars on rigid
// straps, free to spread and held sideways at the crown: worked by the force
// method, and for more than three straps by a plane frame of 720 elements that
// was checked against it. The rib's own proportions are within 0.1% of thin.
func TestHungRib(t *testing.T) {
	semicircle := map[string]any{"profile": "semicircular", "span": "4200mm"}
	// 45 and 60 degrees each side: rise by half span is tan of a quarter of the
	// angle.
	quarter := map[string]any{"profile": "segmental", "span": "4200mm", "rise": "869.848mm"}
	third := map[string]any{"profile": "segmental", "span": "4200mm", "rise": "1212.436mm"}
	for _, c := range []struct {
		name     string
		vault    map[string]any
		stations []any
		want     []float64
	}{
		{"three on a semicircle", semicircle, []any{"0%", "50%", "100%"}, []float64{0.264566, 0.470868, 0.264566}},
		{"three on a quarter", quarter, []any{"0%", "50%", "100%"}, []float64{0.200991, 0.598018, 0.200991}},
		{"five on a semicircle", semicircle, []any{"0%", "25%", "50%", "75%", "100%"}, []float64{0.1261, 0.2490, 0.2498, 0.2490, 0.1261}},
		{"five on a third", third, []any{"0%", "25%", "50%", "75%", "100%"}, []float64{0.1059, 0.2740, 0.2402, 0.2740, 0.1059}},
		{"three inside a third", third, []any{"16.6666667%", "50%", "83.3333333%"}, []float64{0.3458, 0.3084, 0.3458}},
		{"four on a quarter", quarter, []any{"0%", "33.3333333%", "66.6666667%", "100%"}, []float64{0.1393, 0.3607, 0.3607, 0.1393}},
	} {
		h := solve(t, bare(t, c.vault, c.stations...))
		for i, want := range c.want {
			// Shear and the straps' stretch move a share by up to a hundredth of
			// the whole, which thin bars on rigid straps do not have.
			assert.InDelta(t, want, h.First.Straps[i]/h.Weight, 0.012, "%s, strap %d", c.name, i+1)
		}
	}
}

// With one end strap lost its neighbour takes up to 0.65 of the rib (the same
// computation, four straps on a quarter).
func TestStrapLost(t *testing.T) {
	h := solve(t, bare(t, map[string]any{"profile": "segmental", "span": "4200mm", "rise": "869.848mm"}, "0%", "33.3333333%", "66.6666667%", "100%"))
	require.Len(t, h.Lost, 4)
	for i, want := range []float64{0, 0.6517, 0.1731, 0.1752} {
		assert.InDelta(t, want, h.Lost[0].Straps[i]/h.Weight, 0.012)
	}
	assert.InDelta(t, 0.6686, h.Lost[1].Straps[2]/h.Weight, 0.012)
}

// In every case the forces sum to the weight, and what is symmetrical stays so.
func TestForcesSumToTheWeight(t *testing.T) {
	h := solve(t, sample.Room(t, nil))
	all, err := h.Envelope()
	require.NoError(t, err)
	for i := range h.Lost {
		all = append(all, &h.Lost[i])
	}
	for _, c := range all {
		assert.InEpsilon(t, h.Weight, sum(c.Straps)+sum(c.Lifts), 1e-6, c.Key())
	}
	require.NotNil(t, h.Raised)
	assert.InEpsilon(t, h.Weight, sum(h.Raised.Lifts), 1e-6)
	n := len(h.First.Straps)
	for i := range n {
		assert.InEpsilon(t, h.First.Straps[i], h.First.Straps[n-1-i], 1e-5)
	}
	assert.InEpsilon(t, h.Raised.Lifts[0], h.Raised.Lifts[1], 1e-5)
}

// A strap set shorter takes more, by its force for each mm.
func TestSetting(t *testing.T) {
	h := solve(t, sample.Room(t, nil))
	require.Len(t, h.Set, 8)
	assert.Less(t, h.Set[2].Straps[1], h.First.Straps[1], "longer")
	assert.Greater(t, h.Set[3].Straps[1], h.First.Straps[1], "shorter")
	assert.Greater(t, h.Changes[1].Most, 0.0)
}

// Stronger species, stiffer rib, less sag: by the ratio of the moduli where the
// straps do not stretch.
func TestSagGoesWithTheModulus(t *testing.T) {
	oak := solve(t, sample.Room(t, nil))
	walnut := solve(t, sample.Room(t, map[string]any{"rib.depth": "120mm"}))
	assert.Less(t, walnut.First.Sag.Drop, oak.First.Sag.Drop)
	assert.Greater(t, oak.First.Sag.Drop, 0.0)
	assert.Less(t, oak.First.Sag.Drop, 0.01)
}

func TestNeeds(t *testing.T) {
	c := sample.Room(t, map[string]any{"strap": map[string]any{"stations": []any{"50%"}}})
	err := hanging.Of(c, nil).Err()
	var needs *hanging.NeedsError
	require.True(t, errors.As(err, &needs))
	assert.Equal(t, "strap.width", needs.Key)
}

// One strap alone lets the rib swing: that is said, not computed.
func TestOneStrapIsAMechanism(t *testing.T) {
	err := hanging.Of(sample.Room(t, map[string]any{"strap.stations": []any{"50%"}}), nil).Err()
	assert.ErrorContains(t, err, "without resistance")
}

// A support that carries next to nothing does not count, and the margin is by
// balance: of straps at y the mass centre of a symmetric rib is at half the
// span.
func TestTippingMargin(t *testing.T) {
	balanced := solve(t, sample.Room(t, map[string]any{"strap.stations": []any{"15%", "50%"}}))
	assert.Less(t, balanced.First.Straps[0], 0.01)
	assert.True(t, balanced.First.Tips())

	c := sample.Room(t, map[string]any{"strap.stations": []any{"10%", "50%", "90%"}})
	lost := solve(t, c).Lost
	assert.True(t, lost[0].Tips())
	assert.False(t, lost[1].Tips())
	assert.InDelta(t, 0.5, lost[1].Margin, 1e-6)

	c = sample.Room(t, map[string]any{"strap.stations": []any{"30%", "60%"}})
	arc, half := c.Vault.Arc.Get(), c.Rib.Depth.Get()/2
	place := func(s float64) float64 {
		t := c.Vault.Intrados.Get().Tangent(s * arc)
		return c.Vault.Intrados.Get().At(s*arc).Y - half*t.Z
	}
	want := (place(0.6) - 2.1) / (place(0.6) - place(0.3))
	assert.InDelta(t, want, solve(t, c).First.Margin, 1e-3)
}

// Lifts that do not hold the panel are a result, and the straps' cases stay.
func TestLiftsThatDoNotHold(t *testing.T) {
	for _, stations := range [][]any{{"10%", "50%"}, {"10%", "40%"}} {
		h := solve(t, sample.Room(t, map[string]any{"lift.stations": stations}))
		assert.True(t, h.Raised.Tips(), stations)
	}
}

// Each piece of a split arch has lifts of its own, which carry the piece.
func TestLiftsUnderPieces(t *testing.T) {
	h := solve(t, sample.Room(t, map[string]any{"panels.around": int64(2)}))
	require.Len(t, h.Raised.Lifts, 4)
	assert.InEpsilon(t, h.Weight/2, h.Raised.Lifts[0]+h.Raised.Lifts[1], 1e-6)
	assert.InEpsilon(t, h.Raised.Lifts[0], h.Raised.Lifts[3], 1e-5)
}

func TestSplitArches(t *testing.T) {
	c := sample.Room(t, map[string]any{"panels.around": int64(2)})
	h := solve(t, c)
	require.NotNil(t, h.Alone)
	require.Len(t, h.Alone.Straps, 4)
	assert.InEpsilon(t, h.Weight, sum(h.Alone.Straps), 1e-6)
	assert.InEpsilon(t, h.Weight, sum(h.First.Straps), 1e-6, "joined and hinged")

	err := hanging.Of(sample.Room(t, map[string]any{"panels.around": int64(2), "strap.stations": []any{"2%", "10%", "90%", "98%"}}), nil).Err()
	var unstable *hanging.UnstableError
	require.True(t, errors.As(err, &unstable))
	assert.ErrorContains(t, err, "its centre of mass is not between its straps")
}

// Packed ledgers take their part, and the thrust of blocked feet is felt.
func TestLedgersAndThrust(t *testing.T) {
	c := sample.Room(t, map[string]any{"ledger.packed": true, "strap.stations": []any{"20%", "40%", "60%", "80%"}}) // the feet come down
	h := solve(t, c)
	require.NotNil(t, h.Packed)
	assert.Less(t, sum(h.Packed.Straps), h.Weight)
	assert.Len(t, h.LostPack, 4)
	held := solve(t, sample.Room(t, nil))
	require.NotNil(t, held.Thrust)
	assert.Greater(t, *held.Thrust, 0.0)
}

// A ledger bears as soon as it reaches under the outer edge of the sole. Worked
// by hand for each cut in rules/family/strap/testdata/ledger.txtar: the gap to
// the sole is 23.6mm, 22.2mm and 6.6mm.
func TestLedgersBearUnderTheSole(t *testing.T) {
	for _, e := range []struct {
		cut, width, short, long string
	}{
		{"plumb", "4240mm", "23mm", "24mm"},
		{"radial", "4320mm", "22mm", "23mm"},
		{"level", "4380mm", "6mm", "7mm"},
	} {
		packed := func(projection string) solved {
			return *solve(t, sample.Room(t, map[string]any{
				"ledger.packed": true, "room.width": e.width, "springing.cut": e.cut, "ledger.projection": projection,
				"strap.stations": []any{"20%", "40%", "60%", "80%"}, // the feet come down
			}))
		}
		assert.Nil(t, packed(e.short).Packed, "%s feet, %s", e.cut, e.short)
		h := packed(e.long)
		require.NotNil(t, h.Packed, "%s feet, %s", e.cut, e.long)
		assert.Less(t, sum(h.Packed.Straps), h.Weight, e.cut)
		assert.Len(t, h.LostPack, 4, e.cut)
	}
}

// The court room's level feet are 80/sin(2·atan(2·900/6000)) = 145.3mm wide, and
// its ledgers of 70mm come 38mm under them with the room at its widest.
func TestPackedCourtRoom(t *testing.T) {
	h := solve(t, sample.Ceiling(t, "court-room", nil))
	require.NotNil(t, h.Packed)
	assert.Less(t, sum(h.Packed.Straps), h.Weight)
	assert.Len(t, h.LostPack, 5)
}

func BenchmarkAllCases(b *testing.B) {
	c := sample.Room(b, nil)
	for b.Loop() {
		if err := hanging.Of(c, nil).Err(); err != nil {
			b.Fatal(err)
		}
	}
}

// A strap of no length, of a flat ceiling under framing that lies on it, holds like
// a bearing.
func TestStrapsOfNoLength(t *testing.T) {
	first := hanging.Of(sample.Ceiling(t, "gallery-soffit", map[string]any{"room.above": "0mm"}), nil).First.Get()
	require.NoError(t, first.Err)
	sum := 0.0
	for _, force := range first.Is.Straps {
		sum += force
	}
	assert.Positive(t, sum)
}

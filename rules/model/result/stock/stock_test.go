package stock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/sample"
)

func pieces(t stock.Takeoff, name string) (count int, length float64) {
	for _, l := range t.Pieces {
		if l.Name == name {
			count += l.Count
			length = l.Length
		}
	}
	return count, length
}

// One of five straps hangs over the seam of two pieces: it is one strap on each of
// two edge ribs of six panels, not two.
func TestStrapOnASeamIsCountedOnce(t *testing.T) {
	straps := 0
	for _, h := range stock.Of(sample.Room(t, map[string]any{
		"panels.around": int64(2), "strap.stations": []any{"10%", "36%", "50%", "64%", "90%"},
	}), nil).Hardware {
		if h.Name == "strap" {
			straps += h.Count
		}
	}
	assert.Equal(t, 60, straps)
}

// Counted by hand: six panels of one module, half ribs at both sides of each;
// five inner rails and two half ones in each bay; sixteen tenons in each of five
// seams; four straps on each of two edge ribs of six panels, of two lengths;
// three screws at both ends of each.
func TestCounts(t *testing.T) {
	takeoff := stock.Of(sample.Room(t, nil), nil)
	for name, want := range map[string]int{"half rib": 12, "rib": 0, "rail": 30, "half rail": 12, "tenon": 80, "skin": 6} {
		got, _ := pieces(takeoff, name)
		assert.Equal(t, want, got, name)
	}
	_, rail := pieces(takeoff, "rail")
	assert.InDelta(t, 1.090, rail, 1e-9, "between rib faces: 1180 − 90")
	straps, screws := 0, 0
	for _, h := range takeoff.Hardware {
		switch h.Name {
		case "strap":
			straps += h.Count
		case "screw":
			screws = h.Count
		case "moulding":
			assert.InDelta(t, 2*(7.080+4.63457), h.Length, 1e-4)
		}
	}
	assert.Equal(t, 48, straps)
	assert.Equal(t, 288, screws)
	// The skin is 4614mm long as its feet cut it, at the middle of its thickness: a
	// sheet of 2440mm reaches over three of its six modules, so that two make up the
	// arc, and the bay of 1090mm lies within 1220mm.
	assert.Equal(t, 12, takeoff.Sheets[0].Count)
	_, skin := pieces(takeoff, "skin")
	assert.InDelta(t, 2*3.1005*math.Asin(2100.0/3100.5), skin, 1e-9)
}

// By hand: 60/7 = 8.571 and 60/26.5 = 2.264 are no counts of strips; 9 · 6.7 =
// 60.3mm is the depth to 0.3mm; strips that nobody stated divide it: 60/10, and
// 57/10 = 5.7mm.
func TestStripsAreNotRounded(t *testing.T) {
	for strip, want := range map[string]float64{"7mm": 60 / 7.0, "26.5mm": 60 / 26.5, "6.7mm": 9, "6mm": 10} {
		for _, p := range stock.Of(sample.Room(t, map[string]any{"rib.depth": "60mm", "rib.lamination": strip}), nil).Pieces {
			if p.Name == "half rib" {
				assert.InDelta(t, want, p.Strips, 1e-9, strip)
			}
		}
	}
	c := sample.Room(t, map[string]any{"rib": map[string]any{"species": "white oak", "width": "90mm", "depth": "57mm"}})
	assert.InDelta(t, 10, c.Laminations(), 1e-9)
	assert.InDelta(t, 0.0057, c.Rib.Lamination.Get(), 1e-12)
	a, assumed := c.AssumedAt("rib.lamination")
	assert.True(t, assumed)
	assert.Equal(t, "5.7mm", a.Value)
}

// The masses of the pieces sum to the panels': all are alike where the ends are
// halves, but that only five of the six carry a seam's tenons.
func TestMassesSum(t *testing.T) {
	c := sample.Room(t, nil)
	takeoff := stock.Of(c, nil)
	tenons := 0.0
	for _, p := range c.Panel.Pieces.Get() {
		if p.Kind == layout.LooseTenon {
			tenons = p.Mass * float64(p.Count)
		}
	}
	assert.InEpsilon(t, 6*c.Panel.Mass.Get()-tenons, takeoff.Mass, 1e-9)
}

// Ribs and rails of one species are bought together, by what is sawn of planks
// (TestLumberByHand of the package shop), and the waste is what that is more.
func TestBoardMeasure(t *testing.T) {
	takeoff := stock.Of(sample.Room(t, nil), nil)
	require.Len(t, takeoff.Boards, 1)
	b := takeoff.Boards[0]
	assert.InDelta(t, 299.3, b.BoardFeet, 0.05)
	assert.InEpsilon(t, b.Volume*(1+b.Waste)/0.00235974, b.BoardFeet, 1e-5)
	assert.Greater(t, b.Volume, 30*0.0050031)
	two := stock.Of(sample.Room(t, map[string]any{"rail.species": "black walnut"}), nil).Boards
	require.Len(t, two, 2)
	assert.InDelta(t, 163.2, two[0].BoardFeet, 0.05)
	assert.InDelta(t, 136.1, two[1].BoardFeet, 0.05)
}

// Strips that do not make up the depth make no rib, and no lumber is said for it.
func TestNoLumberForWhatCantBeMade(t *testing.T) {
	b := stock.Of(sample.Ceiling(t, "map-gallery", nil), nil).Boards
	assert.True(t, b[0].Missing)
	assert.Zero(t, b[0].Waste)
}

// Tenons are those that the calculation sheet counts, the lengthwise seams' too, and
// sheets those that all pieces lie on together.
func TestSplitArchesAreWhole(t *testing.T) {
	for _, name := range []string{"gallery-soffit", "concourse", "lantern-hall", "vaulted-passage"} {
		c := sample.Ceiling(t, name, nil)
		takeoff := stock.Of(c, nil)
		tenons, _ := pieces(takeoff, "tenon")
		assert.Equal(t, c.Seam.Tenons.Get(), tenons, name)
	}
	assert.Equal(t, 5, stock.Of(sample.Ceiling(t, "gallery-soffit", nil), nil).Sheets[0].Count)
}

// A pointed rib in one piece is two halves, each of its own strips.
func TestPointedRibIsTwoHalves(t *testing.T) {
	for _, l := range stock.Of(sample.Ceiling(t, "lantern-hall", map[string]any{"panels.around": int64(1)}), nil).Pieces {
		if l.Name == "half rib" {
			assert.Equal(t, 2, l.Halves)
		}
	}
}

func TestFullEndsAndSplitArches(t *testing.T) {
	takeoff := stock.Of(sample.Room(t, map[string]any{"grid.ends": "full", "panels.along": int64(3), "panels.around": int64(2)}), nil)
	ribs, length := pieces(takeoff, "rib")
	halves, _ := pieces(takeoff, "half rib")
	assert.Equal(t, 2*(3+2), ribs, "an inner one in each of three panels and one at each end, in two pieces")
	assert.Equal(t, 2*4, halves, "at two seams")
	assert.InDelta(t, 4.63457/2, length, 1e-4)
}

// By hand: lengths of one panel 1.132m and 0.645m, of the other 1.131m and 0.645m,
// two of each on a panel; 30mm by 1.5mm of steel weigh 0.3533kg a metre.
func TestStrapsAsMeasured(t *testing.T) {
	c := sample.Room(t, nil)
	measured := stock.Of(c, [][]float64{{0.645, 1.132}, {1.131, 0.645}}).Hardware[:4]
	for i, want := range []stock.Hardware{{Count: 2, Length: 1.132}, {Count: 2, Length: 1.131}, {Count: 4, Length: 0.645}} {
		assert.Equal(t, want.Count, measured[i].Count)
		assert.InDelta(t, want.Length, measured[i].Length, 1e-12)
		assert.True(t, measured[i].Measured)
		assert.InDelta(t, float64(want.Count)*want.Length*0.3533, measured[i].Mass, 1e-3)
	}
	assert.Equal(t, "screw", measured[3].Name)
}

package layout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// By hand: the skin's near face lies at 3045 + 51 = 3096mm, over an angle of
// 1.522025 from springing to springing 4712.19mm. A plumb cut at the springings
// leaves 2·3096·asin(2100/3096) = 4615.76mm of it; a level one lets it run on
// straight over 51·21/20 = 53.55mm at each foot.
func TestLengthsFollowTheCut(t *testing.T) {
	for cut, want := range map[string]float64{
		"radial": 4.71219, "plumb": 2 * 3.096 * math.Asin(2.1/3.096), "level": 4.71219 + 2*0.05355,
	} {
		c := sample.Room(t, map[string]any{"springing.cut": cut, "skin.setback": "51mm"})
		assert.InDelta(t, want, skinOf(t, c.Panel.Pieces.Get()).Length, 1e-5, cut)
		split := sample.Room(t, map[string]any{"springing.cut": cut, "skin.setback": "51mm", "panels.around": int64(3)})
		sum := 0.0
		for _, p := range split.VaultPieces() {
			if p.Kind == layout.SkinSheet {
				sum += p.Length * float64(p.Count) / float64(split.Panel.Along.Get())
			}
		}
		assert.InDelta(t, want, sum, 1e-5, "the pieces of an arch, %s", cut)
	}
}

func skinOf(t *testing.T, pieces []layout.Piece) layout.Piece {
	for _, p := range pieces {
		if p.Kind == layout.SkinSheet {
			return p
		}
	}
	require.Fail(t, "no skin")
	return layout.Piece{}
}

// By hand, for a strap over the crown of the room's vault, 900mm up to its back,
// and 60mm of room above: its middle is at 930mm, where it was put on the
// intrados at 840mm.
func TestStrapsAtTheirOwnHeight(t *testing.T) {
	c := sample.Room(t, map[string]any{"room.above": "60mm", "strap.lap": "50mm", "strap.stations": []any{"50%"}})
	found := false
	for _, p := range c.Panel.Pieces.Get() {
		if p.Kind == layout.Hanger {
			found = true
			assert.InDelta(t, 0.930, p.Centre.Z, 1e-6)
			assert.InDelta(t, 2.1, p.Centre.Y, 1e-6)
		}
	}
	assert.True(t, found)
}

// What lies between places along the arc adds up to the panel's ribs and skin,
// and where the foot is cut it is less or more by hand: of the rib's own section,
// 60mm deep, a plumb cut takes (60²/2)·tan φ = 1714mm² and a level one adds
// (60²/2)·cot φ = 1890mm², tan φ being 20/21, but for the curve.
func TestStretchesFollowTheCut(t *testing.T) {
	first := map[string]float64{}
	for _, cut := range []string{"radial", "plumb", "level"} {
		c := sample.Room(t, map[string]any{"springing.cut": cut, "grid.reveal": map[string]any{"at": "seam"}})
		arc, sum := c.Vault.Arc.Get(), 0.0
		const n = 80
		for i := range n {
			sum += c.Stretch(arc*float64(i)/n, arc*float64(i+1)/n).Mass
		}
		want := 0.0
		for _, p := range c.Panel.Pieces.Get() {
			if p.Kind == layout.HalfRib || p.Kind == layout.Rib || p.Kind == layout.SkinSheet {
				want += p.Mass * float64(p.Count)
			}
		}
		assert.InEpsilon(t, want, sum, 3e-5, cut)
		first[cut] = c.Stretch(0, 0.3).Mass
	}
	c := sample.Room(t, map[string]any{"grid.reveal": map[string]any{"at": "seam"}})
	rib := 1000 * 0.68 * (1 + c.Climate.Shop.Get()) * 0.090 // kg for each m² of section
	skin := c.Skin.Material.Get().Density * c.Clear()
	wedge := func(by float64) float64 {
		d := c.Skin.Setback.Get()
		behind := math.Pow(d+c.Skin.Total(), 2) - d*d
		return by * (rib*0.060*0.060 + skin*behind) / 2
	}
	assert.InEpsilon(t, wedge(20.0/21), first["radial"]-first["plumb"], 0.03)
	assert.InEpsilon(t, wedge(21.0/20), first["level"]-first["radial"], 0.03)
}

// By hand: ribs, rails and tenons may be 10% heavier, the skin 15%, and straps as
// heavy as they are.
func TestTheMostThatAPanelWeighs(t *testing.T) {
	c := sample.Room(t, nil)
	by := map[layout.PieceKind]float64{
		layout.Rib: 1.10, layout.HalfRib: 1.10, layout.Rail: 1.10, layout.HalfRail: 1.10, layout.LooseTenon: 1.10,
		layout.SkinSheet: 1.15, layout.Hanger: 1,
	}
	want := 0.0
	for _, p := range c.Panel.Pieces.Get() {
		want += p.Mass * float64(p.Count) * by[p.Kind]
	}
	assert.InEpsilon(t, want, c.Panel.Most.Get(), 1e-9)
	assert.InDelta(t, 1.118, c.Panel.Heavier(), 0.003)
}

// By hand, with the skin of TestLengthsFollowTheCut in six modules of 785.37mm: a
// level cut makes the two at the feet 838.92mm, so that a sheet of 1600mm reaches
// over two inner modules, 1570.73mm, and not over one at a foot and the next,
// 1624.28mm: 1 + 2 + 2 + 1. A plumb cut makes them 737.15mm, so that one of 2320mm
// reaches over a foot's and two more, 2307.88mm, where three inner ones are
// 2356.10mm: 3 + 3.
func TestSheetsReachAsTheFeetAreCut(t *testing.T) {
	for _, row := range []struct {
		cut, bent      string
		end, developed float64
		joints         []float64 // in modules
	}{
		{"level", "1600mm", 0.83892, 4.81929, []float64{1, 3, 5}},
		{"radial", "1600mm", 0.78537, 4.71219, []float64{2, 4}},
		{"plumb", "2320mm", 0.78537, 4.61576, []float64{3}},
		{"radial", "2320mm", 0.78537, 4.71219, []float64{2, 4}},
	} {
		c := sample.Room(t, map[string]any{"springing.cut": row.cut, "skin.setback": "51mm", "skin.sheet.bent": row.bent})
		s := c.SkinSheets()
		assert.InDelta(t, row.developed, s.Developed, 1e-5, row.cut)
		assert.InDelta(t, row.end, s.Module, 1e-5, "%s, the longest module", row.cut)
		var want []float64
		for _, j := range row.joints {
			want = append(want, j*c.Grid.ModuleAround.Get())
		}
		assert.InDeltaSlice(t, want, s.Joints, 1e-9, row.cut)
		assert.Equal(t, len(want)+1, s.Around, row.cut)
		assert.True(t, s.FitsAround, row.cut)
		assert.InDelta(t, skinOf(t, c.Panel.Pieces.Get()).Length, s.Developed, 1e-9, "the list and the sheets say one length")
	}
	split := sample.Room(t, map[string]any{"springing.cut": "level", "skin.setback": "51mm", "panels.around": int64(3), "skin.sheet.bent": "1600mm"})
	assert.Equal(t, 2, split.SkinSheets().Around, "a piece at a foot takes the most")
}

// However short a stretch is and however deep its band, nothing of it is beyond the cut
// of a foot.
func TestNoBandReachesPastTheCut(t *testing.T) {
	const n, deep, roundoff = 400, 0.3, 1e-9
	for _, cut := range []string{"plumb", "level"} {
		c := sample.Room(t, map[string]any{"springing.cut": cut})
		arc, span := c.Vault.Arc.Get(), c.Vault.Span.Get()
		for i := range n {
			low, high := c.Vault.Band(arc*float64(i)/n, arc*float64(i+1)/n, 0, deep).Bounds()
			if cut == "plumb" {
				assert.GreaterOrEqual(t, low.Y, -roundoff, "%s, stretch %d", cut, i)
				assert.LessOrEqual(t, high.Y, span+roundoff, "%s, stretch %d", cut, i)
			} else {
				assert.GreaterOrEqual(t, low.Z, -roundoff, "%s, stretch %d", cut, i)
			}
		}
	}
}

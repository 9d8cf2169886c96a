package shop_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
)

// By hand: the intrados of 2·3045·φ and 75mm at both ends are 4784.57mm; of blanks of
// 3660mm with scarfs of 12·6 = 72mm two make it, with one scarf; ten strips in each
// of twelve half ribs.
func TestStripsByHand(t *testing.T) {
	s := shop.Of(sample.Room(t, nil)).Strips.Get()
	require.Len(t, s, 1)
	long := 2*3.045*2*math.Atan(0.4) + 0.150
	assert.InDelta(t, long, s[0].Length, 1e-9)
	assert.InDelta(t, 0.072, s[0].Scarf, 1e-9)
	assert.Equal(t, 2, s[0].Boards)
	assert.Equal(t, 10, s[0].PerRib)
	assert.Equal(t, 120, s[0].Count)
	require.Len(t, s[0].Scarfs, 1)
	// Turned end for end, the neighbour's scarf lies 300mm and a scarf away.
	assert.InDelta(t, 0.372, long-2*s[0].Scarfs[0], 1e-9)
	assert.InDelta(t, 0.300, s[0].Apart, 1e-9)
	// Both boards come out of a blank.
	assert.LessOrEqual(t, s[0].Scarfs[0]+0.036, 3.660)
	assert.LessOrEqual(t, long-s[0].Scarfs[0]+0.036, 3.660)
}

// A pointed rib in one piece is two halves, each with its own strips, and not one
// strip bent over the ridge.
func TestPointedRibIsTwoHalves(t *testing.T) {
	whole := map[string]any{"panels.around": int64(1), "springing.cut": "radial"}
	s := shop.Of(sample.Ceiling(t, "lantern-hall", whole))
	half := shop.Of(sample.Ceiling(t, "lantern-hall", map[string]any{"springing.cut": "radial"}))
	require.Len(t, s.Strips.Get(), 1)
	one, two := s.Strips.Get()[0], half.Strips.Get()
	assert.Equal(t, 2, one.Halves)
	assert.Equal(t, 24, one.PerRib)
	assert.InDelta(t, two[0].Length, one.Length, 1e-9)
	assert.Equal(t, two[0].Count+two[1].Count, one.Count)
	assert.InDelta(t, half.Forms.Get()[0].Chord, s.Forms.Get()[0].Chord, 1e-9)
	assert.InDelta(t, 108*0.0254*(1-1.0/144), s.Forms.Get()[0].Radius, 1e-9)
}

// By hand: ten strips lose 1/100 of the form's curvature, so that the form has 3045 ·
// 0.99 = 3014.55mm; the intrados' length of 4634.57mm on it spans an angle of 4634.57/
// 3014.55. Clamps at most 150mm apart along 4784.57mm are ceil(31.9) + 1 = 33.
func TestFormByHand(t *testing.T) {
	f := shop.Of(sample.Room(t, nil)).Forms.Get()[0]
	r, arc := 3.045*0.99, 2*3.045*2*math.Atan(0.4)
	assert.InDelta(t, r, f.Radius, 1e-9)
	assert.InDelta(t, 2*r*math.Sin(arc/r/2), f.Chord, 1e-9)
	assert.InDelta(t, r*(1-math.Cos(arc/r/2)), f.Rise, 1e-9)
	assert.InDelta(t, arc+0.150, f.Length, 1e-9)
	assert.Equal(t, 33, f.Clamps)
	assert.InDelta(t, 1.4e6*0.051*(arc+0.150)/32, f.Force, 1e-6)
	// The edge is one arc, as long as the strip.
	assert.InDelta(t, f.Length, f.Outline[0].Length(), 1e-9)
	assert.InDelta(t, r, f.Outline[0].Radius(), 1e-9)
}

// Solid and sawn ribs have no form, nor has a flat ceiling or a rib whose strips do not
// make up its depth.
func TestNoForm(t *testing.T) {
	for _, name := range []string{"boat-house", "print-room", "tower-room", "gallery-soffit", "map-gallery"} {
		assert.Empty(t, shop.Of(sample.Ceiling(t, name, nil)).Forms.Get(), name)
	}
}

// The form of an ellipse keeps its length and has every curvature over 1 − 1/n².
func TestFormOfAnEllipse(t *testing.T) {
	f := shop.Of(sample.Ceiling(t, "music-room", nil)).Forms.Get()[0]
	assert.Zero(t, f.Radius)
	sum := 0.0
	for _, s := range f.Outline {
		if s.Bulge != 0 {
			sum += s.Length()
		}
	}
	assert.InDelta(t, f.Length, sum, 0.01*mm)
	c := sample.Ceiling(t, "music-room", nil)
	middle := f.Outline[(len(f.Outline)-3)/2]
	assert.InEpsilon(t, c.Vault.Radius.Get()*(1-1.0/400), middle.Radius(), 1e-3)
}

// By hand, of the tower room: R = (1500² + 1200²)/2400 = 1537.5 and φ = 2·atan(0.8);
// 17 segments span 2φ/17 each, between 1537.5 and 1607.5. The second layer begins
// with half a segment, and so has a piece more.
func TestSawnByHand(t *testing.T) {
	s := shop.Of(sample.Ceiling(t, "tower-room", nil)).Sawn.Get()
	require.Len(t, s, 1)
	a := 4 * math.Atan(0.8) / 17
	assert.InDelta(t, a, s[0].Angle, 1e-9)
	assert.InDelta(t, 2*1.6075*math.Sin(a/2), s[0].Length, 1e-9)
	assert.InDelta(t, 1.6075-1.5375*math.Cos(a/2), s[0].Width, 1e-9)
	require.Len(t, s[0].Layers, 2)
	first, second := s[0].Layers[0], s[0].Layers[1]
	assert.Equal(t, 17, first.Pieces)
	assert.Equal(t, 18, second.Pieces)
	assert.InDelta(t, 1.5375*a, first.Joints[0].Intrados, 1e-9)
	assert.InDelta(t, 1.5375*a/2, second.Joints[0].Intrados, 1e-9)
	assert.InDelta(t, 1.5375*a*16.5, second.Joints[16].Intrados, 1e-9)
	for _, l := range s[0].Layers {
		assert.InDelta(t, s[0].Length, l.Length, 1e-9)
		assert.InDelta(t, s[0].Width, l.Width, 1e-9)
	}
	require.Len(t, s[0].Blanks, 2, "a whole segment, and the half at both ends, which mirror each other")
	assert.Equal(t, 33, s[0].Blanks[0].Count)
	assert.Equal(t, 2, s[0].Blanks[1].Count)
}

// The joints of all layers of all sawn ceilings divide the rib: the pieces between
// them add up to its intrados.
func TestJointsDivideTheRib(t *testing.T) {
	for _, name := range []string{"banking-hall", "chapter-house", "tower-room"} {
		c := sample.Ceiling(t, name, nil)
		for _, s := range shop.Of(c).Sawn.Get() {
			for _, l := range s.Layers {
				assert.Len(t, l.Joints, l.Pieces-1)
				last := 0.0
				for _, j := range l.Joints {
					assert.Greater(t, j.Intrados, last)
					last = j.Intrados
				}
				assert.Less(t, last, c.Panel.Arc.Get())
				count := 0
				for _, b := range s.Blanks {
					count += b.Count
				}
				assert.Positive(t, count)
			}
		}
	}
}

// By hand: the middle of a sheet of 9mm lies 51 + 4.5mm behind the intrados, and the
// plumb feet cut it at asin(2100/3100.5): 4614mm, and not the 4712mm of the whole
// parallel. The third rail is the crown's, in the middle.
func TestSkinByHand(t *testing.T) {
	s := shop.Of(sample.Room(t, nil)).Skins.Get()
	require.Len(t, s, 1)
	half := math.Asin(2100.0 / 3100.5)
	assert.InDelta(t, 2*3.1005*half, s[0].Length, 1e-9)
	assert.InDelta(t, 1.090, s[0].Width, 1e-9)
	require.Len(t, s[0].Rails, 5)
	assert.InDelta(t, s[0].Length/2, s[0].Rails[2].Back, 1e-9)
	phi := 2 * math.Atan(0.4)
	assert.InDelta(t, 3.1005*(half-phi*2/3), s[0].Rails[0].Back, 1e-9)
	// The downlight is in the middle of the third of six coffers.
	require.Len(t, s[0].Fittings, 1)
	f := s[0].Fittings[0]
	assert.InDelta(t, 3.1005*(half-phi/6), f.Around, 1e-9)
	assert.InDelta(t, 0.545, f.Along, 1e-9)
	assert.InDelta(t, 0.090, f.Diameter, 1e-9)
	assert.Equal(t, 2, f.Panel)
}

// By hand. Strips are sawn 6 + 1.6 = 7.6mm and 51mm wide. Ripped they take a plank that
// leaves 45mm, 10/4: 63.5·10.8 = 685.8mm2; resawn, 8/4 gives five of 50.8/5 · 54.2 =
// 550.67mm2, 5/4 three of 573.6. 120 of them are 4856.57mm long each with a scarf, and
// defects take a fifth. Rails of 90 × 51 take 10/4: 63.5·99.2·1140, the half ones of
// 51 × 45 too: 63.5·60.2·1140.
func TestLumberByHand(t *testing.T) {
	s := shop.Of(sample.Room(t, nil))
	boardFoot := 144 * math.Pow(25.4, 3)
	long := 2*3045*2*math.Atan(0.4) + 150 + 72
	cut := s.Cuts.Get().Strips[0]
	assert.Equal(t, 8, cut.Stock)
	assert.Equal(t, "resawn", cut.Way)
	assert.InDelta(t, 0.0076, cut.Thickness, 1e-9)
	assert.InDelta(t, 0.051, cut.Width, 1e-9)
	assert.InEpsilon(t, 50.8/5*54.2*long*120*1.2/boardFoot, s.RibLumber.Get().BoardFeet, 1e-9)
	rails := s.Cuts.Get().Rails
	require.Len(t, rails, 2)
	assert.Equal(t, 10, rails[0].Stock)
	assert.InDelta(t, 1.140, rails[0].Length, 1e-9)
	assert.InDelta(t, 0.096, rails[0].Width, 1e-9)
	assert.InEpsilon(t, 63.5*1140*(99.2*30+60.2*12)*1.2/boardFoot, s.RailLumber.Get().BoardFeet, 1e-9)
	assert.InDelta(t, 299.3, s.RibLumber.Get().BoardFeet+s.RailLumber.Get().BoardFeet, 0.05)
}

// Sawn of the tower room by hand: 4/4 plank, each piece with 12mm at both ends, 6mm
// and a kerf on its width; 17 whole segments in the first of a half rib's two layers,
// 17 and two halves in the second, twelve half ribs.
func TestSawnLumberByHand(t *testing.T) {
	s := shop.Of(sample.Ceiling(t, "tower-room", nil))
	one := func(l, w float64) float64 { return 0.0254 * (w + 0.0092) * (l + 0.024) }
	whole := s.Sawn.Get()[0]
	a := whole.Angle / 2
	// A half segment: its own chord's outer corners are 2·Ro·sin(a/2) apart.
	half := one(2*1.6075*math.Sin(a/2), 1.6075-1.5375*math.Cos(a/2))
	want := 12 * (34*one(whole.Length, whole.Width) + 2*half - one(whole.Length, whole.Width))
	boardFoot := 144 * math.Pow(0.0254, 3)
	assert.InEpsilon(t, want*1.2/boardFoot, s.RibLumber.Get().BoardFeet, 1e-6)
}

// On no sheet do two pieces overlap or come nearer than a kerf, or lie past its edge;
// all pieces are there; the bound is one.
func TestNests(t *testing.T) {
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		s := shop.Of(c)
		n := s.Sheets.Get()
		require.True(t, n.Fits, name)
		assert.Len(t, n.Pieces, len(s.SkinPieces.Get()), name)
		assert.Equal(t, len(n.Pieces), s.SkinCount.Get().Pieces, name)
		assert.GreaterOrEqual(t, n.Count, n.Least, name)
		kerf := c.Bench().Kerf - 1e-9
		for i, p := range n.Pieces {
			assert.LessOrEqual(t, p.X+p.Around, n.Bent+1e-9, name)
			assert.LessOrEqual(t, p.Y+p.Along, n.Straight+1e-9, name)
			assert.LessOrEqual(t, p.Sheet, n.Count, name)
			for _, q := range n.Pieces[:i] {
				clear := p.Sheet != q.Sheet || p.X >= q.X+q.Around+kerf || q.X >= p.X+p.Around+kerf ||
					p.Y >= q.Y+q.Along+kerf || q.Y >= p.Y+p.Along+kerf
				assert.True(t, clear, "%s: %s and %s", name, p.Mark, q.Mark)
			}
		}
	}
}

// By hand: of twelve pieces of 2286mm and twelve of 457mm, 394mm wide, three lie
// beside each other in 1220mm, and five of the short ones in 2440mm: four sheets and
// one, where every panel's by themselves take 24.
func TestNestTogether(t *testing.T) {
	n := shop.Of(sample.Ceiling(t, "gallery-soffit", nil)).Sheets.Get()
	assert.Equal(t, 5, n.Count)
	assert.Equal(t, 5, n.Least)
}

// A piece larger than its sheet is told, and not drawn on one.
func TestPieceLargerThanItsSheet(t *testing.T) {
	n := shop.Of(sample.Room(t, map[string]any{"skin.sheet": map[string]any{"straight": "900mm", "bent": "2440mm"}})).Sheets.Get()
	assert.False(t, n.Fits)
	assert.Equal(t, 12, n.TooLarge)
	assert.Empty(t, n.Pieces)
}

// More pieces than are worked with are not laid and not marked, and both say so.
func TestTooManyPiecesToLay(t *testing.T) {
	crowded := func(along int64, bent, length string) *shop.Shop {
		return shop.Of(sample.Room(t, map[string]any{
			"grid.around": int64(50), "grid.along": along, "panels.along": along, "vault.length": length, "room.length": length, "skin.sheet": map[string]any{"straight": "1220mm", "bent": bent},
		}))
	}
	s := crowded(100, "110mm", "80m")
	n := s.Sheets.Get()
	require.EqualError(t, n.Err, "not computed: there are 5000 pieces of skin; the maximum is 2000")
	assert.True(t, n.Fits)
	assert.Empty(t, n.Pieces)
	require.NoError(t, s.Marks.Get().Err)
	assert.Len(t, s.Marks.Get().List, s.Count.Get().Pieces)
	assert.False(t, crowded(100, "80mm", "80m").Sheets.Get().Fits)
	assert.ErrorContains(t, crowded(4000, "110mm", "3200m").Marks.Get().Err, "the maximum is 100000")
}

// As many marks as pieces, each its own; the first panel is the one at the far end.
func TestMarks(t *testing.T) {
	for _, name := range sample.Names(t) {
		s := shop.Of(sample.Ceiling(t, name, nil))
		seen := map[string]bool{}
		for _, m := range s.Marks.Get().List {
			assert.False(t, seen[m.Mark], "%s: %s", name, m.Mark)
			seen[m.Mark] = true
		}
		assert.Len(t, seen, s.Count.Get().Pieces, name)
	}
	c := sample.Room(t, nil)
	assert.Equal(t, shop.Panel{Number: 1, Along: 5, Piece: 1}, shop.Panels(c)[0])
	assert.Equal(t, "P1-R1", shop.Of(c).Marks.Get().List[0].Mark)
}

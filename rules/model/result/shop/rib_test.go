package shop_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
)

const mm = 1e-3

func ribOf(t *testing.T, name string, changes map[string]any, k int) shop.Rib {
	t.Helper()
	ribs := shop.Of(sample.Ceiling(t, name, changes)).Ribs.Get()
	require.Greater(t, len(ribs), k)
	return ribs[k]
}

// By hand: a span of 4200 and a rise of 840 have R = (2100² + 840²)/(2·840) = 3045
// and φ = 2·atan(840/2100); the plumb foot takes the back, R + 60, at asin(2100/3105).
// The foot stands from (0, 0) up to the back: √(3105² − 2100²) − (3045 − 840).
func TestSegmentalRibByHand(t *testing.T) {
	r := ribOf(t, sample.ReadingRoom, nil, 0)
	phi := 2 * math.Atan(840.0/2100)
	assert.InDelta(t, 2*3.045*phi, r.Intrados, 1e-9)
	assert.InDelta(t, 2*3.105*math.Asin(2100.0/3105), r.Back, 1e-9)
	assert.InDelta(t, 4.2, r.Chord, 1e-9)
	assert.InDelta(t, 0.84, r.Rise, 1e-9)
	foot := math.Sqrt(3.105*3.105-2.1*2.1) - (3.045 - 0.840)
	for _, end := range []shop.End{r.Left, r.Right} {
		assert.InDelta(t, foot, end.Length, 1e-9)
		assert.InDelta(t, phi, end.Bevel, 1e-9)
	}
	assert.InDelta(t, 4.2, r.Box.Length, 1e-9)
	assert.InDelta(t, 0.9, r.Box.Width, 1e-9)
}

// The sixth of the arc is 772.43mm; on the back the normal meets it at the same
// angle, less what the foot takes: (φ − asin(2100/3105))·3105.
func TestRunningDimensionsByHand(t *testing.T) {
	r := ribOf(t, sample.ReadingRoom, nil, 0)
	phi := 2 * math.Atan(840.0/2100)
	lost := phi - math.Asin(2100.0/3105)
	require.Len(t, r.Rails, 5)
	for i, p := range r.Rails {
		assert.Equal(t, i+1, p.Number)
		angle := 2 * phi * float64(i+1) / 6
		assert.InDelta(t, 3.045*angle, p.Intrados, 1e-9)
		assert.InDelta(t, 3.105*(angle-lost), p.Back, 1e-9)
	}
	require.Len(t, r.Straps, 4)
	assert.InDelta(t, 3.045*2*phi*0.36, r.Straps[1].Intrados, 1e-9)
	assert.InDelta(t, 3.105*(2*phi*0.36-lost), r.Straps[1].Back, 1e-9)
	require.Len(t, r.Tenons, 16)
	assert.InDelta(t, 0.075, r.Tenons[0].Intrados, 1e-9)
	assert.InDelta(t, r.Intrados-0.075, r.Tenons[15].Intrados, 1e-9)
	require.Len(t, r.Stick, 7)
	assert.InDelta(t, 0, r.Stick[0].From, 1e-9)
	assert.InDelta(t, 0.045, r.Stick[0].To, 1e-9)
	assert.InDelta(t, r.Rails[2].Intrados-0.045, r.Stick[3].From, 1e-9)
	assert.InDelta(t, r.Rails[2].Intrados+0.045, r.Stick[3].To, 1e-9)
	// Three screws in a lap of 60mm lie 20mm apart about the strap's place.
	require.Len(t, r.Holes, 12)
	assert.InDelta(t, r.Straps[1].Back-0.020, r.Holes[3].Back, 1e-9)
	assert.InDelta(t, r.Straps[1].Back+0.020, r.Holes[5].Back, 1e-9)
}

// A level foot stands on the springing: the back runs on along its arc to
// √(3105² − 2205²) beside the crown.
func TestLevelFootByHand(t *testing.T) {
	r := ribOf(t, sample.ReadingRoom, map[string]any{"springing.cut": "level"}, 0)
	half := math.Acos(2205.0 / 3105)
	assert.InDelta(t, 2*3.105*half, r.Back, 1e-9)
	assert.InDelta(t, math.Sqrt(3.105*3.105-2.205*2.205)-2.1, r.Left.Length, 1e-9)
	assert.InDelta(t, math.Pi/2-2*math.Atan(840.0/2100), r.Left.Bevel, 1e-9)
}

// A radial foot is square to the curve and as long as the rib is deep.
func TestRadialFootByHand(t *testing.T) {
	r := ribOf(t, sample.ReadingRoom, map[string]any{"springing.cut": "radial"}, 0)
	assert.InDelta(t, 0.060, r.Left.Length, 1e-9)
	assert.InDelta(t, 0, r.Left.Bevel, 1e-9)
	assert.InDelta(t, 3.105/3.045*r.Intrados, r.Back, 1e-9)
}

// A third of a semicircle of 6000mm is 60° of R = 3000: chord 3000, rise
// 3000·(1 − cos 30°), back 3090·π/3.
func TestPieceOfASemicircleByHand(t *testing.T) {
	c := map[string]any{"springing.cut": "radial"}
	for k := range 3 {
		r := ribOf(t, "vaulted-passage", c, k)
		assert.Equal(t, k+1, r.Piece)
		assert.InDelta(t, math.Pi, r.Intrados, 1e-9)
		assert.InDelta(t, 3.09*math.Pi/3, r.Back, 1e-9)
		assert.InDelta(t, 3.0, r.Chord, 1e-9)
		assert.InDelta(t, 3*(1-math.Cos(math.Pi/6)), r.Rise, 1e-9)
		require.Len(t, r.Rails, 3)
		for i, p := range r.Rails {
			assert.Equal(t, 4*k+i+1, p.Number, "counted over the whole arch")
			assert.InDelta(t, math.Pi/4*float64(i+1), p.Intrados, 1e-9)
			assert.InDelta(t, 3.09*math.Pi/12*float64(i+1), p.Back, 1e-9)
		}
	}
}

// A pointed arch of 12ft with R = 9ft, parted at its ridge: each half turns by
// acos(1/3) from the upright, and its back of R + d reaches on to the mitre, where
// cos = 36/(108 + 3) by the centre's distance of 36in from the axis.
func TestPointedHalfByHand(t *testing.T) {
	const in = 0.0254
	r := ribOf(t, "lantern-hall", map[string]any{"springing.cut": "radial"}, 0)
	sweep := math.Acos(1.0 / 3)
	assert.InDelta(t, 108*in*sweep, r.Intrados, 1e-9)
	assert.InDelta(t, 111*in*math.Acos(36.0/111), r.Back, 1e-9)
	assert.InDelta(t, math.Asin(1.0/3), r.Right.Bevel, 1e-3, "the mitre, from square to the curve, by a chord of 3in over the back's own bend")
	assert.InDelta(t, (math.Sqrt(111*111-36*36)-math.Sqrt(108*108-36*36))*in, r.Right.Length, 1e-9)
	other := ribOf(t, "lantern-hall", map[string]any{"springing.cut": "radial"}, 1)
	assert.InDelta(t, r.Back, other.Back, 1e-9)
	assert.InDelta(t, r.Right.Length, other.Left.Length, 1e-9)
}

// Every pattern of every ceiling is one closed outline in order, its arcs on its own
// edges; ellipses are followed within 0.05mm; lengths add up.
func TestOutlinesClose(t *testing.T) {
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		for _, r := range shop.Of(c).Ribs.Get() {
			o := r.Outline
			sum := 0.0
			for i, s := range o {
				next := o[(i+1)%len(o)]
				assert.InDelta(t, s.To[0], next.From[0], 1e-9, name)
				assert.InDelta(t, s.To[1], next.From[1], 1e-9, name)
				sum += s.Length()
			}
			assert.InDelta(t, r.Intrados+r.Back+r.Left.Length+r.Right.Length, sum, 0.02*mm, name)
			assert.InDelta(t, 0, o[0].From[0], 1e-12)
			assert.InDelta(t, 0, o[0].From[1], 1e-12)
			followed(t, c, r)
		}
	}
}

// followed holds the outline to the intrados, point by point.
func followed(t *testing.T, c *layout.Ceiling, r shop.Rib) {
	t.Helper()
	s := r.From
	for _, seg := range r.Outline {
		if s >= r.To-1e-6 {
			break
		}
		// The middle of an arc lies on the normal through its centre.
		s += seg.Length() / 2
		low, high := shop.Outline{seg}.Bounds()
		assert.LessOrEqual(t, low[0], high[0])
		p := c.Vault.Intrados.Get().At(s)
		from := c.Vault.Intrados.Get().At(r.From)
		to := c.Vault.Intrados.Get().At(r.To)
		d := math.Hypot(to.Y-from.Y, to.Z-from.Z)
		uy, uz := (to.Y-from.Y)/d, (to.Z-from.Z)/d
		x, y := (p.Y-from.Y)*uy+(p.Z-from.Z)*uz, (p.Z-from.Z)*uy-(p.Y-from.Y)*uz
		if seg.Bulge != 0 {
			centre := seg.Centre()
			assert.InDelta(t, seg.Radius(), math.Hypot(x-centre[0], y-centre[1]), 0.05*mm)
		}
		s += seg.Length() / 2
	}
}

// Counted by hand: six panels of one module, two half ribs each; five rails and two
// halves in each of six bays; sixteen tenons in each of five seams; four straps on
// each of twelve half ribs, three screws each. The concourse: 28 panels in four
// pieces; 27 seams of four times the tenons of a piece, and lengthwise seams too.
func TestCountsByHand(t *testing.T) {
	n := shop.Of(sample.Room(t, nil)).Count.Get()
	assert.Equal(t, 6, n.Panels)
	assert.Equal(t, 12, n.HalfRibs)
	assert.Equal(t, 0, n.Ribs)
	assert.Equal(t, 30, n.Rails)
	assert.Equal(t, 12, n.HalfRails)
	assert.Equal(t, 80, n.Tenons)
	assert.Equal(t, 160, n.Mortises)
	assert.Equal(t, 48, n.Straps)
	assert.Equal(t, 144, n.Holes)
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		assert.Equal(t, c.Seam.Tenons.Get(), shop.Of(c).Count.Get().Tenons, name)
	}
}

// By hand, for the reading room: members 45mm wide every 400mm from 200mm; the row
// is 7080 + 5·0.4 = 7082mm long in 7144mm, so that 44mm are left at the near end.
// The straps rise in the middle of half ribs of 45mm, at 44 + 22.5 and so on; none
// stands within 10mm of 23.25mm beside a member's middle but those counted.
func TestBlocksByHand(t *testing.T) {
	near, module, gap := 44.0, 1180.0, 0.4
	bays := map[int]bool{}
	for panel := range 6 {
		start := near + float64(panel)*(module+gap)
		for _, x := range []float64{start + 22.5, start + module - 22.5} {
			off := math.Abs(math.Remainder(x-200, 400))
			if math.Abs(off-23.25) > 10 {
				bays[int(math.Floor((x-200)/400))] = true
			}
		}
	}
	c := sample.Room(t, nil)
	require.InDelta(t, near, c.NearGap()*1000, 1e-6)
	assert.Equal(t, 4*len(bays), shop.Of(c).Count.Get().Blocks)
}

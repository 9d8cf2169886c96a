package begin_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/begin"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// rooms are of 2.4m to 12m in both systems of units, with each profile in each.
var rooms = []struct{ profile, width, length, height string }{
	{"flat", "2.4m", "3m", "2.4m"},
	{"segmental", "4.57m", "5.1m", "2.7m"},
	{"semicircular", "3m", "4m", "2.7m"},
	{"elliptical", "3.2m", "4m", "2.7m"},
	{"three-centred", "12m", "9m", "4m"},
	{"pointed", "6m", "8m", "3.6m"},
	{"flat", "12ft", "16ft", "8ft"},
	{"segmental", "39ft", "30ft", "14ft"},
	{"semicircular", "10ft", "12ft", "9ft"},
	{"elliptical", "15ft", "16ft 3in", "9ft"},
	{"three-centred", "20ft", "24ft", "10ft"},
	{"pointed", "8ft", "10ft", "8ft"},
}

// fromRoom drafts from a room.
func fromRoom(profile, width, length, height string) (*begin.Draft, error) {
	units := quantity.Metric
	if !strings.HasSuffix(width, "m") {
		units = quantity.Imperial
	}
	return begin.Spec(begin.Wanted{Profile: profile, Units: units, Room: &begin.Room{Width: width, Length: length, Height: height}}, catalog.Rules())
}

// Whatever the room, the spec that is begun from it passes its own check, read
// anew, and the vault fills the room but for its gaps.
func TestBegunFromTheRoomPasses(t *testing.T) {
	for _, r := range rooms {
		t.Run(r.profile+" "+r.width, func(t *testing.T) {
			t.Parallel()
			d, err := fromRoom(r.profile, r.width, r.length, r.height)
			require.NoError(t, err)
			assert.False(t, passes(t, d), "queried")
			c := d.Sheet.Ceiling
			assert.Contains(t, string(d.Text), `"`+r.width+`"`)
			assert.Greater(t, c.SideGap(), 0.003)
			assert.Less(t, c.Room.Length.Get()-c.BuiltLength(), 0.11)
			rise := c.Vault.Rise.Get() / c.Vault.Span.Get()
			assert.LessOrEqual(t, rise, 0.87)
		})
	}
}

// By hand, a flat vault in 2.4m by 3m: 3000 − 2930 − 20 − 4·0.4 = 48.4mm is the last
// gap; 6 + 5·p + 4·0.3 may be off, with panels to 1.5mm 14.7mm, which leaves 33.7mm;
// to stand off half of a tenon of 50mm it needs 25mm and 3mm. A step of 10mm more of
// vault would leave 23.7mm, under that. Its feet do not stand out: (2400 − 2360)/2 =
// 20mm is the gap at each side, the least that a draft leaves; at its least, with the
// room 6mm and the panel p over, (2400 − 6 − 2360 − 1.5)/2 = 16.25mm.
//
// The same in 12ft by 16ft: 192 − L − 3/4 − (n−1)/64 in.
func TestGapsFromTheRoomByHand(t *testing.T) {
	const inch = 0.0254
	d, err := fromRoom("flat", "2.4m", "3m", "2.4m")
	require.NoError(t, err)
	c := d.Sheet.Ceiling
	t.Log(c.Vault.Span.Get(), c.Vault.Length.Get(), c.Panel.Tolerance.Get(), c.SideGap(), c.Panel.Along.Get())
	last := c.Room.Length.Get() - c.BuiltLength() - c.Close.FirstGap.Get()
	assert.InDelta(t, 0.0484, last, 1e-9)
	assert.InDelta(t, 0.01625, c.SideGap(), 1e-9)

	d, err = fromRoom("flat", "12ft", "16ft", "8ft")
	require.NoError(t, err)
	c = d.Sheet.Ceiling
	last = c.Room.Length.Get() - c.BuiltLength() - c.Close.FirstGap.Get()
	t.Log(c.Vault.Span.Get()/inch, c.Vault.Length.Get()/inch, c.Panel.Tolerance.Get()/inch, c.SideGap()/inch, c.Panel.Along.Get(), last/inch)
}

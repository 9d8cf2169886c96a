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

// fromEachRoom tests what is drafted from each of the rooms.
func fromEachRoom(t *testing.T, test func(t *testing.T, width string, d *begin.Draft)) {
	for _, r := range rooms {
		t.Run(r.profile+" "+r.width, func(t *testing.T) {
			t.Parallel()
			d, err := fromRoom(r.profile, r.width, r.length, r.height)
			require.NoError(t, err)
			test(t, r.width, d)
		})
	}
}

// Whatever the room, the spec that is begun from it passes its own check, read
// anew, and the vault fills the room but for its gaps.
func TestBegunFromTheRoomPasses(t *testing.T) {
	fromEachRoom(t, func(t *testing.T, width string, d *begin.Draft) {
		passes(t, d)
		c := d.Assessment.Ceiling
		assert.Contains(t, string(d.Text), `"`+width+`"`)
		assert.Greater(t, c.SideGap(), 0.003)
		assert.Less(t, c.Room.Length.Get()-c.BuiltLength(), 0.11)
		rise := c.Vault.Rise.Get() / c.Vault.Span.Get()
		assert.LessOrEqual(t, rise, 0.87)
	})
}

// By hand, a flat vault of 5 panels in 2.4m by 3m: 3000 − 2930 − 20 − 4·0.4 = 48.4mm
// is the last gap; 6 + 5·1 + 4·0.3 = 12.2mm may be off, which leaves 36.2mm; to stand
// off half of a tenon of 50mm it needs 25mm and 3mm, and a step of 10mm more of vault
// would leave 26.2mm. Its feet do not stand out: at its least, with the room 6mm and
// the panel 1mm off, the gap at each side is (2400 − 6 − 2360 − 1)/2 = 16.5mm.
//
// The same of 8 panels in 12ft by 16ft, in inches: 192 − 189 − 3/4 − 7/64 = 2 9/64;
// 1/4 + 8/32 + 7/64 = 39/64 may be off, which leaves 1 17/32; it needs 1 and 3mm (1/8),
// and a step of 1/2 more would leave 1 1/32. (144 − 1/4 − 142 1/2 − 1/32)/2 = 39/64 at
// each side.
func TestGapsFromTheRoomByHand(t *testing.T) {
	const inch = 0.0254
	for _, r := range []struct {
		width, length, height string
		last, side            float64
	}{
		{"2.4m", "3m", "2.4m", 0.0484, 0.0165},
		{"12ft", "16ft", "8ft", (2 + 9.0/64) * inch, 39.0 / 64 * inch},
	} {
		d, err := fromRoom("flat", r.width, r.length, r.height)
		require.NoError(t, err)
		c := d.Assessment.Ceiling
		assert.InDelta(t, r.last, c.Room.Length.Get()-c.BuiltLength()-c.Close.FirstGap.Get(), 1e-9)
		assert.InDelta(t, r.side, c.SideGap(), 1e-9)
	}
}

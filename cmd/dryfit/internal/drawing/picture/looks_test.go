package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// arcs are, of each of the profiles of the tests, how far across from the left
// springing a length of its arc reaches, and the length of the whole: the arithmetic of
// circles and of the ellipse, written out.
func arcs() map[string]struct {
	length float64
	across func(s float64) float64
} {
	const span = 4.2
	type arc = struct {
		length float64
		across func(s float64) float64
	}
	circle := func(rise float64) arc {
		r := (span*span/4 + rise*rise) / (2 * rise)
		half := 2 * math.Atan(2*rise/span)
		return arc{2 * r * half, func(s float64) float64 { return span/2 + r*math.Sin(s/r-half) }}
	}
	mirrored := func(half float64, across func(s float64) float64) arc {
		return arc{2 * half, func(s float64) float64 {
			if s > half {
				return span - across(2*half-s)
			}
			return across(s)
		}}
	}
	r := (2.6*2.6 + span*span/4) / span // both arcs begin upright, their centres level with the springings
	pointed := mirrored(r*math.Acos(1-span/(2*r)), func(s float64) float64 { return r - r*math.Cos(s/r) })
	h, rise := 0.9, 1.5
	R := (span*span/4 + rise*rise - span*h) / (2 * (rise - h))
	beta := math.Atan2(span/2-h, R-rise)
	haunch := h * (math.Pi/2 - beta)
	three := mirrored(haunch+R*beta, func(s float64) float64 {
		if s <= haunch {
			return h - h*math.Cos(s/h)
		}
		return span/2 - R*math.Sin(beta-(s-haunch)/R)
	})
	return map[string]arc{
		"flat": {span, func(s float64) float64 { return s }}, "segmental": circle(0.84), "semicircular": circle(2.1),
		"pointed": pointed, "three-centred": three, "elliptical": ellipse(span/2, 1.2),
	}
}

// ellipse steps along half an ellipse with axes a and b by equal angles and sums its
// chords, which are too short by 1 in 10^8.
func ellipse(a, b float64) struct {
	length float64
	across func(s float64) float64
} {
	const n = 20000
	at := func(k int) (x, y float64) {
		sin, cos := math.Sincos(math.Pi * float64(k) / n)
		return a - a*cos, b * sin
	}
	sums := make([]float64, n+1)
	for k := 1; k <= n; k++ {
		x0, y0 := at(k - 1)
		x1, y1 := at(k)
		sums[k] = sums[k-1] + math.Hypot(x1-x0, y1-y0)
	}
	return struct {
		length float64
		across func(s float64) float64
	}{sums[n], func(s float64) float64 {
		k := 0
		for k < n-1 && sums[k+1] < s {
			k++
		}
		x0, _ := at(k)
		x1, _ := at(k + 1)
		return x0 + (x1-x0)*(s-sums[k])/(sums[k+1]-sums[k])
	}}
}

// polys are the figures of a tone and a pen, in their order.
func polys(items []paper.Item, tone paper.Tone, pen paper.Pen) (out []paper.Poly) {
	for _, i := range items {
		if p, ok := i.(paper.Poly); ok && p.Tone == tone && p.Pen == pen {
			out = append(out, p)
		}
	}
	return out
}

// From below a coffer is as wide as the arc's arithmetic has it, to 0.1mm of the vault:
// narrower toward the springings.
func TestCoffersHaveTheirProjectedWidths(t *testing.T) {
	const around, within = 7, 0.0001
	for profile, arc := range arcs() {
		c := room(t, sample.Profiles()[profile], map[string]any{"grid.around": int64(around)})
		l := NewLooks([]*layout.Ceiling{c})
		items := l.plan(c, paper.Point{})
		outline := items[len(items)-2].(paper.Poly).Points
		real := func(y float64) float64 { return (y - outline[0].Y) * l.scale / 1000 }
		assert.InDelta(t, 4.2, real(outline[2].Y), within, profile)
		rails := polys(items, memberTone, paper.Hair)[:around+1] // of the first bay
		edge := func(j int, side float64) float64 {
			return arc.across(min(arc.length, max(0, arc.length*float64(j)/around+side*c.Rail.Width.Get()/2)))
		}
		widths := make([]float64, around)
		for j := range around {
			from, to := real(rails[j].Points[2].Y), real(rails[j+1].Points[0].Y)
			widths[j] = to - from
			assert.InDelta(t, edge(j, 1), from, within, "%s, coffer %d", profile, j)
			assert.InDelta(t, edge(j+1, -1)-edge(j, 1), widths[j], within, "%s, coffer %d", profile, j)
		}
		if profile == "flat" {
			assert.InDelta(t, widths[0], widths[1], within)
			assert.InDelta(t, widths[1], widths[3], within)
		} else {
			assert.Less(t, widths[0], widths[1], profile)
			assert.Less(t, widths[1], widths[3], profile)
		}
	}
}

// A point 4m in front of the eye at the left springing: the eye is 1600mm above the
// floor and the springing 2700mm, the span 4200mm; so it lies 2100/4000 to the left and
// 1100/4000 above, by hand.
func TestPerspectiveOfAPoint(t *testing.T) {
	eye := entryCamera(room(t))
	p := eye.project([]space{{eye.eye.x + 4, 0, 0}, {eye.eye.x + 4, 4.2, 0}, {eye.eye.x + 2, 2.1, -2.7}})
	require.Len(t, p, 3)
	for i, want := range []flat{{-0.525, 0.275}, {0.525, 0.275}, {0, -0.8}} {
		assert.InDelta(t, want.x, p[i].x, 1e-9)
		assert.InDelta(t, want.y, p[i].y, 1e-9)
	}
}

// A person of 1750mm who is 4500mm away is 1.75/4.5 high in a picture that is 1.9 wide
// and 80mm on paper, by hand 16.37mm, in each option; the head is above the horizon.
func TestThePersonIsTheSameInEachView(t *testing.T) {
	long := map[string]any{"vault.length": "9000mm", "room.length": "9064mm"}
	side := map[string]any{"room.entry": "side", "vault.span": "7m", "room.width": "7040mm"}
	list := []*layout.Ceiling{room(t), room(t, long), room(t, side), room(t, sample.Profiles()["pointed"])}
	l := NewLooks(list)
	for _, c := range list {
		items := l.view(c, paper.Point{})
		low, high := paper.Box(items[len(items)-3 : len(items)-1]) // before the picture's edge
		assert.InDelta(t, 1.75/4.5*80/1.9, high.Y-low.Y, 0.02)
		horizon := l.viewHigh + l.window[0].y*80/1.9
		assert.InDelta(t, (1.75-1.6)/4.5*80/1.9, horizon-low.Y, 0.02)
		assert.Less(t, high.Y, l.viewHigh)
	}
}

// The person of a room that is 2.4m deep is nearer, and no picture is higher for it than
// it is wide.
func TestAPersonInASmallRoom(t *testing.T) {
	l := NewLooks([]*layout.Ceiling{room(t, map[string]any{"vault.length": "2400mm", "room.length": "2464mm"})})
	assert.InDelta(t, 0.8*2.4, l.away, 0.01)
	assert.Less(t, l.viewHigh, float64(picture))
}

// One stands in the middle of the door in the entry's wall. The wall is 4240mm wide
// with the springings 20mm from its ends, the door 600mm from its left end as seen from
// inside, which is the right one as seen on coming in; 900mm wide where no leg says.
func TestTheEyeIsInTheDoor(t *testing.T) {
	door := map[string]any{"room.door": map[string]any{"wall": "entry", "offset": "600mm"}, "route": []any{}}
	assert.InDelta(t, 4.24-0.6-0.45-0.02, entryCamera(room(t, door)).eye.y, 1e-9)
	side := map[string]any{"room.entry": "side"}
	c := room(t, door, side)
	assert.InDelta(t, 0.6+0.45-c.NearGap(), entryCamera(c).eye.x, 1e-9)
	far := map[string]any{"room.door": map[string]any{"wall": "far", "offset": "600mm"}}
	assert.InDelta(t, 2.1, entryCamera(room(t, far)).eye.y, 1e-9)
	leg := map[string]any{"route": []any{map[string]any{"kind": "door", "name": "door", "width": "1200mm", "height": "2100mm", "wall": "200mm"}}}
	assert.InDelta(t, 4.24-0.6-0.6-0.02, entryCamera(room(t, door, leg)).eye.y, 1e-9)
}

// Grooves show where the reveal is: at the seams, at each side that faces a coffer, or
// where a layer is set back.
func TestGroovesShow(t *testing.T) {
	reveal := func(at string) map[string]any {
		return map[string]any{"grid.reveal": map[string]any{"width": "10mm", "depth": "8mm", "at": at}}
	}
	for at, want := range map[string][]stretch{"seam": {{-0.005, 0.005}}, "sides": {{-0.045, -0.035}, {0.035, 0.045}}} {
		c := room(t, reveal(at))
		s := newScene(c, camera{below: true})
		x := c.RibAt(2)
		got := s.grooves(stretch{x - 0.045, x + 0.045}, 2)
		require.Len(t, got, len(want), at)
		for i := range want {
			assert.InDelta(t, want[i].from, got[i].from-x, 1e-9)
			assert.InDelta(t, want[i].to, got[i].to-x, 1e-9)
		}
		end := s.grooves(stretch{c.RibAt(0), c.RibAt(0) + 0.045}, 0)
		assert.Len(t, end, len(want)-1, "%s: an end faces one coffer, and has no seam", at)
		assert.NotEmpty(t, polys(s.laid(paper.Point{}, 10), grooveTone, paper.None))
	}
}

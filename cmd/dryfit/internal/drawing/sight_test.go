package drawing

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/wayin"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// routes are the samples that have a way in.
func routes(t *testing.T) map[string]sheet.Input {
	out := map[string]sheet.Input{}
	for _, name := range sample.Names(t) {
		s := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		if s.Results != nil && len(s.Results.Carrying()) > 0 {
			out[name] = sheet.Input{Assessment: s, Version: "test", On: "2026-11-25"}
		}
	}
	require.Greater(t, len(out), 5)
	return out
}

// grouped is what lies in a group of the sheet, however deep.
func grouped(items []paper.Item, id string) (out []paper.Item) {
	for _, i := range items {
		g, ok := i.(paper.Group)
		switch {
		case ok && (id == "" || g.ID == id):
			out = append(out, grouped(g.Items, "")...)
		case ok:
			out = append(out, grouped(g.Items, id)...)
		case id == "":
			out = append(out, i)
		}
	}
	return out
}

func texts(items []paper.Item) (out []string) {
	for _, i := range items {
		if t, ok := i.(paper.Text); ok {
			out = append(out, t.Text)
		}
	}
	return out
}

// Each leg is drawn in plan and in section with its wrap dashed in both, and the
// gap that is dimensioned is the clearance that is said; the room is drawn with
// them, and nothing meets anything.
func TestEachLegIsInPlanAndInSection(t *testing.T) {
	for name, in := range routes(t) {
		s, err := Draw("route", in, sheet.Options{})
		require.NoError(t, err)
		assert.Empty(t, draft.Overlaps(s), name)
		all := texts(grouped(s.Items, ""))
		for _, l := range in.Assessment.Results.Carrying() {
			way := l.Way.Get()
			drawn := grouped(s.Items, fmt.Sprintf("leg-%s", l.Number()))
			said := texts(drawn)
			assert.Subset(t, said, []string{"plan", "section"}, name)
			assert.Equal(t, 2, dashes(drawn), "%s %s: wraps", name, l.Kind.Get())
			if way.Climbs {
				assert.Contains(t, all, "passes, "+in.Length(way.Margin)+" or more clear on every side")
			} else if way.Outcome == passage.Passes {
				assert.Contains(t, all, in.Dim(way.Margin)+" gap", "%s %s", name, l.Kind.Get())
				assert.Contains(t, all, "passes, "+in.Length(way.Margin)+" clear on every side")
			}
		}
		drawn := grouped(s.Items, roomFigure)
		assert.Subset(t, texts(drawn), []string{"plan", "section"}, name)
		assert.Equal(t, 2, dashes(drawn), "%s: wraps in the room", name)
	}
}

// dashes is how many outlines are dashed.
func dashes(drawn []paper.Item) (n int) {
	for _, i := range drawn {
		if p, ok := i.(paper.Poly); ok && p.Dash == paper.Hidden {
			n++
		}
	}
	return n
}

// In the room the gap that is dimensioned is what the diagonal of the panel's box leaves.
func TestTheGapInTheRoom(t *testing.T) {
	for name, in := range routes(t) {
		r, c := in.Assessment.Results.Room(), in.Ceiling()
		flat, tipped := r.Poses()
		across := wayin.TurnedFlat(flat, r.Across, 100, c.Room.Height.Get())[0]
		assert.InDelta(t, r.Across-r.Flat, across.Gap.Size, 1e-6, name)
		up := wayin.TippedDown(tipped, 100, c.Room.Height.Get())[1]
		assert.InDelta(t, c.Room.Height.Get()-r.Tipped, up.Gap.Size, 1e-6, name)
	}
}

// The least gap that is drawn is the motion's margin, of every kind of leg and
// profile, and where the panel does not go through an opening as well.
func TestGapsAreTheMargins(t *testing.T) {
	short, kinds := 0, map[string]bool{}
	try := func(name string, in sheet.Input) {
		for _, l := range in.Assessment.Results.Carrying() {
			way := l.Way.Get()
			pose, ok := way.Pose()
			require.True(t, ok, name)
			if way.Tilted || pose.Plane == carrying.Corner && way.Margin < 0 {
				continue // nearer between two of its stations
			}
			two := wayin.Sights(l, pose)
			least := min(two[0].Gap.Size, two[1].Gap.Size)
			near := 0.0005
			if pose.Plane == carrying.Wall {
				near = stations
			}
			if way.Climbs {
				assert.Greater(t, least, way.Margin-near, "%s: a stair has that and more", name)
			} else {
				assert.InDelta(t, way.Margin, least, near, "%s %s: %s", name, l.Kind.Get(), way.Motion)
			}
			kinds[string(l.Kind.Get())] = true
			if least < 0 {
				short++
			}
		}
	}
	for name, in := range routes(t) {
		try(name, in)
	}
	for name, change := range profiles() {
		for _, route := range []map[string]any{
			{"route.2.width": "600mm", "route.2.height": "1500mm"}, {"route.1.door.width": "900mm", "route.1.door.height": "1000mm"},
		} {
			try(name, input(t, change, route))
		}
	}
	assert.Positive(t, short)
	assert.Len(t, kinds, len(spec.LegKinds()), "%v", kinds)
}

// A vehicle has its load inside, each panel of it between floor and roof, and no
// two in each other.
func TestAVehicleShowsItsLoad(t *testing.T) {
	in := routes(t)["reading-room"]
	leg := in.Assessment.Results.Carrying()[0]
	load := leg.Way.Get().Stowed()
	require.Len(t, load, min(leg.Way.Get().Load, in.Ceiling().Panel.Count.Get()))
	for _, q := range load {
		for _, p := range q.Side {
			assert.True(t, p.Y > 0 && p.Y < leg.Inside.Height.Get() && p.X > 0 && p.X < leg.Inside.Length.Get(), "%v", p)
		}
	}
	s, err := Draw("route", in, sheet.Options{})
	require.NoError(t, err)
	panels := 0
	for _, i := range grouped(s.Items, "leg-1") {
		if p, ok := i.(paper.Poly); ok && p.Closed && p.Tone == paper.Paper+1 {
			panels++
		}
	}
	assert.Equal(t, 2*len(load), panels, "in plan and in section")
}

// A finding's place lies on the sheet; that of one of the whole route was above
// its frame where there were two rows of legs.
func TestMarksOfTheRouteLieOnTheSheet(t *testing.T) {
	const border = 10 // mm
	for name, in := range routes(t) {
		s, err := Draw("route", in, sheet.Options{})
		require.NoError(t, err)
		for n, p := range s.Marks {
			assert.True(t, p.X > border && p.Y > border && p.X < s.Width-border && p.Y < s.Height-border, "%s (%d) %v", name, n, p)
		}
		for _, i := range grouped(s.Items, "") {
			if l, ok := i.(paper.Line); ok && l.Marked {
				assert.Greater(t, math.Min(l.A.Y, l.B.Y), float64(border)-1, "%s: a leader", name)
			}
		}
	}
}

// The wrap around a square lies so far outside on every side, whichever way
// round the square runs.
func TestTheWrapIsOutside(t *testing.T) {
	square := []space.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
	for range 2 {
		for _, q := range wayin.Grown(square, 0.1) {
			assert.InDelta(t, 0.6, max(math.Abs(q.X-0.5), math.Abs(q.Y-0.5)), 1e-12)
			assert.InDelta(t, 0.6, min(math.Abs(q.X-0.5), math.Abs(q.Y-0.5)), 1e-12)
		}
		slices.Reverse(square)
	}
}

// On a stair the panel is drawn the right way up: what goes on from the landing's side
// rises, so that what of the panel is past it is no lower than the first step there.
func TestAStairIsDrawnTheRightWayUp(t *testing.T) {
	drawn := 0
	for _, in := range routes(t) {
		for _, l := range in.Assessment.Results.Carrying() {
			pose, ok := l.Way.Get().Pose()
			if !ok || !l.Way.Get().Climbs || pose.Plane != carrying.Corner || l.Turn.Get() != "quarter" {
				continue
			}
			drawn++
			s := wayin.Sights(l, pose)[1]
			for _, q := range s.Panel {
				if on := q.X - l.Landing.Width.Get(); on > 0 {
					assert.Greater(t, q.Y, on*l.Rise.Get()/l.Going.Get(), "%v", l.Name.Get())
				}
			}
			assert.GreaterOrEqual(t, s.Gap.Size, l.Way.Get().Margin-0.0005)
		}
	}
	assert.Positive(t, drawn)
}

// A straight stair on which the panel is turned is drawn along its flight: eight steps of
// 166mm by 274mm end 1328mm under the landing, the soffit is as much lower at the foot, and
// the landing's walls are 480mm left and 1928 - 480 - 968 = 480mm right of the flight's. The
// panel is over each nosing and under the soffit.
func TestAStraightStairIsDrawnAlongItsFlight(t *testing.T) {
	source := sample.Source(t, sample.ReadingRoom, `profile = "segmental"`, `profile = "semicircular"`, "rise    = \"840mm\"\n", "",
		`span    = "4200mm"`, `span    = "4074mm"`, `length  = "7080mm"`, `length  = "8496mm"`, `around    = 1`, `around    = 2`)
	source = append(source, `
[[route]]
name     = "back stair"
kind     = "stair"
width    = "968mm"
headroom = "2155mm"
rise     = "166mm"
going    = "274mm"
risers   = 8
turn     = "none"
ends     = "corridor"
landing  = { width = "1928mm", length = "1200mm", left = "480mm" }
`...)
	s := review.Spec("s", source, review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
	require.NotNil(t, s.Results)
	legs := s.Results.Carrying()
	l := legs[len(legs)-1]
	pose, ok := l.Way.Get().Pose()
	require.True(t, ok)
	require.Equal(t, carrying.Ascent, pose.Plane)
	require.True(t, l.Way.Get().Tilted)
	sights := wayin.Sights(l, pose)
	above, section := sights[0], sights[1]
	assert.InDelta(t, -0.48, above.Lines[0][2].Y, 1e-9)
	assert.InDelta(t, 0.968+0.48, above.Lines[1][2].Y, 1e-9)
	assert.GreaterOrEqual(t, above.Gap.Size, l.Way.Get().Margin-0.0005)
	steps, soffit := section.Lines[0], section.Lines[1]
	assert.InDelta(t, -1.328, steps[len(steps)-1].Y, 1e-9)
	assert.InDelta(t, 2.155-1.328, soffit[len(soffit)-1].Y, 1e-9)
	for _, q := range section.Panel {
		line := max(-1.328, min(0, q.X)*166/274)
		assert.Greater(t, q.Y, line, "%v", q)
		assert.Less(t, q.Y, line+2.155, "%v", q)
	}
}

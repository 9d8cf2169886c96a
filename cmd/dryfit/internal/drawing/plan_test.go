package drawing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// Ribs and rails have their names, and blocking lies wherever a strap misses the
// framing. By hand: members every 400mm from 200mm, 45mm wide; panels from 44mm, 1180mm
// each. The seams lie at 1224, 2404, 3585, 4765 and 5946mm, the ends' half ribs at 67 and
// 7104mm: all farther than 22.5mm from a member, so 7 lines of 4 straps.
func TestThePlanNamesItsGrid(t *testing.T) {
	s, err := Draw("plan", input(t), sheet.Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"1", "2", "3", "4", "5", "6", "7", "A", "B", "C", "D", "E", "F", "G"}, texts(group(t, s, "bubbles")))
	assert.Len(t, group(t, s, "blocking"), 7*4)
	assert.Contains(t, texts(s.Items), "blocking where a strap")
	assert.Contains(t, texts(s.Items), "90mm across,")
	low, high := paper.Box([]paper.Item{group(t, s, "room")[0]})
	for _, item := range group(t, s, "blocking") { // none beyond a wall
		l, h := paper.Box([]paper.Item{item})
		assert.True(t, l.X >= low.X && h.X <= high.X && l.Y >= low.Y && h.Y <= high.Y)
	}
	// Straps that come up to members need none: of 99mm every 100mm, fixed under them.
	under, err := Draw("plan", input(t, map[string]any{"room.framing.spacing": "100mm", "room.framing.member": "99mm", "strap.fixing.top": "underside"}), sheet.Options{})
	require.NoError(t, err)
	assert.Empty(t, group(t, under, "blocking"))
	// A shop that lets straps stand off a member's side by 400mm asks for none.
	firm, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\"strap.framing.face\" = { value = \"400mm\", source = \"invented\" }\n"))
	require.Empty(t, problems)
	far, err := Draw("plan", reviewed(t, sample.Tree(t, sample.ReadingRoom, nil), standards.With(firm)), sheet.Options{})
	require.NoError(t, err)
	assert.Empty(t, group(t, far, "blocking"))
	bare, err := Draw("plan", input(t, map[string]any{"room.framing.blocking": false}), sheet.Options{})
	require.NoError(t, err)
	assert.Contains(t, texts(bare.Items), "no blocking is stated")
}

// The arrow of the entry points at the middle of the door, where its place is known: here
// 1000mm from the corner at the right springing, and 900mm wide, as the usual one is. The
// wall is 4240mm long, so that it is 4240 − 1000 − 900/2 = 2790mm from the other corner, at
// 1:20 139.5mm.
func TestTheEntryIsAtTheDoor(t *testing.T) {
	s, err := Draw("plan", input(t, map[string]any{"room.door": map[string]any{"wall": "entry", "offset": "1000mm"}}), sheet.Options{Scale: 20})
	require.NoError(t, err)
	items := group(t, s, "room")
	room, _ := paper.Box(items[:1])
	for _, item := range items {
		if p, ok := item.(paper.Poly); ok && len(p.Points) == 3 {
			assert.InDelta(t, room.X, p.Points[0].X, 0.01)
			assert.InDelta(t, 139.5, p.Points[0].Y-room.Y, 0.01)
			assert.NotContains(t, texts(s.Items), "entry")
			return
		}
	}
	t.Error("there is no arrow")
}

// Each coffer has its number in it, where that has room. By hand, of coffer 2, 3: its ribs'
// middles lie at 2404 and 3585mm from the near wall, 45mm to each side, so that it goes from
// 2449 to 3540mm. Its rails' middles lie at 772.4 and 1544.9mm along the arc of 3045mm, less
// 45mm each: 2100 + 3045·sin((817.4 − 2317.3)/3045) = 660mm and 2100 + 3045·sin((1499.9 −
// 2317.3)/3045) = 1292mm from the springing, and 20mm more from the wall.
func TestCoffersAreNumbered(t *testing.T) {
	s, err := Draw("plan", input(t), sheet.Options{Scale: 20})
	require.NoError(t, err)
	room, _ := paper.Box(group(t, s, "room")[:1])
	numbers := textsOf(group(t, s, "insides"))
	require.Len(t, numbers, 36)
	found := false
	for _, n := range numbers {
		if n.Text == "2, 3" {
			found = true
			low, high := n.Box()
			assert.True(t, low.X-room.X > 2449./20 && high.X-room.X < 3540./20, "%v", low.X-room.X)
			assert.True(t, low.Y-room.Y > 680./20 && high.Y-room.Y < 1312./20, "%v", low.Y-room.Y)
		}
	}
	assert.True(t, found)
	dense, err := Draw("plan", input(t, map[string]any{"grid.around": int64(40), "grid.along": int64(60)}), sheet.Options{})
	require.NoError(t, err)
	assert.NotContains(t, texts(dense.Items), "1, 1")
}

// The north arrow points where the spec says, clockwise from the top of the plan: of 30deg
// by sin 30° = 1/2 of its length to the right and by cos 30° = 0.866 up, of 270deg straight
// to the left. Its head is 6mm from the middle of its circle. N stands beyond it, and nothing
// is drawn where the spec is silent.
func TestTheNorthArrow(t *testing.T) {
	for north, tip := range map[string]paper.Point{
		"0deg": {X: 0, Y: -6}, "30deg": {X: 3, Y: -5.196}, "90deg": {X: 6, Y: 0}, "180deg": {X: 0, Y: 6}, "270deg": {X: -6, Y: 0},
	} {
		for _, name := range []string{sample.ReadingRoom, "alcove", "concourse", "lantern-hall", "gallery-soffit"} {
			s, err := Draw("plan", ceiling(t, name, map[string]any{"project.north": north}), sheet.Options{})
			require.NoError(t, err)
			assert.Empty(t, draft.Overlaps(s), "%s, %s", name, north)
			items := group(t, s, "north")
			middle, head, n := items[0].(paper.Arc).C, items[1].(paper.Poly).Points[0], items[2].(paper.Text)
			assert.InDelta(t, tip.X, head.X-middle.X, 0.002, north)
			assert.InDelta(t, tip.Y, head.Y-middle.Y, 0.002, north)
			low, high := n.Box()
			assert.InDelta(t, math.Atan2(tip.Y, tip.X), math.Atan2((low.Y+high.Y)/2-middle.Y, (low.X+high.X)/2-middle.X), 0.1, north)
			assert.Equal(t, "N", n.Text)
		}
	}
	s, err := Draw("plan", input(t), sheet.Options{})
	require.NoError(t, err)
	assert.Empty(t, group(t, s, "north"))
	assert.NotContains(t, texts(s.Items), "N")
}

// Nothing is written within 3mm of the lower mark of the section, but its S.
func TestTheSectionMarkStandsClear(t *testing.T) {
	for _, name := range sample.Names(t) {
		assessment := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		s, err := Draw("plan", sheet.Input{Assessment: assessment, Version: "test", On: "2026-11-25"}, sheet.Options{})
		require.NoError(t, err)
		if assessment.Ceiling.Grid.Along.Get() == 1 {
			continue // there is no other module
		}
		items := group(t, s, "cut")
		lower := items[len(items)/2:]
		low, high := paper.Box(lower)
		for _, text := range textsOf(s.Items) {
			l, h := text.Box()
			if apart := max(l.X-high.X, low.X-h.X, l.Y-high.Y, low.Y-h.Y); text.Text != "S" {
				assert.Greater(t, apart, 3.0, "%s: %s", name, text.Text)
			}
		}
	}
}

// The plan names the door where the eye stands in it, beside the room's wall at the
// left: 1050mm from the far springing's wall of a room that is 4240mm wide.
func TestThePlanNamesTheDoor(t *testing.T) {
	in := input(t, map[string]any{"room.door": map[string]any{"wall": "entry", "offset": "600mm"}, "route": []any{}})
	s, err := Draw("plan", in, sheet.Options{})
	require.NoError(t, err)
	low, high := paper.Box(group(t, s, "room"))
	at, scale := titled(s)["door"], (high.Y-low.Y)/4240
	assert.Less(t, at.X, low.X)
	assert.InDelta(t, high.Y-(600+450)*scale, at.Y, 4)
	in = input(t, map[string]any{"room.door": map[string]any{"wall": "far", "offset": "600mm"}})
	s, err = Draw("plan", in, sheet.Options{})
	require.NoError(t, err)
	assert.NotContains(t, titled(s), "door")
}

// titled are where the texts of a sheet begin.
func titled(s paper.Sheet) map[string]paper.Point {
	out := map[string]paper.Point{}
	for _, item := range s.Items {
		if t, ok := item.(paper.Text); ok {
			out[t.Text] = t.At
		}
	}
	return out
}

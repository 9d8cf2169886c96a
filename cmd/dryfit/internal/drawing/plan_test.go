package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
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
	s, err := Draw("plan", input(t), Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"1", "2", "3", "4", "5", "6", "7", "A", "B", "C", "D", "E", "F", "G"}, texts(group(t, s, "bubbles")))
	assert.Len(t, group(t, s, "blocking"), 7*4)
	assert.Contains(t, texts(s.Items), "blocking where a strap")
	assert.Contains(t, texts(s.Items), "90mm across,")
	low, high := bounds([]paper.Item{group(t, s, "room")[0]})
	for _, item := range group(t, s, "blocking") { // none beyond a wall
		l, h := bounds([]paper.Item{item})
		assert.True(t, l.X >= low.X && h.X <= high.X && l.Y >= low.Y && h.Y <= high.Y)
	}
	// Straps that come up to members need none: of 99mm every 100mm, fixed under them.
	under, err := Draw("plan", input(t, map[string]any{"room.framing.spacing": "100mm", "room.framing.member": "99mm", "strap.fixing.top": "underside"}), Options{})
	require.NoError(t, err)
	assert.Empty(t, group(t, under, "blocking"))
	// A shop that lets straps stand off a member's side by 400mm asks for none.
	firm, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\"strap.framing.face\" = { value = \"400mm\", source = \"invented\" }\n"))
	require.Empty(t, problems)
	loose, faults := review.Tree(sample.Tree(t, sample.ReadingRoom, nil), review.Options{Rules: catalog.Rules(), Standards: standards.With(firm), On: "2026-11-25"})
	require.Empty(t, faults)
	far, err := Draw("plan", Input{Sheet: loose, Version: "test", On: "2026-11-25"}, Options{})
	require.NoError(t, err)
	assert.Empty(t, group(t, far, "blocking"))
	bare, err := Draw("plan", input(t, map[string]any{"room.framing.blocking": false}), Options{})
	require.NoError(t, err)
	assert.Contains(t, texts(bare.Items), "no blocking is stated")
}

// The arrow of the entry points at the middle of the door, where its place is known: here
// 1000mm from the corner at the right springing, and 900mm wide, as the usual one is. The
// wall is 4240mm long, so that it is 4240 − 1000 − 900/2 = 2790mm from the other corner, at
// 1:20 139.5mm.
func TestTheEntryIsAtTheDoor(t *testing.T) {
	s, err := Draw("plan", input(t, map[string]any{"room.door": map[string]any{"wall": "entry", "offset": "1000mm"}}), Options{Scale: 20})
	require.NoError(t, err)
	items := group(t, s, "room")
	room, _ := bounds(items[:1])
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

func TestLetters(t *testing.T) {
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		assert.Equal(t, want, letters(n))
	}
}

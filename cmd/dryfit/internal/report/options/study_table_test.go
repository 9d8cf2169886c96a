package options

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Strips of any widths stand in parts of at most 12, each within the width and with
// the verdict in the first; none is lost, and their order stays.
func TestPartsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		verdict := strip{width: rapid.SampledFrom([]int{4, 7, 15}).Draw(t, "verdict")}
		option := strip{width: rapid.IntRange(6, 10).Draw(t, "option")}
		var all []strip
		for i, w := range rapid.SliceOfN(rapid.IntRange(1, 60), 1, 60).Draw(t, "widths") {
			all = append(all, strip{width: w, lines: []string{string(rune('A' + i))}})
		}
		room := tableWidth - option.width
		var again []strip
		for i, part := range parts(all, room-between-verdict.width, room) {
			again = append(again, part...)
			total := option.width
			for _, s := range part {
				total += between + s.width
			}
			if i == 0 {
				total += between + verdict.width
			}
			assert.LessOrEqual(t, total, tableWidth)
			assert.LessOrEqual(t, len(part), mostColumns)
		}
		assert.Equal(t, all, again)
	})
}

// Twelve strips of 4, as of percentages, stand in one table with the longest verdict:
// 8 + 12·6 + 2 + 15 = 97.
func TestTwelveStandSideBySide(t *testing.T) {
	strips := make([]strip, mostColumns)
	for i := range strips {
		strips[i].width = 4
	}
	assert.Len(t, parts(strips, tableWidth-8-between-len("PASS WITH NOTES"), tableWidth-8), 1)
	assert.Len(t, parts(append(strips, strip{width: 1}), 99, 99), 2)
}

func TestOneTooWideStandsAlone(t *testing.T) {
	list := parts([]strip{{width: 5}, {width: 200}, {width: 5}}, 70, 90)
	assert.Len(t, list, 3)
	assert.Len(t, parts([]strip{{width: 200}}, 70, 90), 1)
}

func TestHeadsAreParted(t *testing.T) {
	for head, want := range map[string]string{
		"panel mass": "panel|mass", "sag": "|sag", "look.member-share": "look.|member-share", "of allowable": "of|allowable",
		"look.align.1": "look.|align.1",
	} {
		assert.Equal(t, want, strings.Join(newStrip(head, nil).lines, "|"))
	}
}

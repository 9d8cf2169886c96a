package markdown

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Of far more pieces than have room each is shown or counted, what fails before the rest,
// and no more is kept than two comments of a rank.
func TestWhatIsBehindIsCounted(t *testing.T) {
	const each = 20000
	var g Gathered
	for i := range each {
		for _, what := range []struct {
			rank rank
			name string
		}{{Remarks, "note"}, {Fails, "hold"}} {
			g.Add(Piece{Rank: what.rank, What: what.name, Forms: []string{
				fmt.Sprintf("%s %d: %s\n", what.name, i, strings.Repeat("long ", 40)), fmt.Sprintf("%s %d\n", what.name, i),
			}})
		}
	}
	assert.Less(t, len(g.pieces), 2*each)
	text, left := RoomFor(Limit, &g)
	assert.LessOrEqual(t, len(text), Limit)
	for _, name := range []string{"note", "hold"} {
		assert.Equal(t, each, strings.Count(text, name+" ")+left[name], name)
	}
	assert.Greater(t, len(text), Limit-len("hold 10000\n"))
	assert.True(t, strings.HasPrefix(text, "hold 0\nhold 1\n"), "in order, in their shortest form")
}

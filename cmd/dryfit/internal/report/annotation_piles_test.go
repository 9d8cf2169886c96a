package report

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Piles are written as all their annotations are in one list: each once and in order, and
// where a forge would not show all, the tenth lists the rest, as far as there is room.
func TestPilesAreWrittenAsOneList(t *testing.T) {
	r := rand.New(rand.NewPCG(27, 6))
	for i := range 200 {
		word := []string{"error", "notice"}[i%2]
		var piles []*pile
		var all []note
		for range 1 + r.IntN(4) {
			p := new(pile)
			for range r.IntN([]int{3, 12, 600}[r.IntN(3)]) {
				n := note{word, fmt.Sprintf("%d.ceiling.toml", len(all)), "line=3,endLine=3", "hold bend.radius", strings.Repeat("w", r.IntN(200))}
				p.add(n)
				all = append(all, n)
			}
			piles = append(piles, p)
		}
		var want, got bytes.Buffer
		for i, n := range all {
			if i == 9 && len(all) > 10 && word == "error" {
				var listed []string
				for _, o := range all[9:] {
					listed = append(listed, o.listed())
				}
				restOf(n, listed, len(listed)).write(&want)
			}
			n.write(&want)
		}
		require.NoError(t, writePiles(&got, word, piles))
		assert.Equal(t, want.String(), got.String())
		assert.Equal(t, len(all), strings.Count(got.String(), "hold bend.radius::"))
	}
}

package paper

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is in groups comes in their places, however deep, and who has enough gets no more.
func TestUngrouped(t *testing.T) {
	a, b, c, d := Text{Text: "a"}, Line{B: Point{X: 1}}, Text{Text: "c"}, Arc{R: 1}
	items := []Item{a, Group{ID: "outer", Items: []Item{Group{ID: "empty"}, b, Group{ID: "inner", Items: []Item{c}}}}, d}
	assert.Equal(t, []Item{a, b, c, d}, slices.Collect(Ungrouped(items)))
	assert.Empty(t, slices.Collect(Ungrouped(nil)))
	for most := 1; most <= 4; most++ {
		var got []Item
		for item := range Ungrouped(items) {
			if got = append(got, item); len(got) == most {
				break
			}
		}
		assert.Equal(t, []Item{a, b, c, d}[:most], got)
	}
}

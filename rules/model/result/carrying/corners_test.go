package carrying

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage/space"
)

// Points in a side, off it by round-off, are no corners, wherever the hull begins.
func TestCorners(t *testing.T) {
	hull := []space.Point{{X: 0, Y: 0}, {X: 0.3, Y: -1e-16}, {X: 1, Y: 0}, {X: 1, Y: 0.5}, {X: 1 + 1e-16, Y: 0.7}, {X: 1, Y: 1}, {X: 0, Y: 1}, {X: 0, Y: 0.4}}
	want := map[space.Point]bool{{X: 0, Y: 0}: true, {X: 1, Y: 0}: true, {X: 1, Y: 1}: true, {X: 0, Y: 1}: true}
	for i := range hull {
		got := corners(append(append([]space.Point{}, hull[i:]...), hull[:i]...))
		assert.Len(t, got, 4)
		for _, q := range got {
			assert.True(t, want[q], "%v", q)
		}
	}
	arc := []space.Point{{X: 0, Y: 0}, {X: 0.005, Y: -1e-6}, {X: 0.01, Y: 0}, {X: 0.005, Y: 0.1}}
	assert.Len(t, corners(arc), 4, "an arc of 3m in pieces of 5mm keeps them")
}

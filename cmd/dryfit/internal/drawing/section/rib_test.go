package section

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/sample"
)

// A groove at the seam is in the two layers beside it alone, however many a sawn
// rib has; what is drawn of the others is a rectangle.
func TestRevealAtTheSeam(t *testing.T) {
	sawn := 0
	for _, name := range sample.Names(t) {
		d := &ribOf{c: sample.Ceiling(t, name, map[string]any{"grid.reveal": map[string]any{"width": "4mm", "depth": "6mm", "at": "seam"}})}
		if !d.seam() {
			continue
		}
		grooved, parts := 0, d.parts()
		for _, p := range parts {
			if len(d.outline(p)) > 4 {
				grooved++
			}
		}
		if len(parts) > 2 {
			sawn++
		}
		assert.Equal(t, 2, grooved, name)
	}
	assert.Positive(t, sawn)
}

package carrying_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
)

// By hand, of panels 1180mm long in a room of 4240mm by 7110mm, 2700mm high at the
// springing, that is known to 4mm: √(2262² + 1180²) = 2551.3mm and √(1180² + 277.8²) =
// 1212.3mm have room; a box 4237mm wide has none between walls 4236mm apart, and one
// 2430mm high takes √(1180² + 2430²) = 2701mm, more than the 2700mm.
func TestBoxIn(t *testing.T) {
	c := sample.Room(t, nil)
	b := carrying.BoxIn(c, 2.262, 0.2778)
	assert.InDelta(t, 2.5513, b.Flat, 5e-5)
	assert.InDelta(t, 1.2123, b.Tipped, 5e-5)
	assert.True(t, b.Level)
	assert.True(t, b.Down)
	assert.False(t, carrying.BoxIn(c, 4.237, 0.2).Down)
	assert.False(t, carrying.BoxIn(c, 4.237, 0.2).Level)
	assert.False(t, carrying.BoxIn(c, 2, 2.430).Down)
}

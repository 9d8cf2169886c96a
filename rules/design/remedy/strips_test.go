package remedy

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec/quantity"
)

// Whatever is offered of a laminated rib's depth or strip, whole strips make up
// the depth: 60mm is 9 strips of 6.7mm and no number of 7mm or 5.4mm; 2 1/4in,
// 72/32, is 8 of 9/32in and no number of 7/32in or 5/32in.
func TestStripsAndDepthAgree(t *testing.T) {
	texts := func(l ladder) (out []string) {
		for _, r := range l.list {
			out = append(out, r.text)
		}
		return out
	}
	strips := texts(stripLadder(ribStrip, 0.060, 0.007, quantity.Metric))
	assert.Subset(t, strips, []string{"5mm", "6mm", "6.7mm", "7.5mm", "20mm"})
	assert.NotContains(t, strips, "7mm")
	assert.NotContains(t, strips, "5.4mm")
	strips = texts(stripLadder(ribStrip, 2.25*inch, 7.0/32*inch, quantity.Imperial))
	assert.Subset(t, strips, []string{"3/16in", "1/4in", "9/32in", "3/8in"})
	assert.NotContains(t, strips, "7/32in")
	assert.NotContains(t, strips, "5/32in")
	assert.Subset(t, texts(stripLadder(ribDepth, 0.060, 0.007, quantity.Metric)), []string{"49mm", "56mm", "63mm", "70mm"})
	for _, r := range stripLadder(ribDepth, 0.060, 0.007, quantity.Metric).list {
		assert.InDelta(t, 0, math.Mod(r.si+1e-9, 0.007), 2e-9, r.text)
	}
}

// What a search offers for a rib of impossible strips passes by all rules.
func TestImpossibleStripsAreCured(t *testing.T) {
	r := sought(t, changed(t, `lamination   = "4mm"`, `lamination   = "7mm"`), Options{Review: reviewing(false), Answers: 2})
	_, open := find(r.Open, "bend.strips")
	require.True(t, open)
	require.NotEmpty(t, r.Answers)
	for _, a := range r.Answers {
		_, still := find(a.Assessment.Findings, "bend.strips")
		assert.False(t, still, a.Changes)
	}
}

package review_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
	"dryfit/rules/review"
)

// A review of a text that changes, which knows what the one before solved, decided and
// found, finds what a review by itself does, and offers the same.
func TestAReviewAfterAnotherFindsTheSame(t *testing.T) {
	after := options()
	after.Frames, after.Search.Memory = new(hanging.Memory), carrying.NewMemory()
	offers := 0
	for _, change := range [][]string{
		nil,
		{`width  = "2400mm"`, `width  = "400mm"`},
		{`width  = "2400mm"`, `width  = "400mm"`, `"1500mm"`, `"1100mm"`},
		{`width  = "2400mm"`, `width  = "800mm"`, `"2040mm"`, `"1960mm"`},
		{`onward = "2400mm"`, `onward = "800mm"`},
		{`first_gap = "18mm"`, `first_gap = "30mm"`},
		{`first_gap = "18mm"`, "\n\nfirst_gap = \"30mm\""},
		{`lamination   = "4mm"`, ``},
		{`units    = "metric"`, `units    = "imperial"`},
		{`units    = "metric"`, `units    = "imperial"`, `first_gap = "18mm"`, `first_gap = "30mm"`},
		{`stations  = ["10%", "36%", "64%", "90%"]`, `stations  = ["10%", "90%"]`},
		nil,
	} {
		src := sample.Source(t, "study", change...)
		alone, again := review.Spec("s", src, options()), review.Spec("s", src, after)
		require.Equal(t, len(alone.Findings), len(again.Findings), change)
		for i, f := range alone.Findings {
			g := again.Findings[i]
			assert.Equal(t, f.Rule.ID, g.Rule.ID, change)
			assert.Equal(t, f.Text, g.Text, change)
			assert.Equal(t, f.Passes, g.Passes, "%v: %s", change, f.Text)
			assert.Equal(t, f.Start, g.Start, change)
			assert.Equal(t, f.Fingerprint, g.Fingerprint, change)
			if f.Passes != nil {
				offers++
			}
		}
		assert.Equal(t, alone.Verdict, again.Verdict, change)
		assert.Equal(t, alone.Assumed, again.Assumed, change)
		assert.Equal(t, awaits(alone), awaits(again), change)
		assert.Equal(t, alone.Counts, again.Counts, change)
		after.Search.Memory, after.Like = after.Search.Memory.Next(), again.Said
	}
	assert.Equal(t, 8, offers)
}

// awaits is what is said of the absent keys.
func awaits(s *review.Assessment) (out []string) {
	for _, a := range s.Awaited {
		for _, r := range a.Rules {
			out = append(out, a.Key+": "+r.ID)
		}
	}
	return out
}

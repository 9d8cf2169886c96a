package review_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Whatever is left out, of every ceiling what is referred is said, and all the
// rest is counted as not checked, by its rule.
func TestLeavingOut(t *testing.T) {
	files, err := filepath.Glob("../../testdata/specs/*.ceiling.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	referrers := map[string]bool{}
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		o := options()
		o.Offers = false
		all := review.Spec(file, src, o)
		o.LeftOut = func(*engine.Rule) string { return "for a test" }
		none := review.Spec(file, src, o)
		if all.Ceiling == nil {
			assert.Equal(t, all.Problems, none.Problems)
			continue
		}
		said := func(s *review.Assessment) (refers, others []string) {
			for _, f := range s.Findings {
				if f.Severity != engine.Refer {
					others = append(others, f.Rule.ID)
					continue
				}
				refers = append(refers, f.Rule.ID+" "+f.At+" "+f.Text)
				if f.Rule.Severity != engine.Refer {
					referrers[f.Rule.ID] = true
				}
			}
			return refers, others
		}
		refersAll, _ := said(all)
		refersNone, others := said(none)
		assert.Equal(t, refersAll, refersNone, file)
		assert.Empty(t, others, file)
		assert.Empty(t, none.Loosened, file)
		c := none.Counts
		assert.Equal(t, all.Counts.Referred, c.Referred, file)
		left := map[string]bool{}
		for _, n := range none.NotChecked {
			left[n.Rule.ID] = n.Why == "for a test" || n.Rule.Severity == engine.Refer
		}
		for _, r := range o.Rules {
			assert.True(t, r.Severity == engine.Refer || left[r.ID], "%s: %s", file, r.ID)
		}
		assert.Equal(t, len(left), c.NotChecked+c.Uncomputed, file)
	}
	assert.NotEmpty(t, referrers, "a rule that holds or queries refers something too")
}

// One rule left out takes with it what it found, and its keys that were assumed;
// what the others found stays, with the value that passes all rules.
func TestLeavingOneOut(t *testing.T) {
	src := []byte(example(t, "map-gallery"))
	all := review.Spec("spec", src, options())
	o := options()
	o.LeftOut = func(r *engine.Rule) string {
		return map[string]string{"bend.lamination": "for a test"}[r.ID]
	}
	less := review.Spec("spec", src, o)
	require.NotNil(t, find(all, "bend.lamination"))
	assert.Nil(t, find(less, "bend.lamination"))
	kept := len(all.Findings)
	for _, f := range all.Findings {
		if f.Rule.ID == "bend.lamination" {
			kept--
		}
	}
	assert.Len(t, less.Findings, kept)
	for _, f := range less.Findings {
		same := find(all, f.Rule.ID)
		assert.Equal(t, same.Passes, find(less, f.Rule.ID).Passes, f.Rule.ID)
	}
	assert.Equal(t, all.Counts.NotChecked+1, less.Counts.NotChecked)
}

// An acceptance of what is left out is for something still.
func TestAcceptanceOfWhatIsLeftOut(t *testing.T) {
	src := []byte(example(t, "reading-room") + "\n[[accept]]\nrule = \"strap.setting\"\nreason = \"measured\"\nby = \"the shop\"\nuntil = 2027-06-30\n")
	o := options()
	o.On = "2026-11-25"
	o.LeftOut = func(r *engine.Rule) string {
		return map[string]string{"strap.setting": "for a test"}[r.ID]
	}
	s := review.Spec("spec", src, o)
	require.Empty(t, s.Problems)
	assert.Nil(t, find(s, "accept.in-force"))
	assert.Zero(t, s.Counts.Accepted)
}

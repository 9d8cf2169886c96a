package review_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

func example(t testing.TB, name string) string {
	return string(sample.Source(t, name))
}

func options() review.Options {
	return review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: true}
}

func find(s *review.Assessment, rule string) *engine.Finding {
	for i := range s.Findings {
		if s.Findings[i].Rule.ID == rule {
			return &s.Findings[i]
		}
	}
	return nil
}

// An offer, put into the spec by hand, clears its finding: that is what it
// claims.
func TestOffersHoldWhatTheyPromise(t *testing.T) {
	src := example(t, "map-gallery")
	assessment := review.Spec("g", []byte(src), options())
	offers := 0
	for _, f := range assessment.Findings {
		if f.Passes == nil {
			continue
		}
		offers++
		r, ok := assessment.Document.ValueRange(f.Passes.Key)
		require.True(t, ok)
		text := `"` + f.Passes.Value.(string) + `"`
		changed := src[:r.Start] + text + src[r.End:]
		again := review.Spec("g", []byte(changed), options())
		require.Empty(t, again.Problems)
		assert.Nil(t, find(again, f.Rule.ID), "%s = %s", f.Passes.Key, text)
	}
	assert.GreaterOrEqual(t, offers, 2)
}

// The rib that its run asks for would be too stiff a skin's setback away: an
// offer that brings a new hold is not made.
func TestAnOfferThatBringsAHoldIsNotMade(t *testing.T) {
	src := strings.Replace(example(t, "map-gallery"), `lamination = "3/4in"`, `lamination = "1/2in"`, 1)
	cures := &engine.Rule{
		ID: "test.cures", Title: "t", Why: "w", Severity: engine.Query,
		Check: func(p *engine.Pass) {
			if p.Ceiling.Rib.Lamination.Get() < 0.015 {
				p.Report(engine.Finding{
					At: "rib.lamination", Text: "thin",
					Offers: []engine.Offer{{Key: "rib.lamination", Value: "1in"}},
				})
			}
		},
	}
	o := options()
	o.Rules = append(o.Rules, cures)
	f := find(review.Spec("g", []byte(src), o), "test.cures")
	require.NotNil(t, f)
	assert.Nil(t, f.Passes, "1in would not bend")

	o.Rules = []*engine.Rule{cures}
	f = find(review.Spec("g", []byte(src), o), "test.cures")
	require.NotNil(t, f.Passes, "alone, nothing stands against it")
}

// A spec with only its required keys gets a verdict, and all that was assumed
// or not checked is said.
func TestRequiredKeysAlone(t *testing.T) {
	src, err := os.ReadFile("../../schema/testdata/good/required-only.ceiling.toml")
	require.NoError(t, err)
	s := review.Spec("r", src, options())
	require.Empty(t, s.Problems)
	assert.Equal(t, engine.PassedWithNotes, s.Verdict)
	assert.Greater(t, s.Counts.NotChecked, 15, "straps, route, fittings, room above: none is assumed")
	for _, n := range s.NotChecked {
		assert.NotEmpty(t, n.Key, n.Rule.ID)
	}
	var keys []string
	for _, a := range s.Assumed {
		keys = append(keys, a.Key)
		assert.NotEmpty(t, a.Source, a.Key)
	}
	assert.Subset(t, keys, []string{"rib.lamination", "skin.thickness", "skin.setback", "rail.depth", "panels.along"})
	assert.NotContains(t, keys, "rib.depth", "a stated key is not assumed")
	assert.NotContains(t, keys, "strap.setting", "nothing is assumed of straps that are not there")
}

func TestFindingsAreInTheOrderOfTheFile(t *testing.T) {
	s := review.Spec("g", []byte(example(t, "map-gallery")), options())
	for i := range len(s.Findings) - 1 {
		a, b := s.Findings[i], s.Findings[i+1]
		assert.True(t, a.Start.Line < b.Start.Line || a.Start.Line == b.Start.Line && a.Rule.ID <= b.Rule.ID)
	}
	severities := map[engine.Severity]bool{}
	for _, f := range s.Findings {
		severities[f.Severity] = true
	}
	assert.True(t, severities[engine.Hold] && severities[engine.Query] && severities[engine.Refer])
}

func TestUnknownMaterialsAreFoundAtTheirKeys(t *testing.T) {
	src := strings.Replace(example(t, "reading-room"), `species      = "white oak"`, `species      = "wite oak"`, 1)
	s := review.Spec("r", []byte(src), options())
	require.Len(t, s.Problems, 1)
	assert.Equal(t, "rib.species", s.Problems[0].Key)
	assert.Contains(t, s.Problems[0].Message, `is it "white oak"?`)
	assert.Equal(t, engine.CouldNotCheck, s.Verdict)
}

func FuzzSpec(f *testing.F) {
	f.Add([]byte(example(f, "reading-room")))
	f.Add([]byte(example(f, "map-gallery")))
	f.Fuzz(func(t *testing.T, src []byte) {
		s := review.Spec("fuzz", src, review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn()})
		if s.Verdict == 0 {
			t.Fatal("no verdict")
		}
		for _, p := range s.Problems {
			if p.Message == "" || p.Position == (spec.Position{}) {
				t.Fatalf("a problem without words or place: %+v", p)
			}
		}
	})
}

// What the moulding covers but for its overlap rests on the overlap, not on the
// cover that the spec states.
func TestCoverNamesTheOverlap(t *testing.T) {
	for cover, limit := range map[string]string{"60mm": "close.cover.overlap", "50mm": "edge.cover"} {
		s, faults := review.Tree(sample.Tree(t, sample.ReadingRoom, map[string]any{"edge.cover": cover}), options())
		require.Empty(t, faults)
		f := find(s, "close.cover")
		require.NotNil(t, f, cover)
		assert.Equal(t, limit, f.Bound.Name, cover)
	}
}

package study_test

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/rules/design/study"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

func options() review.Options {
	return review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn()}
}

// base is the review of a ceiling.
func base(t testing.TB, name string) *review.Assessment {
	s := review.Spec(name, sample.Source(t, name), options())
	require.NotNil(t, s.Ceiling)
	return s
}

func newStudy(t testing.TB, name string, vary ...string) *study.Study {
	s, err := study.New(base(t, name), vary, options())
	require.NoError(t, err)
	return s
}

// BenchmarkOption is one option with every rule, as the table keeps it.
func BenchmarkOption(b *testing.B) {
	s := newStudy(b, "reading-room", "vault.rise=700mm..900mm/1mm", "grid.around=5..9")
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		s.Row(s.Option(1 + n%s.Total))
		n++
	}
	b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "options/s")
}

// An option is what a check of a file with the same values finds: its verdict,
// its counts, and the findings themselves.
func TestAnOptionIsWhatACheckFinds(t *testing.T) {
	for _, row := range []struct {
		spec string
		vary []string
	}{
		{"reading-room", []string{"grid.along=2..7/5", "grid.around=3..12/9", "vault.rise=300mm,1500mm", "rib.depth=40mm,90mm"}},
		{"reading-room", []string{"vault.profile=segmental,elliptical", "springing.cut=plumb,radial", "panels.around=1,2", "rib.species=white oak,red oak"}},
		{"reading-room", []string{"route.2.width=0.3m,900mm", "strap.allowable.load=100N,0.9kN", "climate.dry.humidity=10%,28%"}},
		{"orangery", []string{"panels.around=1,2", "strap.setting=0.5mm,1mm"}},
		{"chapter-house", []string{"rib.segments=6,14", "vault.rise=2400mm,2600mm"}},
		{"gallery-soffit", []string{"grid.along=6,9"}},
		{"court-room", []string{"ledger.fixed=before,after", "ledger.packed=true,false"}},
		{"map-gallery", []string{"skin.thickness=1/4in,1/2in", "rib.lamination=1/8in,3/4in", "vault.span=9ft,10ft"}},
	} {
		s := newStudy(t, row.spec, row.vary...)
		for i := 1; i <= s.Total; i++ {
			o := s.Option(i)
			require.NotNil(t, o.Assessment, "%s %d: %v", row.spec, i, o.Fault)
			var src bytes.Buffer
			require.NoError(t, toml.NewEncoder(&src).Encode(s.Tree(i)))
			checked := review.Spec("again", src.Bytes(), options())
			require.Empty(t, checked.Problems)
			assert.Equal(t, checked.Verdict, o.Assessment.Verdict)
			assert.Equal(t, checked.Counts, o.Assessment.Counts, "%s %v", row.spec, o.Values)
			assert.ElementsMatch(t, said(checked), said(o.Assessment))
			for k, v := range o.Values {
				assert.Equal(t, fmt.Sprint(v), fmt.Sprint(lookup(t, s.Tree(i), s.Vary[k].Key)))
			}
		}
	}
}

func said(s *review.Assessment) []string {
	var out []string
	for _, f := range s.Findings {
		out = append(out, fmt.Sprint(f.Rule.ID, f.Severity, f.At, f.Text))
	}
	return out
}

func lookup(t testing.TB, tree map[string]any, key string) any {
	v, ok := spec.Lookup(tree, key)
	require.True(t, ok, key)
	return v
}

// The figures of a row are those of the calculation sheet and of the takeoff.
func TestFiguresAreThoseOfTheSheet(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=4,6", "grid.around=5,6", "panels.around=1,2")
	keys := map[string]string{
		"ratio": "grid.module-ratio", "long-side": "grid.long-side", "coffers": "grid.count", "module-around": "grid.module-around", "module-along": "grid.module-along", "length": "panel.length",
		"width": "panel.width", "height": "panel.height", "mass": "panel.mass", "strap": "hanging.worst",
		"sag": "hanging.first-hung.sag", "joints": "joint.count",
	}
	for i := 1; i <= s.Total; i++ {
		o := s.Option(i)
		row := s.Row(o)
		figures := map[string]float64{}
		least := math.Inf(1)
		for _, f := range o.Assessment.Results.Figures() {
			figures[f.Key] = f.Value.SI
			if strings.HasPrefix(f.Key, "carrying.") && strings.HasSuffix(f.Key, ".margin") {
				least = min(least, f.Value.SI)
			}
		}
		for c, column := range s.Columns {
			want, given := 0.0, true
			switch column.Key {
			case "share":
				want = figures["hanging.worst"] / 900
			case "margin":
				want = least
			case "sheets":
				want = float64(stock.Of(o.Assessment.Ceiling, nil).Sheets[0].Count)
			case "holds":
				want = float64(o.Assessment.Counts.Held)
			case "queries":
				want = float64(o.Assessment.Counts.Queried)
			case "gap":
				want = figures["close.last-gap"]
			default:
				want, given = figures[keys[column.Key]]
			}
			assert.True(t, given, column.Key)
			assert.InEpsilon(t, want+1, row.Figures[c]+1, 1e-5, column.Key)
		}
	}
}

// The product has every combination once, in the order of an odometer, and the
// parts of any number are it.
func TestProductAndParts(t *testing.T) {
	assessment := base(t, "reading-room")
	keys := []string{"grid.along", "grid.around", "panels.around", "skin.layers"}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, len(keys)).Draw(t, "keys")
		var vary []string
		want := 1
		for _, key := range keys[:n] {
			to := rapid.IntRange(1, 6).Draw(t, key)
			vary = append(vary, fmt.Sprintf("%s=1..%d", key, to))
			want *= to
		}
		s, err := study.New(assessment, vary, options())
		require.NoError(t, err)
		require.Equal(t, want, s.Total)
		var before []any
		for i := 1; i <= s.Total; i++ {
			now := s.Values(i)
			if before != nil {
				assert.Negative(t, slices.CompareFunc(before, now, func(a, b any) int { return cmp.Compare(a.(int64), b.(int64)) }))
			}
			before = now
		}
		of := rapid.IntRange(1, 50).Draw(t, "parts")
		next, least, most := 1, s.Total, 0
		for k := 1; k <= of; k++ {
			first, last := study.Part{Number: k, Of: of}.Options(s.Total)
			assert.Equal(t, next, first)
			next, least, most = last+1, min(least, last-first+1), max(most, last-first+1)
		}
		assert.Equal(t, s.Total+1, next)
		assert.LessOrEqual(t, most-least, 1)
	})
}

// What can't be made is told at its key, and does not end the study.
func TestWhatCannotBeMade(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3,200", "vault.rise=100mm,3m", "route.1.kind=vehicle,door")
	var tally study.Tally
	for i := 1; i <= s.Total; i++ {
		tally.Add(s.Row(s.Option(i)))
	}
	assert.Equal(t, 8, tally.Done)
	assert.Equal(t, 7, tally.Invalid)
	var keys []string
	for _, r := range tally.Reasons {
		keys = append(keys, fmt.Sprintf("%s %d %d", r.Key, r.Count, r.First))
		assert.NotEmpty(t, r.Text)
	}
	assert.Equal(t, []string{"route.1.door 4 2", "vault.rise 2 3", "grid.along 1 5"}, keys)
}

// A key in a table that the spec does not have may need others beside it.
func TestATableThatIsNotThere(t *testing.T) {
	s := newStudy(t, "map-gallery", "lift.capacity=100kg,200kg")
	o := s.Option(1)
	require.NotNil(t, o.Fault)
	assert.Equal(t, "lift.units", o.Fault.Key)
}

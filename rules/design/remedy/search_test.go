package remedy

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/spec"
)

// changed is a ceiling that passes, with some of its text replaced.
func changed(t testing.TB, replacements ...string) []byte {
	return sample.Source(t, "study", replacements...)
}

func sought(t testing.TB, src []byte, o Options) Result {
	got, err := Search(context.Background(), "s.ceiling.toml", src, o)
	require.NoError(t, err)
	require.NotNil(t, got.Assessment.Ceiling, got.Assessment.Problems)
	return got
}

// exhaustive is the best of all values of the keys' dials, tried one and all: the
// cheapest, then the smallest change.
func exhaustive(t testing.TB, src []byte, o Options) (cost int, total float64, found bool) {
	doc, problems := spec.Parse("", src)
	require.Empty(t, problems)
	tr := newTrial(context.Background(), doc.Tree, o)
	may, err := allow(o.MayChange)
	require.NoError(t, err)
	all := [][]Change{nil}
	as, ok := tr.state(nil)
	require.True(t, ok)
	for _, k := range tr.base.knobs(may) {
		for _, d := range tr.dials(as, k, k.was) {
			var more [][]Change
			for n := -d.down; n <= d.up; n++ {
				v, ok := d.at(n)
				if n == 0 || !ok {
					continue
				}
				for _, had := range all {
					more = append(more, put(had, tr.changed(k, v)))
				}
			}
			all = append(all, more...)
		}
	}
	for _, changes := range all {
		st, ok := tr.state(changes)
		if !ok || found && (Cost(changes) > cost || Cost(changes) == cost && Total(changes) >= total) {
			continue
		}
		if tr.judge(st) && len(st.open) == 0 {
			cost, total, found = Cost(changes), Total(changes), true
		}
	}
	return cost, total, found
}

// A small search finds what trying everything finds.
func TestSmallSearchesAgainstExhaustiveOnes(t *testing.T) {
	tests := []struct {
		name, mayChange string
		changes         []string
	}{
		{"seams off the grid", "grid.along,panels.along", []string{"along     = 6", "along     = 5"}},
		{"coffers too long", "grid.along,panels.along", []string{"along  = 6\nends", "along  = 4\nends"}},
		{"an arch in pieces", "grid.around,panels.around", []string{"around    = 1", "around    = 4", "around = 6", "around = 7"}},
		{"a skin that is too stiff", "skin.thickness,skin.sheet,skin.straight", []string{`"bendable plywood"`, `"softwood plywood"`, `thickness = "9mm"`, `thickness = "15mm"`}},
		{"strips and form", "rib.lamination,panels.form", []string{`lamination   = "4mm"`, `lamination   = "12mm"`}},
		{"skin and rail", "skin.setback,rail.depth", []string{`setback   = "51mm"`, `setback   = "46mm"`, `depth   = "51mm"`, `depth   = "54mm"`}},
		{"screws", "strap.screws.penetration,finish", []string{`penetration = "38mm"`, `penetration = "20mm"`}},
		{"people and pieces", "crew,panels.along", []string{"people = 6", "people = 2", `aids   = "dollies"`, `aids   = "none"`}},
		{"nothing can help", "crew.people,finish", []string{`reach    = "4200mm"`, `reach    = "3000mm"`}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			src := changed(t, tt.changes...)
			o := Options{Review: reviewing(true), MayChange: strings.Split(tt.mayChange, ","), Limit: 1e6}
			got := sought(t, src, o)
			require.NotEmpty(t, got.Open)
			cost, total, found := exhaustive(t, src, o)
			require.Equal(t, found, len(got.Answers) > 0)
			if !found {
				return
			}
			best := got.Answers[0].Changes
			t.Logf("%v, %d reviews", best, got.Reviews)
			assert.Equal(t, cost, Cost(best))
			assert.InDelta(t, total, Total(best), 1e-9)
		})
	}
}

// coupled is a spec whose rib is too shallow, and whose straps have nothing to
// spare for a deeper one.
func coupled(t testing.TB, depth, stations, load string) []byte {
	return changed(t, `depth        = "60mm"`, `depth        = "`+depth+`"`, `load = "0.9kN"`, `load = "`+load+`"`,
		`setting   = "0.5mm"`, `setting   = "0.1mm"`, `["10%", "36%", "64%", "90%"]`, stations)
}

func find(list []engine.Finding, rule string) (engine.Finding, bool) {
	for _, f := range list {
		if f.Rule.ID == rule {
			return f, true
		}
	}
	return engine.Finding{}, false
}

// A deeper rib alone cures the sag, which a firm holds to its own limit, and
// overloads the straps. The answer is found all the same, and loads them less
// than they were.
func TestTwoFaultsThatMakeEachOtherWorse(t *testing.T) {
	got, sag, o := sagging(t, "0.180kN")
	o.MayChange = []string{"rib.depth"}
	cures, _, err := Cures(context.Background(), got.Assessment.Document.Tree, sag, o)
	require.NoError(t, err)
	require.NotEmpty(t, cures)
	for _, c := range cures {
		brought, ok := find(c.Brings, "strap.load")
		require.True(t, ok, "%v %v", c.Change, c.Brings)
		assert.Equal(t, engine.Hold, brought.Severity)
	}
	require.NotEmpty(t, got.Answers)
	t.Log(got.Answers[0].Changes)
	assert.Equal(t, 0, got.Answers[0].Assessment.Counts.Held)
	again, problems := spec.Parse("", got.Answers[0].Source)
	require.Empty(t, problems)
	for _, c := range got.Answers[0].Changes {
		v, ok := spec.Lookup(again.Tree, c.Key)
		require.True(t, ok)
		assert.Equal(t, c.Value, v)
	}
}

// Where rules stand against each other, the set that is named has no answer,
// and without any one of its rules it has.
func TestRulesAgainstEachOther(t *testing.T) {
	src := coupled(t, "58mm", `["10%", "50%", "90%"]`, "0.22kN")
	o := Options{Review: reviewing(true), MayChange: []string{"rib.depth"}}
	// Of three straps one lost leaves a rib that swings, whatever its depth.
	o.Review.Rules = slices.DeleteFunc(slices.Clone(o.Review.Rules), func(r *engine.Rule) bool {
		return r.ID == "strap.lost" || r.ID == "raise.secure"
	})
	got := sought(t, src, o)
	require.Empty(t, got.Answers)
	require.Empty(t, got.Alone)
	require.GreaterOrEqual(t, len(got.Against), 2)
	for i := range got.Against {
		rest := append(append([]*engine.Rule{}, got.Against[:i]...), got.Against[i+1:]...)
		o.Review.Rules = rest
		if found := sought(t, src, o); len(found.Open) > 0 {
			assert.NotEmpty(t, found.Answers, "without %s", got.Against[i].ID)
		}
	}
	o.Review.Rules = got.Against
	keys, _, found := exhaustive(t, src, o)
	assert.False(t, found, "%d keys", keys)
}

// What no key moves is said at once.
func TestARuleAlone(t *testing.T) {
	src := changed(t, `, source = "supplier's test report no. 7 (invented)"`, "")
	got := sought(t, src, Options{Review: reviewing(true)})
	require.Len(t, got.Alone, 1)
	assert.Equal(t, "strap.source", got.Alone[0].ID)
	assert.Empty(t, got.Answers)
	assert.Less(t, got.Reviews, 500)
	assert.Contains(t, got.Tied, "strap.allowable.load")
}

func TestWhatASearchIsToldAndTells(t *testing.T) {
	src := sample.Source(t, "map-gallery")
	for key, says := range map[string]string{
		"rib.deth": "there is no key rib.deth; is it rib.depth?", "project.title": "does not change what is built",
	} {
		_, err := Search(context.Background(), "", src, Options{Review: reviewing(false), MayChange: []string{key}})
		require.ErrorContains(t, err, says)
	}
	t.Run("a limit ends it at the same place each time", func(t *testing.T) {
		for _, limit := range []int{1, 2, 30, 77, 150} {
			a := sought(t, src, Options{Review: reviewing(false), Limit: limit})
			b := sought(t, src, Options{Review: reviewing(false), Limit: limit})
			assert.LessOrEqual(t, a.Reviews, limit)
			assert.Equal(t, a.Reviews, b.Reviews)
			assert.Equal(t, len(a.Answers), len(b.Answers))
			assert.True(t, len(a.Answers) > 0 || a.LimitReached, limit)
		}
	})
	t.Run("an interruption ends it", func(t *testing.T) {
		ctx, stop := context.WithCancel(context.Background())
		stop()
		got, err := Search(ctx, "", src, Options{Review: reviewing(false)})
		require.NoError(t, err)
		assert.True(t, got.Interrupted)
		assert.Empty(t, got.Answers)
		assert.LessOrEqual(t, got.Reviews, 3)
	})
	t.Run("a spec that passes has nothing to cure", func(t *testing.T) {
		got := sought(t, changed(t), Options{Review: reviewing(true)})
		assert.Empty(t, got.Open)
		assert.Empty(t, got.Answers)
	})
}

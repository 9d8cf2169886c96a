package review_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/schema"
	"dryfit/spec"
)

// standardsOf are those of a file's text.
func standardsOf(t *testing.T, text string) *standards.Standards {
	doc, problems := spec.Parse("dryfit.toml", []byte(text))
	require.Empty(t, problems)
	require.Empty(t, schema.StandardsShape(schema.Known{}).Check(doc))
	layer, problems := standards.Read(doc, nil, nil)
	require.Empty(t, problems)
	return standards.With(layer)
}

// An elliptical panel threads through its door, which only a search finds: without
// one the leg is not decided, and that fails the spec. A trial lifts it where the
// standards let it, from its day to its last, and is listed as loosened.
func TestATrialLiftsWhatIsNotDecided(t *testing.T) {
	const allowed = "dryfit = 1\nname = \"Shop\"\n[accept]\ntried = true\n"
	for name, c := range map[string]struct {
		standards, on, until string
		search               carrying.Depth
		fails, loosened      bool
	}{
		"found by a search":      {"", "2027-03-05", "", carrying.Plain, false, false},
		"not decided":            {"", "2027-03-05", "", carrying.None, true, false},
		"not allowed":            {"dryfit = 1\nname = \"Shop\"\n", "2027-03-05", "2027-06-30", carrying.None, true, false},
		"forbidden":              {"dryfit = 1\nname = \"Shop\"\n[accept]\ntried = false\n", "2027-03-05", "2027-06-30", carrying.None, true, false},
		"tried":                  {allowed, "2027-03-05", "2027-06-30", carrying.None, false, true},
		"on its last day":        {allowed, "2027-06-30", "2027-06-30", carrying.None, false, true},
		"run out":                {allowed, "2027-07-01", "2027-06-30", carrying.None, true, false},
		"not yet made":           {allowed, "2027-03-01", "2027-06-30", carrying.None, true, false},
		"for a year":             {allowed, "2027-03-05", "2028-03-05", carrying.None, false, true}, // 366 days
		"for longer":             {allowed, "2027-03-05", "2028-03-06", carrying.None, true, false},
		"without end":            {allowed, "2027-03-05", "9999-12-31", carrying.None, true, false},
		"judged on no day":       {allowed, "", "2027-06-30", carrying.None, true, false},
		"allowed, but not tried": {allowed, "2027-03-05", "", carrying.None, true, false},
	} {
		changes := map[string]any{
			"vault":     map[string]any{"profile": "elliptical", "span": "4200mm", "rise": "1200mm", "length": "7080mm"},
			"springing": map[string]any{},
			"route": []any{map[string]any{
				"name": "street door", "kind": "door", "width": "900mm", "height": "2040mm", "wall": "220mm", "before": "9m", "after": "9m", "beside": "9m",
			}},
		}
		if c.until != "" {
			changes["route"].([]any)[0].(map[string]any)["tried"] = map[string]any{"date": "2027-03-02", "by": "site team", "how": "a frame of laths", "until": c.until}
		}
		o := options()
		o.Offers, o.On, o.Search = false, c.on, carrying.Search{Depth: c.search}
		if c.standards != "" {
			o.Standards = standardsOf(t, c.standards)
		}
		s, faults := review.Tree(sample.Tree(t, sample.ReadingRoom, changes), o)
		require.Empty(t, faults, name)
		fails := false
		for _, n := range s.NotChecked {
			if n.Rule.ID == "transit.door" {
				fails = fails || n.Failed
				assert.Contains(t, n.Why, "the search found no way through the street door and no proof that there is none", name)
				if c.until > "2028-03-05" {
					assert.Contains(t, n.Why, "; the maximum is 366, so it does not count yet", name)
				}
			}
		}
		assert.Equal(t, c.fails, fails, name)
		if c.fails {
			assert.Equal(t, engine.Failed, s.Verdict, name)
		}
		assert.Equal(t, c.loosened, len(s.Loosened) == 1 && s.Loosened[0].Name == "route.1.tried", name)
	}
}

// The searches of a route share one budget: of many hard legs the last ones find it
// spent, say so, and name what searches further.
func TestALegWithoutBudgetSaysSo(t *testing.T) {
	var route []any
	for i := range 12 {
		route = append(route, map[string]any{
			"name": fmt.Sprintf("lift %d", i+1), "kind": "elevator", "door": map[string]any{"width": fmt.Sprintf("%dmm", 1040+i), "height": "2100mm"},
			"inside": map[string]any{"length": "2100mm", "width": "1750mm", "height": "2300mm"}, "capacity": "1000kg",
		})
	}
	tree := sample.Tree(t, sample.ReadingRoom, map[string]any{
		"vault": map[string]any{"profile": "elliptical", "span": "3000mm", "rise": "900mm", "length": "7080mm"}, "springing": map[string]any{}, "route": route,
	})
	o := options()
	o.Offers = false
	s, faults := review.Tree(tree, o)
	require.Empty(t, faults)
	var said []string
	for _, n := range s.NotChecked {
		if n.Failed && n.Rule.ID == "transit.elevator" {
			said = append(said, n.Why)
		}
	}
	require.NotEmpty(t, said)
	assert.Contains(t, said[len(said)-1], "; the search ended at its budget. Use check --thorough to search further")
}

// A stair that is not decided names the key that may decide it, and
// is held once that is stated: past the ends of the flights walls and headroom continue.
func TestAStairNamesTheKeyThatMayDecideIt(t *testing.T) {
	leg := map[string]any{
		"name": "back stair", "kind": "stair", "width": "944mm", "headroom": "2077mm", "rise": "156mm", "going": "255mm", "risers": int64(13),
		"turn": "quarter", "between": "wall", "landing": map[string]any{"width": "1451mm", "length": "1424mm"},
	}
	o := options()
	o.Offers = false
	changes := map[string]any{"route": []any{leg}}
	s, faults := review.Tree(sample.Tree(t, sample.ReadingRoom, changes), o)
	require.Empty(t, faults)
	i := slices.IndexFunc(s.NotChecked, func(n engine.NotChecked) bool { return n.Rule.ID == "transit.stair" })
	require.GreaterOrEqual(t, i, 0)
	assert.True(t, s.NotChecked[i].Failed)
	assert.Contains(t, s.NotChecked[i].Why, "; route.1.ends is not stated and may decide it")
	leg["ends"] = "corridor"
	s, faults = review.Tree(sample.Tree(t, sample.ReadingRoom, changes), o)
	require.Empty(t, faults)
	assert.True(t, slices.ContainsFunc(s.Findings, func(f engine.Finding) bool {
		return f.Rule.ID == "transit.stair" && f.Severity == engine.Hold
	}))
}

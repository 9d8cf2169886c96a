package sample_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec/quantity"
)

// go test ./rules/model/sample -update writes what is found beside each ceiling. Read
// the difference line by line before committing it.
var update = flag.Bool("update", false, "rewrite what is expected of each ceiling")

// lines are the verdict, then each finding as its severity, rule and key, and
// each rule whose figure could not be computed, all in the order of the file.
// There are no figures: later work may change those.
func lines(s *review.Assessment) []string {
	out := []string{s.Verdict.String()}
	for _, f := range s.Findings {
		line := fmt.Sprintf("%s %s %s", f.Severity, f.Rule.ID, f.At)
		if f.Accepted != nil {
			line = "accepted " + line
		}
		out = append(out, line)
	}
	for _, n := range s.NotChecked {
		if n.Failed {
			out = append(out, fmt.Sprintf("not computed %s %s", n.Rule.ID, n.Key))
		}
	}
	return out
}

func reviewed(t *testing.T, name string) *review.Assessment {
	s := review.Spec(name+".ceiling.toml", sample.Source(t, name), review.Options{
		Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25",
	})
	require.Empty(t, s.Problems)
	return s
}

// without is a list less what another has, each as often as it is there.
func without(list, other []string) (out []string) {
	other = slices.Clone(other)
	for _, line := range list {
		if i := slices.Index(other, line); i >= 0 {
			other = slices.Delete(other, i, i+1)
		} else {
			out = append(out, line)
		}
	}
	return out
}

// nothing is what no finding may say: that a size is none too large, or too small.
var nothing = regexp.MustCompile(`(^|[^\d.])0(mm|m|in|kN|N|kg) (too|over|short|larger|smaller|more|less)`)

func TestWhatIsFound(t *testing.T) {
	for _, name := range sample.Names(t) {
		t.Run(name, func(t *testing.T) {
			s := reviewed(t, name)
			for _, f := range s.Findings {
				assert.NotRegexp(t, nothing, f.Text)
			}
			got := lines(s)
			if *update {
				require.NoError(t, os.WriteFile(sample.Path(name, ".expected"), []byte(strings.Join(got, "\n")+"\n"), 0o644))
				return
			}
			verdict, want := sample.Expected(t, name)
			assert.Equal(t, verdict, got[0], "the verdict")
			for _, line := range without(want, got[1:]) {
				t.Errorf("missing: %s", line)
			}
			for _, line := range without(got[1:], want) {
				t.Errorf("surplus: %s", line)
			}
		})
	}
}

// What is expected of a ceiling that is gone misleads.
func TestNothingIsExpectedOfNothing(t *testing.T) {
	files, err := filepath.Glob(sample.Path("*", ".expected"))
	require.NoError(t, err)
	assert.Len(t, files, len(sample.Names(t)))
	for _, f := range files {
		assert.FileExists(t, strings.TrimSuffix(f, ".expected")+".ceiling.toml")
	}
}

// The ceilings between them use every word of every choice that the format
// gives, and have, and lack, each table that may be left out.
func TestTheyCoverTheFormat(t *testing.T) {
	var trees []map[string]any
	for _, name := range sample.Names(t) {
		trees = append(trees, sample.Tree(t, name, nil))
	}
	assert.GreaterOrEqual(t, len(trees), 24)
	for _, p := range schema.Properties() {
		for _, word := range p.Enum {
			used := slices.ContainsFunc(trees, func(tree map[string]any) bool { return says(tree, p.Path, word) })
			assert.True(t, used, "no ceiling in testdata/specs has %s = %q", p.Path, word)
		}
		if strings.Contains(p.Path, ".") || p.Required || p.Path == "dryfit" {
			continue
		}
		has := func(tree map[string]any) bool { return tree[p.Path] != nil }
		assert.True(t, slices.ContainsFunc(trees, has), "no ceiling in testdata/specs has %s", p.Path)
		lacks := func(tree map[string]any) bool { return !has(tree) }
		assert.True(t, slices.ContainsFunc(trees, lacks), "no ceiling in testdata/specs is without %s", p.Path)
	}
}

// says reports whether a tree has a word at a path, in which a star stands for
// any element of a list.
func says(v any, path, word string) bool {
	name, rest, deeper := strings.Cut(path, ".")
	switch v := v.(type) {
	case map[string]any:
		if !deeper {
			return v[name] == word
		}
		return says(v[name], rest, word)
	case []any:
		return slices.ContainsFunc(v, func(x any) bool { return says(x, rest, word) })
	default:
		return false
	}
}

// What a ceiling was written to show.
func TestKinds(t *testing.T) {
	var split, whole, metric, imperial, tiny, huge int
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		count(&split, c.Panel.Around.Get() > 1)
		count(&whole, c.Panel.Around.Get() == 1)
		count(&imperial, c.Units == quantity.Imperial)
		count(&metric, c.Units == quantity.Metric)
		count(&tiny, c.Vault.Span.Get() <= 1.5)
		count(&huge, c.Vault.Span.Get() >= 12)
	}
	for kind, n := range map[string]int{"split": split, "whole": whole, "metric": metric, "imperial": imperial} {
		assert.GreaterOrEqual(t, n, 3, kind)
	}
	assert.Positive(t, tiny)
	assert.Positive(t, huge)
}

func count(n *int, is bool) {
	if is {
		*n++
	}
}

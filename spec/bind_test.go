package spec_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec"
)

func TestBindTheExample(t *testing.T) {
	d, problems := spec.Parse(example, readExample(t))
	require.Empty(t, problems)
	s, err := spec.Bind(d.Tree)
	require.NoError(t, err)
	assert.Equal(t, "Reading room, Alder Quay library", s.Project.Title)
	assert.InDelta(t, 4.2, float64(s.Vault.Span), 1e-12)
	assert.Equal(t, 6, *s.Panels.Along)
	assert.InDelta(t, 0.36, float64(s.Strap.Stations[1]), 1e-12)
	assert.InDelta(t, 900, float64(s.Strap.Allowable.Load), 1e-9)
	assert.Equal(t, []int{3, 3}, s.Fitting[0].Coffer)
	assert.True(t, *s.Room.Framing.Blocking)
	assert.Len(t, s.Route, 3)
}

// Each key of the full file reaches the typed form: what is changed there
// changes it, or is refused by name.
func TestBindKeepsEveryKey(t *testing.T) {
	d, problems := spec.Parse("full", readFull(t))
	require.Empty(t, problems)
	before, err := spec.Bind(d.Tree)
	require.NoError(t, err)

	number := regexp.MustCompile(`\.\d+`)
	var seen []string
	leaves(d.Tree, nil, func(key string, v any) {
		var other any
		switch v := v.(type) {
		case string:
			other = v + "x"
		case int64:
			other = v + 1
		case bool:
			other = !v
		default:
			return // a list, whose elements come by themselves
		}
		tree, ok := spec.With(d.Tree, key, other)
		require.True(t, ok, key)
		after, err := spec.Bind(tree)
		if err != nil {
			parts := spec.SplitKey(key)
			assert.ErrorContains(t, err, parts[len(parts)-1]+": ", key)
		} else {
			assert.NotEqual(t, before, after, key)
		}
		parts := strings.Split(number.ReplaceAllString(key, ".*"), ".")
		for i := range parts {
			seen = append(seen, strings.Join(parts[:i+1], "."))
		}
	})
	assert.Subset(t, seen, spec.Keys())
}

func BenchmarkBind(b *testing.B) {
	d, _ := spec.Parse("p", readExample(b))
	for b.Loop() {
		if _, err := spec.Bind(d.Tree); err != nil {
			b.Fatal(err)
		}
	}
}

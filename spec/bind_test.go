package spec_test

import (
	"maps"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec"
	"dryfit/spec/record"
)

func TestBindTheExample(t *testing.T) {
	d, problems := spec.Parse(example, readExample(t))
	require.Empty(t, problems)
	s, err := spec.Bind(d.Tree)
	require.NoError(t, err)
	var rec *record.Recorder
	assert.Equal(t, "Reading room, Alder Quay library", s.Project.Title.Value(rec).Get())
	assert.InDelta(t, 4.2, spec.SI(rec, s.Vault.Span).Get(), 1e-12)
	assert.Equal(t, 6, s.Panels.Along.Value(rec).Get())
	stations, _ := spec.Ascending(rec, s.Strap.Stations)
	assert.InDelta(t, 0.36, stations.Get()[1], 1e-12)
	assert.InDelta(t, 900, spec.SI(rec, s.Strap.Allowable.Load).Get(), 1e-9)
	assert.Equal(t, []int{3, 3}, s.Fitting.Value(rec).Get()[0].Coffer.Value(rec).Get())
	assert.True(t, s.Room.Framing.Blocking.Value(rec).Get())
	assert.Len(t, s.Route.Value(rec).Get(), 3)
	assert.False(t, s.Room.Above.Value(rec).Key() == "" || s.Climate.Above.Stated(rec).Get())
}

// Each key of the full file reaches the typed form: what is changed there
// changes it, or is refused by name; by what was bound before as from nothing.
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
		id, known := spec.ID(key)
		require.True(t, known, key)
		for _, differ := range []record.Set{spec.Differ(d.Tree, tree), spec.Differ(tree, d.Tree)} {
			assert.True(t, differ.Has(id), key)
			top, _, _ := strings.Cut(key, ".")
			assert.True(t, differ.Without(spec.IDs(top)).Empty(), key)
		}
		again, errAgain := before.Rebind(d.Tree, tree)
		assert.Equal(t, err, errAgain, key)
		assert.Equal(t, after, again, key)
		whole, problems := spec.Parse("full", readFull(t))
		require.Empty(t, problems)
		fresh, _ := spec.With(whole.Tree, key, other)
		fresh = maps.Clone(fresh)
		spec.Share(fresh, d.Tree)
		assert.Equal(t, tree, fresh, key)
		assert.Equal(t, spec.Differ(d.Tree, tree), spec.Differ(d.Tree, fresh), key)
		parts := strings.Split(number.ReplaceAllString(key, ".*"), ".")
		for i := range parts {
			seen = append(seen, strings.Join(parts[:i+1], "."))
		}
	})
	assert.Subset(t, seen, spec.Keys())
}

// A value is of its key, and of no other, wherever it stands in an array.
func TestAValueNotesItsKey(t *testing.T) {
	d, problems := spec.Parse("full", readFull(t))
	require.Empty(t, problems)
	s, err := spec.Bind(d.Tree)
	require.NoError(t, err)
	rec := &record.Recorder{}
	for key, read := range map[string]func(){
		"room.width":             func() { s.Room.Width.Value(rec).Get() },
		"strap.allowable.source": func() { s.Strap.Allowable.Source.Value(rec).Given() },
		"strap":                  func() { s.Strap.Stated(rec).Get() },
		"strap.stations":         func() { stations, _ := spec.Ascending(rec, s.Strap.Stations); stations.Get() },
		"route":                  func() { s.Route.Value(rec).Get() },
		"route.name":             func() { s.Route.Value(nil).Get()[1].Name.Value(rec).Get() },
		"fitting.size.diameter":  func() { s.Fitting.Value(nil).Get()[0].Size.Diameter.Value(rec).Given() },
	} {
		assert.Equal(t, []string{key}, spec.Names(rec.During(read)))
	}
}

func TestIDs(t *testing.T) {
	for key, want := range map[string][]string{
		"climate.shop":       {"climate.shop", "climate.shop.temperature", "climate.shop.humidity"},
		"strap.stations.2":   {"strap.stations"},
		"route.1.door.width": {"route.door.width"},
		"route.*.door":       {"route.door", "route.door.width", "route.door.height", "route.door.left", "route.door.sill"},
		"room.widht":         nil,
	} {
		assert.Equal(t, want, spec.Names(spec.IDs(key)), key)
	}
	_, ok := spec.ID("room.widht")
	assert.False(t, ok)
	for _, key := range spec.Keys() {
		id, ok := spec.ID(key)
		require.True(t, ok, key)
		assert.Equal(t, spec.Pattern(key), spec.Names(spec.IDs(key))[0])
		assert.True(t, spec.IDs(key).Has(id))
	}
}

func BenchmarkBind(b *testing.B) {
	d, _ := spec.Parse("p", readExample(b))
	for b.Loop() {
		if _, err := spec.Bind(d.Tree); err != nil {
			b.Fatal(err)
		}
	}
}

package schema_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/schema"
	"dryfit/spec"
)

func texts[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

// The words of the format are those of the program.
func TestSchemaAndWordsAgree(t *testing.T) {
	want := map[string][]string{"vault.profile": texts(spec.Profiles()), "route.*.kind": texts(spec.LegKinds())}
	for _, p := range schema.Properties() {
		if words, ok := want[p.Path]; ok {
			assert.ElementsMatch(t, words, p.Enum, p.Path)
			delete(want, p.Path)
		}
	}
	assert.Empty(t, want)
}

// Each kind of leg says which keys it needs: a leg without any is refused.
func TestEveryKindOfLegNeedsKeys(t *testing.T) {
	for _, kind := range spec.LegKinds() {
		d := parse(t, "testdata/good/required-only.ceiling.toml")
		tree := with(t, d, "route", []any{map[string]any{"name": "a", "kind": string(kind)}})
		assert.NotEmpty(t, schema.Check(tree), "a leg of kind %s needs no key of its own", kind)
	}
}

package cite_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/cite"
)

func TestSourcePrintsItsStandingUnlessRead(t *testing.T) {
	place := cite.NDS.At("5.3.8")
	assert.Equal(t, "National Design Specification for Wood Construction, 5.3.8", place.String())
	assert.Equal(t, "National Design Specification for Wood Construction, 5.3.8 (from memory)", place.FromMemory().String())
	assert.Equal(t, "common practice", cite.CommonPractice().String())
	assert.Equal(t, "t/(2R) (derived)", cite.Derivation("t/(2R)").String())
	assert.Equal(t, "no source", cite.Source{}.String())
}

// A work that no table and no rule cites is not in the list.
func TestEachWorkIsCited(t *testing.T) {
	list, err := os.ReadFile("works.go")
	require.NoError(t, err)
	names := regexp.MustCompile(`(?m)^\t(\w+)\s+= Work\{`).FindAllSubmatch(list, -1)
	require.NotEmpty(t, names)
	var code strings.Builder
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		src, err := os.ReadFile(path)
		code.Write(src)
		return err
	}))
	for _, name := range names {
		assert.True(t, regexp.MustCompile(`\bcite\.`+string(name[1])+`\b`).MatchString(code.String()), "%s is not cited", name[1])
	}
}

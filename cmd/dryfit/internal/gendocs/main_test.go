package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The generated pages are those that the code makes now, and none is left of a rule
// that is gone.
func TestPagesAreFresh(t *testing.T) {
	const root = "../../../.."
	made, err := pages(root)
	require.NoError(t, err)
	for name, page := range made {
		had, err := os.ReadFile(filepath.Join(root, name))
		require.NoError(t, err)
		assert.True(t, strings.ReplaceAll(string(had), "\r\n", "\n") == string(page), "%s is out of date: run go generate ./...", name)
	}
	all, err := filepath.Glob(filepath.Join(root, "docs/rules/*.md"))
	require.NoError(t, err)
	for _, file := range all {
		assert.Contains(t, made, "docs/rules/"+filepath.Base(file))
	}
}

// Pages go where they belong, over those that were there.
func TestPagesAreWritten(t *testing.T) {
	const from = "../../../.."
	root := t.TempDir()
	for _, folder := range []string{"docs/examples", "testdata/specs", "rules"} {
		require.NoError(t, os.CopyFS(filepath.Join(root, folder), os.DirFS(filepath.Join(from, folder))))
	}
	require.NoError(t, os.MkdirAll(filepath.Join(root, "docs/rules"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(root, "docs/rules/gone.md"), nil, 0o600))
	require.NoError(t, write(root))
	assert.NoFileExists(t, filepath.Join(root, "docs/rules/gone.md"))
	assert.FileExists(t, filepath.Join(root, "docs/rules/bend.grain.md"))
	require.NoError(t, os.Remove(filepath.Join(root, "docs/examples/alder-quay/dryfit.toml")))
	assert.Error(t, write(root))
}

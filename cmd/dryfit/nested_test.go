package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/source"
)

// nested writes so many folders in one another, each with a spec and a standards
// file of so many materials, and says how large each file is.
func nested(t *testing.T, folders, materials int) int {
	t.Helper()
	demo, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir(".git", 0o755))
	at, size := ".", 0
	for i := range folders {
		at = filepath.Join(at, "d")
		require.NoError(t, os.MkdirAll(at, 0o755))
		var b strings.Builder
		fmt.Fprintf(&b, "dryfit = 1\nname = \"%d\"\n", i)
		for j := range materials {
			fmt.Fprintf(&b, "[[material]]\nname = \"m%dx%d\"\nkind = \"sheet\"\ndensity = \"600kg/m3\"\nsource = \"a\"\nleast_radius = { long_bent = \"300mm\", short_bent = \"300mm\" }\n", i, j)
		}
		size = b.Len()
		require.NoError(t, os.WriteFile(filepath.Join(at, "dryfit.toml"), []byte(b.String()), 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(at, "a.ceiling.toml"), demo, 0o644))
	}
	return size
}

func checkedHere(t *testing.T) (status int, said string) {
	t.Helper()
	var out, errs bytes.Buffer
	status = run(context.Background(), []string{"check", "--on", "2026-11-25"}, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
	return status, strings.Join(strings.Fields(out.String()), " ")
}

// More standards files than a repository needs are not read, and what they rule
// is not checked by fewer.
func TestStandardsNestTooDeep(t *testing.T) {
	nested(t, source.MostNested+1, 0)
	status, said := checkedHere(t)
	assert.Equal(t, exit.NotChecked, status)
	assert.Contains(t, said, "more than 16 standards files apply to one spec")
	assert.Equal(t, source.MostNested, strings.Count(said, " PASS WITH NOTES d/"), said)
}

// The standards of one run are of a bounded size.
func TestStandardsAreTooLarge(t *testing.T) {
	long(t)
	size := nested(t, 6, 6_000)
	require.Less(t, 4<<20, 6*size, "the files are large enough together")
	used := peak(func() {
		status, said := checkedHere(t)
		assert.Equal(t, exit.NotChecked, status)
		assert.Contains(t, said, "the standards of this run would exceed 4MiB")
	})
	t.Logf("%.0fMB", float64(used)/(1<<20))
	assert.Less(t, used, uint64(200<<20))
}

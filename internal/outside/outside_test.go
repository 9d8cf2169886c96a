package outside

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ended is a test that ends where it is skipped or fails, and keeps what it says.
type ended struct{ testing.TB }

func (ended) Helper() {}

func (ended) Skipf(format string, args ...any) { panic("skipped: " + fmt.Sprintf(format, args...)) }

func (ended) Fatalf(format string, args ...any) { panic("failed: " + fmt.Sprintf(format, args...)) }

// folder has one program and one npm package, and is all of the PATH.
func folder(t *testing.T) string {
	t.Setenv("DRYFIT_FORBID_SKIPS", "")
	dir := t.TempDir()
	t.Setenv("PATH", dir)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "node"), []byte("#!/bin/sh\n"), 0o755))
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "node_modules", "there"), 0o755))
	return dir
}

func TestWhatIsThereIsFound(t *testing.T) {
	dir := folder(t)
	assert.Equal(t, filepath.Join(dir, "node"), Program(ended{}, "node"))
	assert.Equal(t, filepath.Join(dir, "node"), Modules(ended{}, dir, "there"))
}

// What is missing skips the test, the first that is; where skips are forbidden it fails.
func TestWhatIsMissingEndsTheTest(t *testing.T) {
	dir := folder(t)
	for what, need := range map[string]func(){
		"ccx":  func() { Program(ended{}, "ccx") },
		"gone": func() { Modules(ended{}, dir, "there", "gone", "gone too") },
		"node": func() { Missing(ended{}, "node") },
	} {
		t.Setenv("DRYFIT_FORBID_SKIPS", "")
		assert.PanicsWithValue(t, "skipped: "+what+" is missing: bash .ci/run installs it", need)
		t.Setenv("DRYFIT_FORBID_SKIPS", "1")
		assert.PanicsWithValue(t, "failed: "+what+" is missing, and skips are forbidden", need)
	}
	require.NoError(t, os.Remove(filepath.Join(dir, "node")))
	assert.PanicsWithValue(t, "failed: node is missing, and skips are forbidden", func() { Modules(ended{}, dir, "there") })
}

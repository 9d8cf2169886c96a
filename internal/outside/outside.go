// Package outside finds the programs of others that tests run. Where one is missing a test
// is skipped and says so; if the environment has DRYFIT_FORBID_SKIPS, it fails.
package outside

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Program is the path of a program that is on the PATH.
func Program(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		Missing(t, name)
	}
	return path
}

// Modules asks for npm packages in a folder's node_modules, and is the path of the program
// that runs them.
func Modules(t testing.TB, folder string, names ...string) (node string) {
	t.Helper()
	for _, name := range names {
		if _, err := os.Stat(filepath.Join(folder, "node_modules", name)); err != nil {
			Missing(t, name)
		}
	}
	return Program(t, "node")
}

// Missing ends a test that needs what is not there.
func Missing(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("DRYFIT_FORBID_SKIPS") != "" {
		t.Fatalf("%s is missing, and skips are forbidden", what)
	}
	t.Skipf("%s is missing: bash .ci/run installs it", what)
}

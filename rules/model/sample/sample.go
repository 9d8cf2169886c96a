// Package sample gives tests the ceilings of testdata/specs: invented ones, of
// every profile, construction and size, each beside what is found in it.
package sample

import (
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// ReadingRoom is a ceiling with every optional table, with round sizes that
// suit work by hand. It is the one to start from.
const ReadingRoom = "reading-room"

const extension = ".ceiling.toml"

// Tests collect garbage as seldom as the commands do, which a quarter of their time
// went into.
func init() { debug.SetGCPercent(400) }

// folder is found while the working directory is still the tested package's.
var folder = find()

func find() string {
	dir, err := os.Getwd()
	for err == nil && filepath.Dir(dir) != dir {
		if _, missing := os.Stat(filepath.Join(dir, "go.mod")); missing == nil {
			return filepath.Join(dir, "testdata", "specs")
		}
		dir = filepath.Dir(dir)
	}
	return ""
}

// Path is the file of a ceiling, or of what lies beside it under another
// extension.
func Path(name, extension string) string { return filepath.Join(folder, name+extension) }

// Names lists all ceilings, in order.
func Names(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob(Path("*", extension))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for i, f := range files {
		files[i] = strings.TrimSuffix(filepath.Base(f), extension)
	}
	return files
}

// Source is the text of a ceiling, with each of some texts, which must be
// there, replaced by the one that follows it.
func Source(t testing.TB, name string, replacements ...string) []byte {
	t.Helper()
	read, err := os.ReadFile(Path(name, extension))
	require.NoError(t, err)
	src := string(read)
	for i := 0; i < len(replacements); i += 2 {
		require.Contains(t, src, replacements[i], name)
		src = strings.ReplaceAll(src, replacements[i], replacements[i+1])
	}
	return []byte(src)
}

// Expected is what is found in a ceiling by the built-in standards on
// 2026-11-25: the verdict, then a line for each finding, its severity, its rule
// and its key, with "accepted" before one that is, and one for each rule whose
// figure could not be computed, with "not computed" in place of the severity.
func Expected(t testing.TB, name string) (verdict string, findings []string) {
	t.Helper()
	read, err := os.ReadFile(Path(name, ".expected"))
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSpace(strings.ReplaceAll(string(read), "\r\n", "\n")), "\n")
	return lines[0], lines[1:]
}

// Tree is a ceiling as its tree of values, with the values of some keys
// changed.
func Tree(t testing.TB, name string, changes map[string]any) map[string]any {
	t.Helper()
	d, problems := spec.Parse(name+extension, Source(t, name))
	require.Empty(t, problems)
	tree := d.Tree
	for key, value := range changes {
		changed, ok := spec.With(tree, key, value)
		require.True(t, ok, key)
		tree = changed
	}
	return tree
}

// Ceiling is a ceiling resolved to the built-in standards, with the values of
// some keys changed.
func Ceiling(t testing.TB, name string, changes map[string]any) *layout.Ceiling {
	t.Helper()
	c, faults := layout.Resolve(Tree(t, name, changes), standards.BuiltIn(), nil)
	require.Empty(t, faults)
	return c
}

// Room is the reading room, resolved, with the values of some keys changed.
func Room(t testing.TB, changes map[string]any) *layout.Ceiling {
	t.Helper()
	return Ceiling(t, ReadingRoom, changes)
}

// Profiles are the six, as changes of the reading room.
func Profiles() map[string]map[string]any {
	vault := func(profile string, more ...string) map[string]any {
		v := map[string]any{"profile": profile, "span": "4200mm", "length": "7080mm"}
		for i := 0; i < len(more); i += 2 {
			v[more[i]] = more[i+1]
		}
		return map[string]any{"vault": v, "springing": map[string]any{}}
	}
	return map[string]map[string]any{
		"flat":          vault("flat"),
		"segmental":     vault("segmental", "rise", "840mm"),
		"semicircular":  vault("semicircular"),
		"three-centred": vault("three-centred", "rise", "1500mm", "haunch_radius", "900mm"),
		"pointed":       vault("pointed", "rise", "2600mm"),
		"elliptical":    vault("elliptical", "rise", "1200mm"),
	}
}

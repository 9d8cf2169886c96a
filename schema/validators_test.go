package schema_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/schema"
)

const validators = "../.ci/validators"

// skipAloud skips where an outside program is missing, unless skips are
// forbidden.
func skipAloud(t *testing.T, missing string) {
	t.Helper()
	if os.Getenv("DRYFIT_FORBID_SKIPS") != "" {
		t.Fatalf("%s is missing, and skips are forbidden", missing)
	}
	t.Skipf("%s is missing: run npm install in .ci/validators", missing)
}

// A general-purpose validator in strict mode judges every file of the corpus as
// ours does. It has its own forms of the quantities.
func TestAjvAgrees(t *testing.T) {
	if _, err := os.Stat(validators + "/node_modules/ajv"); err != nil {
		skipAloud(t, "ajv")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		skipAloud(t, "node")
	}
	args := []string{validators + "/judge.mjs", "spec.schema.json"}
	for _, kind := range []string{"good", "bad"} {
		args = append(args, corpus(t, kind)...)
	}
	out, err := exec.Command(node, args...).CombinedOutput()
	require.NoError(t, err, "%s", out)
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	assert.Len(t, lines, len(args)-2)
	for _, line := range lines {
		verdict, file, _ := strings.Cut(line, " ")
		assert.Equal(t, filepath.Base(filepath.Dir(file)), verdict, file)
	}
}

// The published schema of the output holds for what it says: ajv compiles it in
// strict mode.
func TestAjvTakesTheOutputSchema(t *testing.T) {
	if _, err := os.Stat(validators + "/node_modules/ajv"); err != nil {
		skipAloud(t, "ajv")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		skipAloud(t, "node")
	}
	out, err := exec.Command(node, validators+"/judge.mjs", "output.schema.json").CombinedOutput()
	require.NoError(t, err, "%s", out)
	assert.NotEmpty(t, schema.OutputSchema())
}

// byFormat are the bad files whose mistake only our own formats see: an editor's
// TOML server knows no lengths.
var byFormat = map[string]bool{
	"no-unit": true, "wrong-unit": true, "negative": true, "zero": true, "unphysical": true, "share-over": true,
	"stock": true, "date": true, "humidity": true,
}

// A TOML server, as editors run it, finds every mistake of structure.
func TestTombiAgreesOnStructure(t *testing.T) {
	tombi, err := filepath.Abs(validators + "/node_modules/.bin/tombi")
	require.NoError(t, err)
	if _, err := os.Stat(tombi); err != nil {
		skipAloud(t, "tombi")
	}
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(folder+"/spec.schema.json", schema.SpecSchema(), 0o644))
	require.NoError(t, os.WriteFile(folder+"/tombi.toml",
		[]byte("[[schemas]]\npath = \"spec.schema.json\"\ninclude = [\"*.ceiling.toml\"]\n"), 0o644))
	for _, kind := range []string{"good", "bad"} {
		for _, file := range corpus(t, kind) {
			name := strings.TrimSuffix(filepath.Base(file), ".ceiling.toml")
			if kind == "bad" && byFormat[name] {
				continue
			}
			src, err := os.ReadFile(file)
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(folder, filepath.Base(file)), src, 0o644))
			c := exec.Command(tombi, "lint", "--offline", filepath.Base(file))
			c.Dir = folder
			out, err := c.CombinedOutput()
			assert.Equal(t, kind == "good", err == nil, "%s: %s", file, out)
		}
	}
}

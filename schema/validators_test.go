package schema_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
	"dryfit/schema"
	"dryfit/spec"
)

// Two general-purpose validators, one of JSON and one of TOML, judge the corpus
// as ours does: which file is good, and where a bad one is bad.

const validators = "../.ci/validators"

// node runs the judging script, with ajv in strict mode.
func node(t *testing.T, args ...string) ([]byte, error) {
	t.Helper()
	return command(t, "judge.mjs", args...).CombinedOutput()
}

// command is one of the validators' scripts, ready to run.
func command(t *testing.T, name string, args ...string) *exec.Cmd {
	t.Helper()
	program := outside.Modules(t, validators, "ajv", "smol-toml")
	return exec.Command(program, append([]string{validators + "/" + name}, args...)...)
}

// pointerTo is the JSON pointer to the names in a key; a number in a key counts
// from 1, and in a pointer from 0.
func pointerTo(names []string) string {
	var b strings.Builder
	for _, name := range names {
		if n, err := strconv.Atoi(name); err == nil {
			name = strconv.Itoa(n - 1)
		}
		b.WriteString("/" + name)
	}
	return b.String()
}

// onlyTOML are the bad files whose mistake JSON has no words for: it does not
// tell 5.0 from 5.
var onlyTOML = []string{"whole-as-fraction"}

func TestAjvAgrees(t *testing.T) {
	published := filepath.Join(t.TempDir(), "spec.schema.json")
	require.NoError(t, os.WriteFile(published, schema.SpecSchema(), 0o644))
	out, err := node(t, slices.Concat([]string{published}, corpus(t, "good"), corpus(t, "bad"))...)
	require.NoError(t, err, "%s", out)
	judged := 0
	for line := range bytes.Lines(out) {
		var verdict struct {
			File   string
			Faults []string
		}
		require.NoError(t, json.Unmarshal(line, &verdict), "%s", line)
		judged++
		if slices.Contains(onlyTOML, strings.TrimSuffix(filepath.Base(verdict.File), ".ceiling.toml")) {
			continue
		}
		if filepath.Base(filepath.Dir(verdict.File)) != "bad" {
			assert.Empty(t, verdict.Faults, verdict.File)
			continue
		}
		// It reports a missing or an unknown key at the table.
		names := spec.SplitKey(schema.Check(parse(t, verdict.File))[0].Key)
		at, table := pointerTo(names), pointerTo(names[:len(names)-1])
		assert.True(t, slices.Contains(verdict.Faults, at) || slices.Contains(verdict.Faults, table),
			"%s: ours is at %s, theirs at %q", verdict.File, at, verdict.Faults)
	}
	assert.Equal(t, len(corpus(t, "good"))+len(corpus(t, "bad")), judged)
}

// Strict mode knows every keyword and every format of what is published, and
// refuses a misspelt one.
func TestAjvTakesThePublishedSchemas(t *testing.T) {
	misspelt := bytes.Replace(schema.SpecSchema(), []byte(`"minimum"`), []byte(`"minimun"`), 1)
	texts := map[string][]byte{"standards": schema.StandardsSchema(known()), "misspelt": misspelt}
	for _, o := range schema.Outputs() {
		texts[o.Name] = o.Text()
	}
	for name, text := range texts {
		file := filepath.Join(t.TempDir(), "schema.json")
		require.NoError(t, os.WriteFile(file, text, 0o644))
		out, err := node(t, file)
		assert.Equal(t, name != "misspelt", err == nil, "%s: %s", name, out)
	}
}

// element is a number in a key.
var element = regexp.MustCompile(`\.\d+\b`)

// formatted are the paths of texts that have one of our formats, of which the
// TOML server knows none, with their patterns, which it knows.
func formatted(t *testing.T) map[string]*regexp.Regexp {
	paths := map[string]*regexp.Regexp{}
	described(t, schema.SpecSchema(), func(path string, part map[string]any) {
		if part["format"] != nil {
			pattern, _ := part["pattern"].(string)
			paths[path] = regexp.MustCompile(pattern)
		}
	})
	return paths
}

// A TOML server, as editors run it, finds every mistake of structure, and every
// quantity that its pattern refuses, on the same line.
func TestTombiAgrees(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(folder+"/spec.schema.json", schema.SpecSchema(), 0o644))
	require.NoError(t, os.WriteFile(folder+"/tombi.toml",
		[]byte("[[schemas]]\npath = \"spec.schema.json\"\ninclude = [\"*.ceiling.toml\"]\n"), 0o644))
	formats := formatted(t)
	want := map[string]int{} // line of the mistake, 0 where it has none to find
	var args []string
	for _, file := range slices.Concat(corpus(t, "good"), corpus(t, "bad")) {
		d, line := parse(t, file), 0
		for _, p := range schema.Check(d) {
			value, _ := spec.Lookup(d.Tree, p.Key)
			text, isText := value.(string)
			if pattern := formats[element.ReplaceAllString(p.Key, ".*")]; !isText || pattern == nil || !pattern.MatchString(text) {
				line = p.Position.Line
			}
		}
		name := filepath.Base(file)
		want[name] = line
		args = append(args, name)
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), d.Source, 0o644))
	}
	found := lint(t, folder, args...)
	for name, line := range want {
		if line > 0 {
			assert.Contains(t, found[name], line, name)
		} else if _, err := os.Stat("testdata/bad/" + name); err != nil {
			assert.Empty(t, found[name], name)
		}
	}
}

// lint runs the TOML server's own linter in a folder with faulty files: the lines
// of the faults, by file.
func lint(t *testing.T, folder string, files ...string) map[string][]int {
	t.Helper()
	tombi, err := filepath.Abs(validators + "/node_modules/.bin/tombi")
	require.NoError(t, err)
	if _, err := os.Stat(tombi); err != nil {
		outside.Missing(t, "tombi")
	}
	c := exec.Command(tombi, append([]string{"lint", "--offline"}, files...)...)
	c.Dir, c.Env = folder, append(os.Environ(), "NO_COLOR=1")
	out, err := c.CombinedOutput()
	require.Error(t, err, "there are bad files")
	found := map[string][]int{}
	for _, m := range regexp.MustCompile(`at (\S+\.toml):(\d+):`).FindAllStringSubmatch(string(out), -1) {
		line, _ := strconv.Atoi(m[2])
		name := strings.TrimPrefix(m[1], folder+"/")
		found[name] = append(found[name], line)
	}
	return found
}

// The settings that are shown for the TOML server make it refuse a quantity
// without a unit and one in another, in a spec and in a standards file.
func TestTheShownSettingsRefuseQuantities(t *testing.T) {
	page, err := os.ReadFile("../docs/editor.md")
	require.NoError(t, err)
	block := regexp.MustCompile("(?s)<!-- tombi -->\n```toml\n(.*?)```").FindSubmatch(page)
	require.NotNil(t, block)
	folder := t.TempDir()
	spec := strings.Replace(string(parse(t, everyKey).Source), `"90mm"`, `"90"`, 1)
	line := 1 + strings.Count(spec[:strings.Index(spec, `"90"`)], "\n")
	for name, text := range map[string][]byte{
		"tombi.toml":                  block[1],
		"spec.schema.json":            schema.SpecSchema(),
		"standards.schema.json":       schema.StandardsSchema(known()),
		"specs/one.ceiling.toml":      []byte(spec),
		"specs/nested/dryfit.toml":    []byte("dryfit = 1\nname = \"x\"\n[default]\n\"seam.spacing\" = \"60 furlongs\"\n"),
		"specs/nested/unrelated.toml": []byte("x = \"90\"\n"),
	} {
		require.NoError(t, os.MkdirAll(filepath.Join(folder, filepath.Dir(name)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	assert.Equal(t, map[string][]int{"specs/one.ceiling.toml": {line}, "specs/nested/dryfit.toml": {4}}, lint(t, folder))
}

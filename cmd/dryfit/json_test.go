package main

import (
	"bytes"
	"context"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
)

// publishedSchema is what dryfit schema prints, or a part of it.
func publishedSchema(t *testing.T, name, part string) *jsonschema.Schema {
	out, _, status := printed(t, "dryfit schema "+name)
	require.Zero(t, status)
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	id := "https://dryfit.example/" + name
	require.NoError(t, c.AddResource(id, strings.NewReader(out)))
	return c.MustCompile(id + part)
}

// writtenJSON runs a command on a spec. One that can't be checked is refused with
// nothing on standard output, save by check, which reports it.
func writtenJSON(t *testing.T, args ...string) (out []byte, status int) {
	var o, e bytes.Buffer
	status = run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &o, Err: &e})
	if status == exit.NotChecked && args[0] != "check" {
		assert.Empty(t, o.String(), args)
		assert.NotEmpty(t, e.String(), args)
	}
	return o.Bytes(), status
}

// jsonCommands are the commands that write JSON, by the name of its schema.
var jsonCommands = map[string][][]string{
	"output": {{"check", "--on", "2026-11-25"}, {"check", "--on", "2026-11-25", "--strict"}},
	"calcs":  {{"calcs"}}, "takeoff": {{"takeoff"}},
	"in-force": {{"standards"}, {"standards", "--standards", "../../docs/examples/alder-quay/dryfit.toml"}},
	"compare":  {{"compare", "--on", "2026-11-25", "../../testdata/specs/reading-room.ceiling.toml"}},
	"study": {
		{"study", "--on", "2026-11-25", "--vary", "grid.along=4..6", "--vary", "vault.span=2m,4m", "--vary", "rib.species=white oak,Douglas-fir"},
		{"study", "--on", "2026-11-25", "--vary", "rib.depth=50mm,60mm", "--part", "2/2", "--only", "pass"},
	},
	"remedy": {
		{"remedy", "--on", "2026-11-25", "--limit", "100"},
		{"remedy", "--on", "2026-11-25", "--limit", "100", "--strict", "--each"},
		{"remedy", "--on", "2026-11-25", "--limit", "100", "--strict", "--may-change", "rib"},
	},
}

const loosening = `dryfit = 1
name   = "a house"
[limit]
"bend.lamination.ratio" = { value = 50, source = "a trial" }
[severity]
"grid.module-ratio" = "note"
[default]
"wrap.allowance" = "20mm"
`

// jsonSpecs are metric and imperial ones, whole and sparse, with findings, with
// next to none, accepted and under standards of their own, and some that can't
// be resolved or read.
func jsonSpecs(t *testing.T) []string {
	good, err := filepath.Glob("../../schema/testdata/good/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, good)
	folder := t.TempDir()
	begun := filepath.Join(folder, "begun.ceiling.toml")
	_, status := writtenJSON(t, "begin", "--span", "14ft", "--rise", "4ft", "--length", "20ft", "--output", begun)
	require.Zero(t, status)
	src, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	files := append(good, begun)
	for name, text := range map[string]string{
		"dryfit.toml":             loosening,
		"accepted.ceiling.toml":   regexp.MustCompile(`allowance = "25mm".*`).ReplaceAllString(string(src), "") + "\n[[accept]]\nrule = \"close.cover\"\nreason = \"a wider one comes\"\nby = \"team\"\nuntil = 2027-06-30\n",
		"unresolved.ceiling.toml": strings.Replace(string(src), `span    = "4200mm"`, `span    = "1000mm"`, 1),
		"torn.ceiling.toml":       "dryfit = ", "misshapen.ceiling.toml": "dryfit = 1\nroom = 3\n",
	} {
		file := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
		if name != "dryfit.toml" {
			files = append(files, file)
		}
	}
	return append(files, filepath.Join(folder, "none.ceiling.toml"))
}

// sometimes are fields that only some specs give.
var sometimes = map[string][]string{
	"output": {
		".runs.*.files.*.findings.*.accepted.until", ".runs.*.files.*.findings.*.passes_with.value", ".runs.*.files.*.loosened.*.built_in",
		".runs.*.files.*.assumed.*.file", ".runs.*.files.*.not_checked.*.why",
	},
	"calcs":    {".figures.*.worked", ".figures.*.method", ".tables.*.note", ".tables.*.rows.*.values.*.value", ".model.frames.*.cases.*.springs.*.longer"},
	"takeoff":  {".pieces.*.strips", ".hardware.*.length", ".hardware.*.mass"},
	"in-force": {".in_force.*.si", ".in_force.*.line", ".in_force.*.built_in", ".in_force.*.loosened"},
	"compare":  {".findings.*.unchecked", ".keys.*.assumed", ".figures.*.old"},
	"study":    {".part", ".reasons.*.text", ".options.*.reason", ".options.*.held_by", ".options.*.loses"},
	"remedy":   {".answers.*.changes.*.was", ".each.*.cures.*.brings.*.rule", ".open.*.basis"},
}

// What each command writes satisfies its published schema, and with any of its
// fields renamed does not.
func TestJSONSatisfiesThePublishedSchemas(t *testing.T) {
	long(t)
	specs := jsonSpecs(t)
	for name, commands := range jsonCommands {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			judge := publishedSchema(t, name, "")
			renamed, refused := map[string]bool{}, 0
			for _, command := range commands {
				for _, spec := range specs {
					args := append(slices.Clone(command), "--format", "json", spec)
					out, status := writtenJSON(t, args...)
					if status == exit.NotChecked && command[0] != "check" {
						refused++
						continue
					}
					var document any
					require.NoError(t, json.Unmarshal(out, &document), args)
					require.NoError(t, judge.Validate(document), args)
					eachRenamed(document, "", renamed, func(path string) {
						assert.Error(t, judge.Validate(document), "%v: %s is renamed", args, path)
					})
				}
			}
			for _, path := range sometimes[name] {
				assert.True(t, renamed[path], "no spec gives %s", path)
			}
			if name != "output" {
				assert.Positive(t, refused)
			}
		})
	}
}

// freeKeys are the paths below which a spec's author, or the flags, name the keys.
var freeKeys = regexp.MustCompile(`^\.options\.\*\.values\.|^\.keys\.\*\.(old|new|assumed)\.|\.(was|value)\.`)

// eachRenamed renames each field of a document in turn, one of each path, and
// puts it back.
func eachRenamed(v any, path string, done map[string]bool, then func(path string)) {
	switch v := v.(type) {
	case []any:
		for _, item := range v {
			eachRenamed(item, path+".*", done, then)
		}
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(v)) {
			at, value := path+"."+key, v[key]
			eachRenamed(value, at, done, then)
			if done[at] || freeKeys.MatchString(at) {
				continue
			}
			done[at] = true
			delete(v, key)
			v[key+"_"] = value
			then(at)
			delete(v, key+"_")
			v[key] = value
		}
	}
}

// Each line of a study is one of three kinds.
func TestStudyLinesSatisfyTheirSchema(t *testing.T) {
	line := publishedSchema(t, "study", "#/$defs/line")
	for _, part := range []string{"1/1", "2/2"} {
		out, status := writtenJSON(t, "study", "--vary", "vault.span=2m,4m,4.1m", "--part", part, "--format", "jsonl", "../../testdata/specs/reading-room.ceiling.toml")
		require.Zero(t, status)
		lines := bytes.Split(bytes.TrimSpace(out), []byte("\n"))
		assert.GreaterOrEqual(t, len(lines), 3)
		for _, text := range lines {
			var document map[string]any
			require.NoError(t, json.Unmarshal(text, &document))
			assert.NoError(t, line.Validate(document), "%s", text)
			document["more"] = true
			assert.Error(t, line.Validate(document), "%s", text)
		}
	}
}

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
)

// Specs that have much in common are found together what each is found alone, whatever of
// them differs and whoever comes first.
func TestSpecsTogetherAreWhatEachIsAlone(t *testing.T) {
	room := string(readDemo(t))
	folder := t.TempDir()
	t.Chdir(folder)
	var names []string
	for name, change := range map[string][2]string{
		"as-it-is": {"", ""}, "door": {`"900mm"`, `"700mm"`}, "setting": {`setting   = "1mm"`, `setting   = "3mm"`}, "layers": {`"6mm"`, `"4mm"`},
		"hung": {`hung      = "shop"`, `hung      = "room"`}, "deeper": {`depth        = "60mm"`, `depth        = "66mm"`}, "straps": {`"36%", "64%"`, `"30%", "70%"`},
		"split": {"around    = 1", "around    = 2"}, "load": {`"0.9kN"`, `"0.1kN"`},
		"assumed": {`lamination   = "6mm"`, ``}, "units": {`units    = "metric"`, `units    = "imperial"`}, "broken": {"[rail]", "[rail"},
		"no-crew": {"[crew]\npeople = 4\naids   = \"dollies\"", ""}, "no-ceiling": {`rise    = "840mm"`, `rise    = "84m"`},
		"accepted": {"[[fitting]]", "[[accept]]\nrule = \"rib.sag\"\nreason = \"measured\"\nby = \"A. Builder\"\nuntil = \"2026-12-01\"\n\n[[fitting]]"},
	} {
		require.Contains(t, room, change[0])
		name += ".ceiling.toml"
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(strings.Replace(room, change[0], change[1], 1)), 0o644))
		names = append(names, name)
	}
	check := func(names []string, jobs string) string {
		var out, errs bytes.Buffer
		args := append([]string{"check", "--on", "2026-11-25", "--format", "jsonl", "--jobs", jobs}, names...)
		run(t.Context(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
		require.Empty(t, errs.String())
		require.NotEmpty(t, out.String())
		return out.String()
	}
	var alone []string
	for _, name := range names {
		alone = append(alone, check([]string{name}, "1"))
	}
	for _, jobs := range []string{"1", "2"} {
		together := check(names, jobs)
		assert.ElementsMatch(t, strings.SplitAfter(strings.Join(alone, ""), "\n"), strings.SplitAfter(together, "\n"), "%s jobs", jobs)
	}
}

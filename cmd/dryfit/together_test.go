package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Specs that share a section, and so a frame, are found together what each is found
// alone, whatever of the rest differs and whoever comes first.
func TestSpecsTogetherAreWhatEachIsAlone(t *testing.T) {
	room := string(readDemo(t))
	folder := t.TempDir()
	t.Chdir(folder)
	var names []string
	for name, change := range map[string][2]string{
		"as-it-is": {"", ""}, "door": {`"900mm"`, `"700mm"`}, "setting": {`setting   = "1mm"`, `setting   = "3mm"`}, "layers": {`"6mm"`, `"4mm"`},
		"hung": {`hung      = "shop"`, `hung      = "room"`}, "deeper": {`depth        = "60mm"`, `depth        = "66mm"`}, "straps": {`"36%", "64%"`, `"30%", "70%"`},
		"split": {"around    = 1", "around    = 2"}, "load": {`"0.9kN"`, `"0.1kN"`},
	} {
		require.Contains(t, room, change[0])
		name += ".ceiling.toml"
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(strings.Replace(room, change[0], change[1], 1)), 0o644))
		names = append(names, name)
	}
	var alone []string
	for _, name := range names {
		out, _, _ := printed(t, "dryfit check --on 2026-11-25 --format jsonl "+name)
		alone = append(alone, out)
	}
	for _, jobs := range []string{"1", "2"} {
		together, _, _ := printed(t, "dryfit check --on 2026-11-25 --format jsonl --jobs "+jobs+" "+strings.Join(names, " "))
		assert.ElementsMatch(t, strings.SplitAfter(strings.Join(alone, ""), "\n"), strings.SplitAfter(together, "\n"), "%s jobs", jobs)
	}
}

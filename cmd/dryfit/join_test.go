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
	"dryfit/cmd/dryfit/internal/studying"
	"dryfit/rules/design/study"
)

// studied runs dryfit study and gives what it prints.
func studied(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	require.Zero(t, run(context.Background(), append([]string{"study"}, args...), console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
	return out.String()
}

// The eight parts of a study, joined in any order, are the study, byte for byte, in
// every format.
func TestJoinedPartsAreTheStudy(t *testing.T) {
	house := filepath.Join(t.TempDir(), "house.toml")
	require.NoError(t, os.WriteFile(house, []byte("dryfit = 1\nname = \"House\"\n[limit]\n\"joint.count.most\" = { value = 400, source = \"agreed\" }\n"), 0o600))
	common := []string{demo, "--vary", "grid.along=3..7", "--vary", "vault.rise=200mm,800mm,2200mm", "--on", "2026-11-25", "--standards", house}
	var parts []string
	for _, i := range []int{3, 1, 2, 8, 7, 6, 5, 4} {
		name := filepath.Join(t.TempDir(), "part.jsonl")
		studied(t, append(common, "--part", fmt.Sprintf("%d/8", i), "--format", "jsonl", "--output", name)...)
		parts = append(parts, name)
	}
	for _, format := range studying.Formats {
		want := studied(t, append(common, "--format", format)...)
		assert.Contains(t, studied(t, append(common, "--format", "text")...), "joint.count.most")
		assert.Equal(t, want, studied(t, append([]string{"--join", "--standards", house, "--format", format}, parts...)...), format)
	}
}

// What is not the whole of one study is not joined, and said by its file.
func TestPartsThatAreNoStudy(t *testing.T) {
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	write := func(name, text string) { require.NoError(t, os.WriteFile(name, []byte(text), 0o600)) }
	write("a.ceiling.toml", string(src))
	vary := []string{"a.ceiling.toml", "--vary", "grid.along=6,5,4,3", "--on", "2026-11-25", "--format", "jsonl"}
	one, two := studied(t, append(vary, "--part", "1/2")...), studied(t, append(vary, "--part", "2/2")...)
	write("1", one)
	write("2", two)
	write("third", studied(t, append(vary, "--part", "1/3")...))
	write("strict", studied(t, append(vary, "--part", "2/2", "--strict")...))
	write("passing", studied(t, append(vary, "--part", "2/2", "--only", "pass")...))
	lines := strings.SplitAfter(two, "\n")
	write("cut", strings.Join(lines[:2], ""))
	write("short", lines[0]+lines[1]+lines[3])
	write("twice", lines[0]+lines[1]+lines[1])
	write("broken", lines[0]+"{\"option\":")
	write("empty", "")
	for parts, says := range map[string]string{
		"1":                      "part 2/2 is missing",
		"2":                      "part 1/2 is missing",
		"1 1":                    "1 and 1 are both part 1/2",
		"1 third":                "1 is one of 2 parts and third one of 3",
		"1 strict":               "1 and strict are of different studies: --strict differs",
		"1 passing":              "passing: it ends before option ",
		"1 cut":                  "cut: it has no last line: the study was cut off",
		"1 short":                "short: it ends before option 4: the study was interrupted, or written with --only pass",
		"1 twice":                "twice: it has option 3 where option 4 is expected",
		"1 broken":               "broken: after option 2: ",
		"1 empty":                "empty: its first line is not that of a study of --format jsonl",
		"a.ceiling.toml":         "a.ceiling.toml: its first line is not that",
		"nowhere":                "nowhere",
		"1 2 --vary grid.ends=x": "--join takes --vary from the parts",
		"1 2 --format yaml":      `--format "yaml" is not`,
	} {
		var out, errs bytes.Buffer
		args := append([]string{"study", "--join"}, strings.Fields(parts)...)
		assert.Equal(t, exit.NotChecked, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), parts)
		assert.Contains(t, errs.String(), says, parts)
	}
	write("a.ceiling.toml", string(src)+"\n# changed\n")
	var errs bytes.Buffer
	assert.Equal(t, exit.NotChecked, run(context.Background(), []string{"study", "--join", "1", "2"}, console.Streams{Out: &errs, Err: &errs}))
	assert.Contains(t, errs.String(), "1 is part of another study than the one that a.ceiling.toml makes now: its spec has changed")
}

// Parts are even whatever the files are called: of 4,000 names that differ little
// each of up to 16 parts has its share within four standard deviations.
func TestPartsAreEven(t *testing.T) {
	const names = 4000
	for _, of := range []int{2, 3, 4, 8, 16} {
		count := make([]int, of)
		for i := range names {
			for k := range of {
				if source.InPart(study.Part{Number: k + 1, Of: of}, fmt.Sprintf("specs/%d.ceiling.toml", 2*i)) {
					count[k]++
				}
			}
		}
		share := names / of
		for _, n := range count {
			assert.InDelta(t, share, n, 4*float64(share)/10, "%d parts: %v", of, count)
		}
	}
}

// Outside a repository too a part is the same from whichever folder it is asked
// for.
func TestPartsFromAnyFolder(t *testing.T) {
	root := t.TempDir()
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	for i := range 6 {
		folder := filepath.Join(root, "specs", fmt.Sprint(i%3))
		require.NoError(t, os.MkdirAll(folder, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("%d.ceiling.toml", i)), src, 0o600))
	}
	listed := func(folder, named string) (names []string) {
		t.Chdir(folder)
		var out, errs bytes.Buffer
		run(context.Background(), []string{"check", "--summary", "--part", "1/2", "--on", "2026-11-25", named}, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
		for _, word := range strings.Fields(out.String()) {
			if strings.HasSuffix(word, ".ceiling.toml:") {
				names = append(names, filepath.Base(word))
			}
		}
		return names
	}
	want := listed(root, "specs")
	assert.NotEmpty(t, want)
	assert.Less(t, len(want), 6)
	assert.Equal(t, want, listed(filepath.Join(root, "specs"), "."))
	assert.Equal(t, want, listed("/", filepath.Join(root, "specs")))
}

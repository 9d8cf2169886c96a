package main

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const chapel = "chapel.ceiling.toml"

var (
	fenced  = regexp.MustCompile("(?ms)^(?:<!-- ([^\n]*) -->\n)?```(\\w+)\n(.*?)^```$")
	inPlace = regexp.MustCompile(`^in place of "(.*)"$`)
)

// The tutorial is followed from an empty folder, by its own words: commands are
// run, changes are made where it says, and what it shows was printed by the
// commands just before.
func TestTutorial(t *testing.T) {
	long(t)
	page, err := os.ReadFile("../../docs/tutorial.md")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	said := ""
	for _, b := range fenced.FindAllStringSubmatch(string(page), -1) {
		switch mark, kind, text := b[1], b[2], b[3]; kind {
		case "sh":
			said = ""
			for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
				said += follow(t, line)
			}
		case "toml":
			put(t, mark, text)
		case "text":
			assert.Contains(t, said, text)
		}
	}
	sheets, err := os.ReadFile("chapel.pdf")
	require.NoError(t, err)
	assert.True(t, bytes.HasPrefix(sheets, []byte("%PDF-")))
}

// put changes the spec as a mark over a block says.
func put(t *testing.T, mark, text string) {
	t.Helper()
	src, err := os.ReadFile(chapel)
	require.NoError(t, err)
	spec := string(src)
	if old := inPlace.FindStringSubmatch(mark); old != nil {
		line := regexp.MustCompile("(?m)^" + regexp.QuoteMeta(old[1]) + ".*\n")
		require.Len(t, line.FindAllString(spec, -1), 1, mark)
		spec = line.ReplaceAllLiteralString(spec, text)
	} else {
		require.Equal(t, "at the end", mark)
		spec += "\n" + text
	}
	require.NoError(t, os.WriteFile(chapel, []byte(spec), 0o644))
}

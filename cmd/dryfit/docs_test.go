package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/internal/outside"
)

// repository is one as the pages speak of: two specs in a folder, their
// standards, an older and a newer revision, and some loose specs.
func repository(t *testing.T) {
	t.Helper()
	git := outside.Program(t, "git")
	examples, err := filepath.Abs("../../docs/examples/alder-quay")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("specs", 0o755))
	require.NoError(t, os.Mkdir("../our-shop", 0o755))
	for from, to := range map[string][]string{
		"dryfit.toml":                     {"dryfit.toml", "../our-shop/dryfit.toml"},
		"specs/reading-room.ceiling.toml": {"specs/reading-room.ceiling.toml", "reading-room.ceiling.toml", "after.ceiling.toml"},
		"specs/map-gallery.ceiling.toml":  {"before.ceiling.toml"},
	} {
		src, err := os.ReadFile(filepath.Join(examples, from))
		require.NoError(t, err)
		for _, name := range to {
			require.NoError(t, os.WriteFile(name, src, 0o644))
		}
	}
	follow(t, `dryfit begin --span 14ft --rise 4ft --length 20ft --output specs/hall.ceiling.toml`)
	for _, args := range [][]string{
		{"init", "-q", "-b", "main"},
		{"add", "."},
		{"-c", "user.name=nobody", "-c", "user.email=", "commit", "-qm", "one"},
		{"-c", "user.name=nobody", "-c", "user.email=", "commit", "-qm", "two", "--allow-empty"},
		{"update-ref", "refs/remotes/origin/main", "HEAD"},
	} {
		out, err := exec.Command(git, args...).CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
}

// elsewhere are lines that do not end, or write outside of the folder.
var elsewhere = regexp.MustCompile(`--watch|/usr/`)

// Every command that the pages and the help show runs as it is written, in a
// repository such as they speak of.
func TestShownCommandsRun(t *testing.T) {
	long(t)
	pages, err := filepath.Glob("../../docs/*.md")
	require.NoError(t, err)
	var lines []string
	for _, page := range pages {
		src, err := os.ReadFile(page)
		require.NoError(t, err)
		if filepath.Base(page) == "tutorial.md" {
			continue // which has a test of its own
		}
		for _, b := range fenced.FindAllStringSubmatch(string(src), -1) {
			if b[2] == "sh" {
				lines = append(lines, strings.Split(b[3], "\n")...)
			}
		}
	}
	var examples func(c *cobra.Command)
	examples = func(c *cobra.Command) {
		lines = append(lines, strings.Split(c.Example, "\n")...)
		for _, sub := range c.Commands() {
			examples(sub)
		}
	}
	examples(rootCommand(console.Streams{}))

	repository(t)
	require.NoError(t, os.WriteFile("room.toml", []byte(measuredRoom), 0o644))
	ran := map[string]bool{}
	for _, line := range lines {
		line = strings.TrimSpace(line)
		if !strings.HasPrefix(line, "dryfit ") || elsewhere.MatchString(line) || ran[line] {
			continue
		}
		ran[line] = true
		_ = os.Remove("hall.ceiling.toml") // begin overwrites nothing
		out := follow(t, line)
		assert.True(t, out != "" || strings.Contains(line, "--output"), line)
	}
	assert.Greater(t, len(ran), 30)
}

// measuredRoom is a room whose walls lean apart a little.
const measuredRoom = `dryfit = 1

[survey]
accuracy = "1mm"
near     = { left = "0mm", right = "4mm" }
far      = { left = "7145mm", right = "7139mm" }

[[survey.station]]
at    = "0mm"
left  = "2119mm"
right = "2122mm"

[[survey.station]]
at    = "7145mm"
left  = "2121mm"
right = "2122mm"
`

var (
	words    = regexp.MustCompile(`"[^"]*"|'[^']*'|\S+`)
	redirect = regexp.MustCompile(` ([<>|]) (\S+).*$`)
)

// follow runs a command line as it is shown, up to a pipe, and is all that it
// prints.
func follow(t *testing.T, line string) string {
	t.Helper()
	out, errs, _ := printed(t, line)
	return out + errs
}

// printed is what a command line prints to standard output and beside it, and
// its exit status, which is that of a verdict.
func printed(t *testing.T, line string) (out, errs string, status int) {
	t.Helper()
	s := console.Streams{In: strings.NewReader("")}
	if to := redirect.FindStringSubmatch(line); to != nil {
		line = strings.TrimSuffix(line, to[0])
		if to[1] == "<" {
			src, err := os.ReadFile(to[2])
			require.NoError(t, err)
			s.In = bytes.NewReader(src)
		}
	}
	var args []string
	for _, w := range words.FindAllString(os.ExpandEnv(line), -1) {
		args = append(args, strings.Trim(w, `"'`))
	}
	require.Equal(t, "dryfit", args[0])
	var o, e bytes.Buffer
	s.Out, s.Err = &o, &e
	status = run(context.Background(), args[1:], s)
	require.LessOrEqual(t, status, 1, "%s: %s", line, &e)
	return o.String(), e.String(), status
}

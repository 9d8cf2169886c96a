package main

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/internal/outside"
)

// watched is the program at its watch.
type watched struct {
	t     *testing.T
	run   *exec.Cmd
	lines chan string
}

func startWatching(t *testing.T, folder string, args ...string) *watched {
	w := &watched{t: t, run: exec.Command("dryfit", append([]string{"check", "--watch", "--on", "2026-11-25"}, args...)...), lines: make(chan string, 1000)}
	w.run.Dir = folder
	out, err := w.run.StdoutPipe()
	require.NoError(t, err)
	w.run.Stderr = os.Stderr
	require.NoError(t, w.run.Start())
	go func() {
		defer close(w.lines)
		for scan := bufio.NewScanner(out); scan.Scan(); {
			w.lines <- scan.Text()
		}
	}()
	t.Cleanup(func() { w.run.Process.Kill(); w.run.Wait() })
	return w
}

// until reads on to a line that has some words, and returns all up to it.
func (w *watched) until(words string) string {
	w.t.Helper()
	var read strings.Builder
	patience := time.After(time.Minute) // it takes a fraction of a second
	for {
		select {
		case line, ok := <-w.lines:
			require.True(w.t, ok, "it ended before %q: %s", words, read.String())
			read.WriteString(line + "\n")
			if strings.Contains(line, words) {
				return read.String()
			}
		case <-patience:
			require.Fail(w.t, "never came: "+words, read.String())
		}
	}
}

// save puts a new file in an old one's place, as editors do.
func save(t *testing.T, path, text string) {
	require.NoError(t, os.WriteFile(path+"~", []byte(text), 0o644))
	require.NoError(t, os.Rename(path+"~", path))
}

func TestWatch(t *testing.T) {
	src, err := os.ReadFile("../../schema/testdata/good/required-only.ceiling.toml")
	require.NoError(t, err)
	text := string(src)
	root := t.TempDir()
	specs := filepath.Join(root, "specs")
	require.NoError(t, os.MkdirAll(specs, 0o755))
	require.NoError(t, os.Mkdir(filepath.Join(root, ".git"), 0o755))
	one, two := filepath.Join(specs, "one.ceiling.toml"), filepath.Join(specs, "two.ceiling.toml")
	save(t, one, text)
	save(t, two, text)

	w := startWatching(t, root, "specs")
	first := w.until("specs/two.ceiling.toml") + w.until("PASS WITH NOTES")
	assert.Contains(t, first, "specs/one.ceiling.toml", "all are shown once")

	// A broken spec: only that one is shown again, and then its cure.
	save(t, two, text+"\nnonsense = [\n")
	assert.NotContains(t, w.until("COULD NOT CHECK"), "one.ceiling.toml")
	save(t, two, text)
	assert.NotContains(t, w.until("PASS WITH NOTES"), "one.ceiling.toml")

	// New standards above concern both; a file of another kind concerns none.
	save(t, filepath.Join(specs, "notes.txt"), "nothing")
	save(t, filepath.Join(root, "dryfit.toml"), "dryfit = 1\nname = \"A new shop\"\n")
	both := w.until("A new shop") + w.until("A new shop")
	assert.Contains(t, both, "one.ceiling.toml")
	assert.Contains(t, both, "two.ceiling.toml")
	w.until("PASS WITH NOTES")

	// A spec in a new folder.
	require.NoError(t, os.Mkdir(filepath.Join(specs, "more"), 0o755))
	time.Sleep(300 * time.Millisecond) // the folder has to be seen before what is put into it; a save is not lost, only late
	save(t, filepath.Join(specs, "more", "three.ceiling.toml"), text)
	w.until("specs/more/three.ceiling.toml")
	w.until("PASS WITH NOTES")

	// Folders that go do no harm.
	require.NoError(t, os.RemoveAll(filepath.Join(specs, "more")))
	save(t, one, strings.Replace(text, "dryfit", "dryfat", 1))
	w.until("COULD NOT CHECK")

	require.NoError(t, w.run.Process.Signal(syscall.SIGINT))
	for range w.lines {
	}
	err = w.run.Wait()
	ended := &exec.ExitError{}
	require.ErrorAs(t, err, &ended)
	assert.Equal(t, exit.Interrupted, ended.ExitCode())
}

// What git tracks is watched wherever it is, and what it comes to ignore is not
// checked any more.
func TestWatchAsksGit(t *testing.T) {
	git := outside.Program(t, "git")
	src, err := os.ReadFile("../../schema/testdata/good/required-only.ceiling.toml")
	require.NoError(t, err)
	root := t.TempDir()
	hidden, draft := filepath.Join(root, ".hidden", "a.ceiling.toml"), filepath.Join(root, "draft.ceiling.toml")
	require.NoError(t, os.Mkdir(filepath.Dir(hidden), 0o755))
	require.NoError(t, os.MkdirAll(filepath.Join(root, "node_modules", "many"), 0o755))
	save(t, hidden, string(src))
	save(t, draft, string(src))
	for _, args := range [][]string{{"init", "-q"}, {"add", ".hidden"}} {
		out, err := exec.Command(git, append([]string{"-C", root}, args...)...).CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	w := startWatching(t, root)
	w.until(".hidden/a.ceiling.toml")
	w.until("draft.ceiling.toml")
	w.until("PASS WITH NOTES")
	save(t, hidden, strings.Replace(string(src), "dryfit", "dryfat", 1))
	w.until(".hidden/a.ceiling.toml")
	w.until("COULD NOT CHECK")
	save(t, filepath.Join(root, ".gitignore"), "draft.*\n")
	save(t, draft, "nonsense")
	save(t, hidden, string(src))
	assert.NotContains(t, w.until("PASS WITH NOTES"), "draft")
}

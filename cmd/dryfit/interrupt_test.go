package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
)

// interrupting is a standard input during which the user presses ctrl-C.
type interrupting struct {
	io.Reader
	press context.CancelFunc
}

func (i interrupting) Read(b []byte) (int, error) {
	i.press()
	return i.Reader.Read(b)
}

// An interrupted command says so, leaves an old file as it was, and nothing
// beside it.
func TestInterruptedKeepsTheOldFile(t *testing.T) {
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	for _, args := range [][]string{
		{"check", "-", "--output", "old"},
		{"check", "-", "--format", "jsonl", "--output", "old"},
		{"check", "-", "--format", "json", "--output", "old"},
		{"check", "-", "--format", "junit", "--output", "old"},
		{"check", "-", "--format", "sarif", "--output", "old"},
		{"remedy", "-", "--output", "old"},
	} {
		t.Run(args[0]+args[len(args)-3], func(t *testing.T) {
			t.Chdir(t.TempDir())
			require.NoError(t, os.WriteFile("old", []byte("what was there"), 0o644))
			ctx, press := context.WithCancel(context.Background())
			var out, errs bytes.Buffer
			status := run(ctx, args, console.Streams{In: interrupting{bytes.NewReader(src), press}, Out: &out, Err: &errs})
			assert.Equal(t, exit.Interrupted, status, "%s", &errs)
			assert.Contains(t, errs.String(), "dryfit: interrupted")
			kept, err := os.ReadFile("old")
			require.NoError(t, err)
			assert.Equal(t, "what was there", string(kept))
			left, err := filepath.Glob("*")
			require.NoError(t, err)
			hidden, err := filepath.Glob(".*")
			require.NoError(t, err)
			assert.Equal(t, []string{"old"}, append(left, hidden...))
		})
	}
}

// A program that is ended by another, or by a terminal that closes, ends as by
// ctrl-C: it leaves nothing half written.
func TestEndedByASignal(t *testing.T) {
	demo, err := filepath.Abs(demo)
	require.NoError(t, err)
	for _, end := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP} {
		t.Run(end.String(), func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			c := exec.Command("dryfit", "study", demo, "--vary", manyOptions, "--format", "jsonl", "--output", "out")
			c.Dir = folder
			require.NoError(t, c.Start())
			half := filepath.Join(folder, ".dryfit-*")
			require.Eventually(t, func() bool { found, _ := filepath.Glob(half); return len(found) == 1 }, time.Minute, time.Millisecond)
			require.NoError(t, c.Process.Signal(end))
			ended := &exec.ExitError{}
			require.ErrorAs(t, c.Wait(), &ended)
			assert.Equal(t, exit.Interrupted, ended.ExitCode())
			left, err := filepath.Glob(half)
			require.NoError(t, err)
			assert.Empty(t, left)
		})
	}
}

package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/internal/outside"
)

// withoutStdin are command lines that name no standard input, of every command.
// serve-editor is not among them: it is told everything on its standard input.
var withoutStdin = []string{
	"", "--help", "--version", "chekc",
	"check", "check one.ceiling.toml", "check two.ceiling.toml one.ceiling.toml --format jsonl", "check folder", "check missing.ceiling.toml",
	"check --watch", "check --watch one.ceiling.toml",
	"submittal one.ceiling.toml --output page.html", "submittal folder --output pages", "submittal --verify page.html one.ceiling.toml",
	"calcs one.ceiling.toml", "takeoff one.ceiling.toml", "shop one.ceiling.toml --output cutting", "raise one.ceiling.toml", "compare one.ceiling.toml two.ceiling.toml",
	"study one.ceiling.toml --vary grid.along=4,5", "remedy one.ceiling.toml", "draw one.ceiling.toml --sheet section --format svg",
	"begin --span 4200mm --rise 840mm --length 7080mm", "basis", "standards", "standards one.ceiling.toml", "schema spec", "manual --output man",
	"completion bash", "help", "help check",
}

// openInputs are inputs on which a line waits and no end will come: reading to
// the end hangs, reading at all takes what is somebody else's.
var openInputs = map[string]func(*testing.T) (in, other *os.File){
	"a pipe": func(t *testing.T) (in, other *os.File) {
		in, other, err := os.Pipe()
		require.NoError(t, err)
		return in, other
	},
	"a terminal": openTerminal,
}

// A standard input that is not named is not read, whatever it is.
func TestStandardInputIsNotRead(t *testing.T) {
	inFolderOfSpecs(t)
	for kind, open := range openInputs {
		t.Run(kind, func(t *testing.T) {
			in, other := open(t)
			defer in.Close()
			defer other.Close()
			_, err := io.WriteString(other, "the next line\n")
			require.NoError(t, err)
			for _, line := range withoutStdin {
				_, errs, status := underLimit(t, line, in)
				assert.NotContains(t, errs, "Span,", line)
				switch {
				case strings.HasPrefix(line, "check --watch"):
					assert.Equal(t, exit.Interrupted, status, line)
				case line == "chekc" || strings.Contains(line, "missing"):
					assert.Equal(t, exit.NotChecked, status, line)
				default:
					assert.LessOrEqual(t, status, exit.Fail, "%s: %s", line, errs)
				}
			}
			next := make([]byte, 100)
			n, err := in.Read(next)
			require.NoError(t, err)
			assert.Equal(t, "the next line\n", string(next[:n]))
		})
	}
}

// A command that is new has to be put among those above.
func TestEveryCommandIsTriedOnAnOpenInput(t *testing.T) {
	for _, c := range rootCommand(console.Streams{}).Commands() {
		named := func(line string) bool { return strings.HasPrefix(line+" ", c.Name()+" ") }
		assert.True(t, slices.ContainsFunc(withoutStdin, named) || c.Name() == "serve-editor", c.Name())
	}
}

// inFolderOfSpecs makes a folder of specs this one.
func inFolderOfSpecs(t *testing.T) {
	src, err := os.ReadFile("../../schema/testdata/good/required-only.ceiling.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("folder", 0o755))
	for _, name := range []string{"one", "two", "folder/three", "folder/four"} {
		require.NoError(t, os.WriteFile(filepath.FromSlash(name)+source.Extension, src, 0o644))
	}
}

// underLimit runs a command line, and fails where it does not end. A watch is
// interrupted as soon as it has printed a verdict.
func underLimit(t *testing.T, line string, in io.Reader) (out, errs string, status int) {
	t.Helper()
	ctx, interrupt := context.WithCancel(context.Background())
	defer interrupt()
	var o, e bytes.Buffer
	s := console.Streams{In: in, Out: &o, Err: &e}
	if strings.Contains(line, "--watch") {
		s.Out = writerFunc(func(b []byte) (int, error) {
			if bytes.Contains(b, []byte("PASS")) {
				interrupt()
			}
			return o.Write(b)
		})
	}
	ended := make(chan int, 1)
	go func() { ended <- run(ctx, strings.Fields(line), s) }()
	select {
	case status = <-ended:
	case <-time.After(time.Minute): // it takes a fraction of a second
		require.FailNow(t, "it does not end", line)
	}
	return o.String(), e.String(), status
}

type writerFunc func([]byte) (int, error)

func (w writerFunc) Write(b []byte) (int, error) { return w(b) }

// Only a terminal is asked for what begin lacks.
func TestBeginAsksATerminalAlone(t *testing.T) {
	null, err := os.Open(os.DevNull)
	require.NoError(t, err)
	defer null.Close()
	in, other, err := os.Pipe()
	require.NoError(t, err)
	defer in.Close()
	defer other.Close()
	for _, in := range []*os.File{null, in} {
		_, errs, status := underLimit(t, "begin", in)
		assert.Equal(t, exit.NotChecked, status)
		assert.Equal(t, "dryfit: begin needs --span, --rise, --length\n", errs)
	}
	in, other = openTerminal(t)
	defer in.Close()
	defer other.Close()
	_, err = io.WriteString(other, "\n4200mm\n840mm\n7080mm\n")
	require.NoError(t, err)
	out, errs, status := underLimit(t, "begin", in)
	assert.Equal(t, 0, status, errs)
	assert.Contains(t, errs, "Span, springing to springing")
	assert.Contains(t, out, `"4200mm"`)
}

// An interrupt ends the questions at once, without a line, and leaves no file.
func TestInterruptedQuestionsLeaveNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	in, other := openTerminal(t)
	defer in.Close()
	defer other.Close()
	ctx, interrupt := context.WithCancel(context.Background())
	defer interrupt()
	var out bytes.Buffer
	errs := writerFunc(func(b []byte) (int, error) {
		if bytes.Contains(b, []byte("Curve: ")) {
			interrupt()
		}
		return len(b), nil
	})
	_, err := io.WriteString(other, "4m,5m,2.7m\n")
	require.NoError(t, err)
	ended := make(chan int, 1)
	go func() {
		ended <- run(ctx, []string{"begin", "--output", "new.ceiling.toml"}, console.Streams{In: in, Out: &out, Err: errs})
	}()
	select {
	case status := <-ended:
		assert.Equal(t, exit.Interrupted, status)
	case <-time.After(time.Minute):
		require.FailNow(t, "it does not end")
	}
	left, err := os.ReadDir(".")
	require.NoError(t, err)
	assert.Empty(t, left)
	assert.Empty(t, out.String())
}

// A shell that reads its own lines from standard input loses none to dryfit.
func TestAShellKeepsItsLines(t *testing.T) {
	shell := outside.Program(t, "sh")
	inFolderOfSpecs(t)
	for name, script := range map[string]string{
		"a loop":            "printf 'one\\ntwo\\n' | while read f; do dryfit check \"$f.ceiling.toml\"; done",
		"a script by input": "dryfit check one.ceiling.toml\ndryfit check two.ceiling.toml\n",
	} {
		t.Run(name, func(t *testing.T) {
			ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
			defer cancel()
			c := exec.CommandContext(ctx, shell, "-s")
			c.Stdin = strings.NewReader(script)
			out, err := c.CombinedOutput()
			require.NoError(t, err, "%s", out)
			assert.Contains(t, string(out), "one.ceiling.toml")
			assert.Contains(t, string(out), "two.ceiling.toml")
		})
	}
}

// What is named is read: - of every command that takes a spec.
func TestStandardInputIsReadWhereItIsNamed(t *testing.T) {
	src, err := os.ReadFile("../../schema/testdata/good/required-only.ceiling.toml")
	require.NoError(t, err)
	inFolderOfSpecs(t)
	for _, line := range []string{
		"check -", "check one.ceiling.toml -", "submittal - --output page.html", "submittal - one.ceiling.toml --output pages",
		"calcs -", "takeoff -", "raise -", "compare - one.ceiling.toml", "study - --vary grid.along=4,5", "remedy -", "draw - --sheet section --format svg",
	} {
		in := bytes.NewReader(src)
		_, errs, status := underLimit(t, line, in)
		assert.LessOrEqual(t, status, exit.Fail, "%s: %s", line, errs)
		assert.Zero(t, in.Len(), line)
	}
}

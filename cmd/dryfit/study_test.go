package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
)

// cancelling ends a context once it has been written to.
type cancelling struct {
	io.Writer
	end context.CancelFunc
}

func (c cancelling) Write(b []byte) (int, error) {
	if bytes.Contains(b, []byte(`{"option":`)) {
		c.end()
	}
	return c.Writer.Write(b)
}

// jsonLines is the first line, how many options follow, and the outcome.
func jsonLines(t *testing.T, r io.Reader) (options int, done int, interrupted bool) {
	t.Helper()
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<20)
	var outcome struct {
		Outcome *struct {
			Done        int  `json:"done"`
			Interrupted bool `json:"interrupted"`
		} `json:"outcome"`
	}
	for lines.Scan() {
		require.Nil(t, outcome.Outcome, "the outcome is the last line")
		require.NoError(t, json.Unmarshal(lines.Bytes(), &outcome))
		if bytes.HasPrefix(lines.Bytes(), []byte(`{"option":`)) {
			options++
		}
	}
	require.NotNil(t, outcome.Outcome)
	return options, outcome.Outcome.Done, outcome.Outcome.Interrupted
}

const manyOptions = "vault.rise=700mm..900mm/0.05mm"

// What was done before an interruption is written whole, and said.
func TestStudyInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	var out, errs bytes.Buffer
	args := []string{"study", demo, "--vary", manyOptions, "--format", "jsonl"}
	status := run(ctx, args, console.Streams{In: strings.NewReader(""), Out: cancelling{&out, cancel}, Err: &errs})
	assert.Equal(t, exit.Interrupted, status)
	options, done, interrupted := jsonLines(t, &out)
	assert.True(t, interrupted)
	assert.Equal(t, done, options)
	assert.Positive(t, options)
	assert.Regexp(t, `^dryfit: \d+ of 4001 options were checked and written\ndryfit: interrupted\n$`, errs.String())
}

// So it is in a file, and in the formats that are written at the end.
func TestStudyInterruptedToFile(t *testing.T) {
	for _, format := range []string{"jsonl", "csv", "json", "text", "html"} {
		file := filepath.Join(t.TempDir(), "out")
		ctx, cancel := context.WithCancel(context.Background())
		time.AfterFunc(time.Second, cancel)
		var errs bytes.Buffer
		args := []string{"study", demo, "--vary", manyOptions, "--format", format, "--output", file}
		status := run(ctx, args, console.Streams{In: strings.NewReader(""), Out: io.Discard, Err: &errs})
		cancel()
		require.Equal(t, exit.Interrupted, status, errs.String())
		text, err := os.ReadFile(file)
		require.NoError(t, err, format)
		assert.NotEmpty(t, text)
		switch format {
		case "jsonl":
			options, done, interrupted := jsonLines(t, bytes.NewReader(text))
			assert.True(t, interrupted && options == done)
		case "json":
			var all struct {
				Done        int              `json:"done"`
				Interrupted bool             `json:"interrupted"`
				Options     []map[string]any `json:"options"`
			}
			require.NoError(t, json.Unmarshal(text, &all))
			assert.True(t, all.Interrupted)
			assert.Len(t, all.Options, all.Done)
		case "text", "html":
			assert.Contains(t, string(text), "INTERRUPTED after")
		}
		left, err := filepath.Glob(filepath.Join(filepath.Dir(file), ".dryfit-*"))
		require.NoError(t, err)
		assert.Empty(t, left)
	}
}

// The parts of a study, put together, are the study.
func TestStudyParts(t *testing.T) {
	rows := func(part string) []string {
		var out, errs bytes.Buffer
		args := []string{"study", demo, "--vary", "grid.along=3..7", "--vary", "grid.around=5..9", "--part", part, "--format", "jsonl"}
		require.Zero(t, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
		lines := strings.Split(strings.TrimSpace(out.String()), "\n")
		return lines[1 : len(lines)-1]
	}
	all := rows("1/1")
	assert.Len(t, all, 25)
	var parts []string
	for _, part := range []string{"1/4", "2/4", "3/4", "4/4"} {
		parts = append(parts, rows(part)...)
	}
	assert.Equal(t, all, parts)
}

// Past the number of options whose rows are kept, csv writes all as they come
// and text lists the unbeaten.
func TestStudyOfMany(t *testing.T) {
	var out, errs bytes.Buffer
	vary := []string{"--vary", "vault.rise=2200mm..2700mm/0.2mm", "--vary", "grid.along=1..4"} // impossible, which is quick
	args := append([]string{"study", demo, "--format", "csv"}, vary...)
	require.Zero(t, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
	assert.Equal(t, 1+10004, strings.Count(out.String(), "\r\n"))
	head, _, _ := strings.Cut(out.String(), "\r\n")
	assert.NotContains(t, head, "unbeaten")
	assert.Contains(t, errs.String(), "10004 options checked: 10004 can't be made")

	out.Reset()
	args[3] = "text"
	require.Zero(t, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
	assert.Contains(t, out.String(), "over 10000 options: only the unbeaten are listed; csv and jsonl list all")
	assert.Less(t, out.Len(), 4000)

	args = append(args, "--sort", "mass")
	args[3] = "csv"
	assert.Equal(t, exit.NotChecked, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}))
	assert.Contains(t, errs.String(), "--sort can't be combined with --format csv for more than 10000 options")
}

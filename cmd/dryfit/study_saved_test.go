package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
)

// A saved option is its row: studied by itself, with a value that it has already, it
// has the figures, the verdict and the counts of the row that it was saved from. All
// lines of the author but those of the changed keys are as they were.
func TestSavedOptionsAreTheirRows(t *testing.T) {
	author, err := os.ReadFile(demo)
	require.NoError(t, err)
	standards := filepath.Join(filepath.Dir(filepath.Dir(demo)), "dryfit.toml")
	for _, c := range []struct {
		vary string
		most int // lines that may differ
	}{
		{"grid.along=4..5", 2},                     // panels.along follows
		{"vault.span,rise=4.2m/840mm,4m/900mm", 3}, // room.width follows
		{`skin={material="bendable plywood",thickness="6.5mm"},{material="bendable plywood",thickness="5mm"}`, 3}, // rail.depth and skin.setback follow
		{`route."street door".width=1000mm,1100mm`, 1},
	} {
		t.Run(c.vary, func(t *testing.T) {
			t.Parallel()
			common := []string{"--on", "2026-11-25", "--standards", standards}
			rows := rowsOf(t, append([]string{demo, "--vary", c.vary}, common...)...)
			require.Len(t, rows, 2)
			for i, row := range rows {
				saved := filepath.Join(t.TempDir(), "saved.ceiling.toml")
				ran(t, append([]string{"study", demo, "--vary", c.vary, "--save", fmt.Sprint(i + 1), "--output", saved}, common...)...)
				text, err := os.ReadFile(saved)
				require.NoError(t, err)
				was := strings.Split(string(author), "\n")
				is := strings.Split(string(text), "\n")
				require.Len(t, is, len(was))
				differ := 0
				for k := range was {
					if was[k] != is[k] {
						differ++
					}
				}
				assert.LessOrEqual(t, differ, c.most, string(text))
				alone := rowsOf(t, append([]string{saved, "--vary", "grid.ends=half"}, common...)...)
				require.Len(t, alone, 1)
				for _, key := range []string{"figures", "verdict", "counts", "queried_by"} {
					assert.Equal(t, row[key], alone[0][key], key)
				}
			}
		})
	}
}

// rowsOf are the rows of a study.
func rowsOf(t *testing.T, args ...string) (rows []map[string]any) {
	var study struct{ Options []map[string]any }
	require.NoError(t, json.Unmarshal(ran(t, append([]string{"study", "--format", "json"}, args...)...), &study))
	return study.Options
}

// ran is what a command writes.
func ran(t *testing.T, args ...string) []byte {
	var out, errs bytes.Buffer
	require.Zero(t, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
	return out.Bytes()
}

package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// What is written part by part is laid out as an encoder lays out the whole: of no run, of
// runs without a result, and of several.
func TestDocumentsAreLaidOutAsAWhole(t *testing.T) {
	r := full(t)
	one := r.Runs[0].Assessments[0]
	quiet := &review.Assessment{Path: "quiet.ceiling.toml", Standards: standards.BuiltIn()}
	for _, runs := range [][]Run{nil, {{}}, {{Assessments: []*review.Assessment{quiet}}}, {{Assessments: []*review.Assessment{one, quiet, one}}, {}, {Assessments: []*review.Assessment{one}}}} {
		r.Runs = runs
		for name, format := range map[string]Format{"json": JSON, "sarif": SARIF} {
			got := written(t, func(b *bytes.Buffer) error { return Write(b, r, format) })
			var laid bytes.Buffer
			require.NoError(t, json.Indent(&laid, got, "", "  "), name)
			assert.Equal(t, laid.String(), string(got), name)
		}
		var document struct{ Runs []struct{ Files []jsonFile } }
		require.NoError(t, json.Unmarshal(written(t, func(b *bytes.Buffer) error { return Write(b, r, JSON) }), &document))
		var log sarifLog
		require.NoError(t, json.Unmarshal(sarifOf(t, r), &log))
		require.Len(t, document.Runs, len(runs))
		require.Len(t, log.Runs, len(runs))
		for i, run := range runs {
			want := 0
			for _, s := range run.Assessments {
				want += len(Entries(s))
			}
			assert.Len(t, document.Runs[i].Files, len(run.Assessments))
			assert.Len(t, log.Runs[i].Results, want)
			assert.NotNil(t, log.Runs[i].Results)
			assert.Equal(t, "unicodeCodePoints", log.Runs[i].ColumnKind)
		}
	}
}

// fullDisk is a full disk.
type fullDisk struct{}

var errFull = errors.New("no space left")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

// What could not be written is said, by the end of the report at the latest.
func TestNoFormatHidesThatItCanNotBeWritten(t *testing.T) {
	r := full(t)
	for name, format := range everyWriter {
		assert.ErrorIs(t, Write(fullDisk{}, r, format), errFull, name)
	}
	assert.ErrorIs(t, Write(fullDisk{}, r, Summary(false)), errFull)
}

// What is said of a spec does not wait for the next where nothing of it stands before.
func TestSpecsAreWrittenAsTheyAreDone(t *testing.T) {
	r := full(t)
	one := r.Runs[0].Assessments[0]
	r.Runs = nil
	for name, format := range map[string]Format{"text": Text(false), "jsonl": JSONLines, "sarif": SARIF, "junit": JUnit} {
		var b bytes.Buffer
		w := format(&b, r)
		require.NoError(t, w.Begin(Run{}))
		before := b.Len()
		require.NoError(t, w.Add(one))
		assert.Greater(t, b.Len(), before, name)
	}
}

// Of a spec next to nothing is kept in memory, in any format: a comment keeps what two of
// its length have room for, which others before these have taken.
func TestLittleIsKeptOfASpec(t *testing.T) {
	const before, specs = 1000, 500
	r := full(t)
	one := r.Runs[0].Assessments[0]
	r.Runs = nil
	for name, format := range everyWriter {
		w := format(io.Discard, r)
		require.NoError(t, w.Begin(Run{}))
		used := 0
		for i := range before + specs {
			if i == before {
				used = inUse()
			}
			s := *one
			s.Path = fmt.Sprintf("rooms/%d.ceiling.toml", i)
			s.Findings = slices.Clone(one.Findings)
			s.NotChecked = slices.Clone(one.NotChecked)
			require.NoError(t, w.Add(&s))
		}
		kept := (inUse() - used) / specs
		assert.Less(t, kept, 3500, "%s: bytes a spec, of which the findings alone take 4900", name)
		require.NoError(t, w.End(Run{}))
		require.NoError(t, w.Close())
	}
}

// inUse is how many bytes can be reached.
func inUse() int {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC() // and what pools held
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

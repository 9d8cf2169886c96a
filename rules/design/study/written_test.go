package study_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/sample"
)

// What an option is written as is the author's text with few lines changed, and a check
// of it has the figures, the counts and the verdict of the option's row.
func TestWrittenOptionsEqualTheirRows(t *testing.T) {
	for _, row := range []struct {
		spec  string
		vary  []string
		lines int // that change at the most
	}{
		{"reading-room", []string{"grid.along=3..6", "rib.species=white oak,red oak"}, 4},
		{"map-gallery", []string{"rib.depth=2in..3in/1/2in", "room.above=1ft,2ft"}, 4},
		{"orangery", []string{"vault.span=5m,5.2m", "vault.rise=1m..1.2m/100mm"}, 6},
		{"lantern-hall", []string{"grid.around=4,6", "wrap.allowance=20mm,30mm"}, 4},
	} {
		s := newStudy(t, row.spec, row.vary...)
		src := sample.Source(t, row.spec)
		for index := 1; index <= s.Total; index++ {
			o := s.Option(index)
			text, err := s.Written(src, index)
			if o.Fault != nil {
				require.ErrorContains(t, err, "can't be made", row.spec)
				continue
			}
			require.NoError(t, err, "%s %d", row.spec, index)
			got := s.Review(row.spec, text)
			require.Empty(t, got.Problems)
			want := s.Row(o)
			again := o
			again.Assessment = got
			row2 := s.Row(again)
			require.Len(t, row2.Figures, len(want.Figures))
			for i := range want.Figures {
				if want.Figures[i] == want.Figures[i] { // not NaN
					assert.Equal(t, want.Figures[i], row2.Figures[i], "%s %d %s", row.spec, index, s.Columns[i].Key)
				}
			}
			assert.Equal(t, want.Counts, row2.Counts)
			assert.Equal(t, want.Verdict, row2.Verdict)
			assert.LessOrEqual(t, changedLines(src, text), row.lines, "%s %d", row.spec, index)
		}
	}
	s := newStudy(t, "reading-room", "grid.along=3..6")
	_, err := s.Written(sample.Source(t, "reading-room"), 5)
	assert.EqualError(t, err, "there is no option 5; there are 1 to 4")
}

// changedLines is how many lines of one text the other does not have.
func changedLines(a, b []byte) (n int) {
	had := map[string]int{}
	for line := range bytes.Lines(a) {
		had[strings.TrimSpace(string(line))]++
	}
	for line := range bytes.Lines(b) {
		if key := strings.TrimSpace(string(line)); had[key] > 0 {
			had[key]--
		}
	}
	for _, left := range had {
		n += left
	}
	return n
}

package spool

import (
	"bytes"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is written comes out again, however long, in little memory, and as often as asked.
func TestSpoolKeepsWhatIsWritten(t *testing.T) {
	for _, lines := range []int{0, 1, 1000, 100_000} {
		var s Spool
		var want bytes.Buffer
		for i := range lines {
			line := fmt.Sprintf("%d: the sheet bends to 540mm; at least 600mm\n", i)
			want.WriteString(line)
			n, err := s.Write([]byte(line))
			require.NoError(t, err)
			require.Equal(t, len(line), n)
		}
		for range 2 {
			var out bytes.Buffer
			n, err := s.WriteTo(&out)
			require.NoError(t, err)
			assert.EqualValues(t, want.Len(), n)
			assert.True(t, bytes.Equal(want.Bytes(), out.Bytes()), lines)
		}
		kept := cap(s.last)
		for _, p := range s.packed {
			kept += cap(p)
		}
		assert.LessOrEqual(t, kept, want.Len()/5+2*chunk, lines)
	}
}

type full struct{}

var errFull = errors.New("no space left")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestSpoolSaysWhatCanNotBeWritten(t *testing.T) {
	for _, size := range []int{1, 3 * chunk} {
		var s Spool
		_, err := s.Write(make([]byte, size))
		require.NoError(t, err)
		_, err = s.WriteTo(full{})
		assert.ErrorIs(t, err, errFull)
	}
}

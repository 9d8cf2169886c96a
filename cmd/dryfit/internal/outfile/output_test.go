package outfile

import (
	"errors"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
)

type full struct{}

var errFull = errors.New("no space left")

func (full) Write([]byte) (int, error) { return 0, errFull }

// An error of what is written does not blame the place that it is written to.
func TestWriteTellsWhatFailed(t *testing.T) {
	err := Write("", full{}, nil, func(w io.Writer) error {
		_, err := io.WriteString(w, "text")
		return err
	})
	assert.ErrorIs(t, err, errFull)
	assert.EqualError(t, err, "write standard output: no space left")

	own := errors.New("the spec is gone")
	for _, to := range []io.Writer{full{}, io.Discard} {
		assert.Equal(t, own, Write("", to, nil, func(io.Writer) error { return own }))
	}
}

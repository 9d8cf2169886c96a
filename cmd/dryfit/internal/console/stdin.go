package console

import (
	"bytes"
	"io"
	"sync"

	"dryfit/spec"
)

// Once lets standard input be read again for each run. It is read by the first
// input that is -, and not at all where none is.
func Once(r io.Reader) func() io.Reader {
	read := sync.OnceValues(func() ([]byte, error) { return io.ReadAll(io.LimitReader(r, spec.MaxSize+1)) })
	return func() io.Reader { return &again{read: read} }
}

// again reads what was read once. What could not be read whole is an error from
// the first byte: part of a spec is none.
type again struct {
	read func() ([]byte, error)
	rest *bytes.Reader
}

// Read begins with the whole, and goes on from there.
func (a *again) Read(p []byte) (int, error) {
	if a.rest == nil {
		b, err := a.read()
		if err != nil {
			return 0, err
		}
		a.rest = bytes.NewReader(b)
	}
	return a.rest.Read(p)
}

// Package source finds and reads what a run is of: specs, the standards that hold
// for them, and what a revision had of both.
package source

import (
	"bytes"
	"io"
	"path/filepath"

	"dryfit/spec"
)

// Extension is what the name of a spec ends in.
const Extension = ".ceiling.toml"

// Input is one spec to check.
type Input struct {
	Name  string // for reports, with forward slashes
	Path  string
	Stdin bool
	found string // why it can't be read, where that was found on the way to it
}

// NewInput is the spec at a path.
func NewInput(path string) Input {
	return Input{Name: filepath.ToSlash(filepath.Clean(path)), Path: path}
}

// Read returns the bytes, or why there are none. More than a spec may have is
// not read: one byte over the limit is enough for the reader to say so.
func (in Input) Read(stdin io.Reader) (src []byte, problem string) {
	if in.found != "" {
		return nil, in.found
	}
	from := stdin
	if !in.Stdin {
		f, err := OpenRegular(in.Path)
		if err != nil {
			return nil, Reason(err)
		}
		defer f.Close()
		from = f
	}
	var b bytes.Buffer
	if _, err := io.Copy(&b, io.LimitReader(from, spec.MaxSize+1)); err != nil {
		return nil, Reason(err)
	}
	return b.Bytes(), ""
}

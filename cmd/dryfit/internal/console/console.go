// Package console has a command's streams, and tells a person at a terminal how far a
// long work is.
package console

import (
	"io"
	"os"

	"github.com/mattn/go-isatty"
)

// Streams are where a command reads and writes.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
}

// Terminal reports whether a stream is a terminal, and not a file, a pipe or
// another device.
func Terminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && (isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd()))
}

package beginning

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/source"
)

// free refuses an output that is there, or that no check would find.
func free(path string) error {
	if path == "" {
		return nil
	}
	info, err := os.Lstat(path)
	switch {
	case err == nil && (info.Mode().IsRegular() || info.IsDir()):
		return fmt.Errorf("write %s: the file exists, and begin never overwrites a file", path)
	case err == nil:
		return nil // a device or a pipe
	case !strings.HasSuffix(path, source.Extension):
		return fmt.Errorf("write %s: a spec's name ends in %s", path, source.Extension)
	default:
		return nil
	}
}

// writeNew writes to standard output, through a device or a pipe, or to a file
// that was not there.
func writeNew(path string, stdout io.Writer, text []byte) error {
	write := func(w io.Writer) error { _, err := w.Write(text); return err }
	if info, err := os.Stat(path); path == "" || err == nil && !info.Mode().IsRegular() {
		return outfile.Write(path, stdout, nil, write)
	}
	if err := outfile.MayWrite(path, nil); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("write %s: %s", path, source.Reason(err))
	}
	if err = errors.Join(write(f), f.Close()); err != nil {
		os.Remove(path) // half a spec is none
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}

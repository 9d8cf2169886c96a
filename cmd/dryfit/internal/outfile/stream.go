package outfile

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/source"
)

// Stream is Write for what may be too long to hold: a regular file
// grows under another name beside it, and takes its place once it is whole. It
// is whole too where the work was interrupted and what was done is written.
func Stream(path string, stdout io.Writer, inputs []source.Input, write func(io.Writer) error) error {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return fmt.Errorf("write %s: it is a folder", path)
	case path == "", err == nil && !info.Mode().IsRegular():
		return Write(path, stdout, inputs, write)
	}
	refuse := errors.New("not written")
	if err := Write(path, stdout, inputs, func(io.Writer) error { return refuse }); !errors.Is(err, refuse) {
		return err // an input, or not to be had
	}
	mode := os.FileMode(0o644)
	if info != nil {
		mode = info.Mode().Perm()
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".dryfit-*")
	if err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	defer os.Remove(f.Name()) // gone already, if all went well
	defer f.Close()
	b := bufio.NewWriter(f)
	done := write(b)
	if done != nil && !errors.Is(done, context.Canceled) {
		return done
	}
	for _, step := range []func() error{
		b.Flush, func() error { return f.Chmod(mode) }, f.Sync, f.Close,
		func() error { return os.Rename(f.Name(), path) },
	} {
		if err := step(); err != nil {
			return fmt.Errorf("write %s: %w", path, err)
		}
	}
	return done
}

// Package outfile writes files and folders whole or not at all, and none over what
// a run reads.
package outfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/cmd/dryfit/internal/source"
)

// Write writes to standard output, or to the file at path: a regular
// file whole or not at all, a device or a pipe as it comes.
func Write(path string, stdout io.Writer, inputs []source.Input, write func(io.Writer) error) error {
	if path == "" {
		return through("standard output", stdout, write)
	}
	if err := MayWrite(path, inputs); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		return writeThrough(path, write)
	}
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	if err := writeWhole(path, b.Bytes()); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}

// MayWrite is an error where a path is that of an input, or of a standards file,
// or leads out of the repository that it is in: a stranger's repository may have
// such a link where one writes.
func MayWrite(path string, inputs []source.Input) error {
	if root := git.Root("."); root != "" && filepath.IsLocal(source.Below(root, source.Absolute(path))) {
		if source.LeadsOut(path, root) || source.LeadsOut(thereAbove(path), root) {
			return errors.New("a symbolic link leads out of the repository")
		}
	}
	info, err := os.Stat(path)
	if err != nil {
		return nil // there is none, or none to be had
	}
	if source.IsStandards(path) {
		return errors.New("it is a standards file")
	}
	for _, in := range inputs {
		if other, err := os.Stat(in.Path); err == nil && os.SameFile(info, other) {
			return errors.New("it is an input")
		}
	}
	return nil
}

// thereAbove is the nearest folder above a path that is there.
func thereAbove(path string) string {
	folder := filepath.Dir(source.Absolute(path))
	for ; ; folder = filepath.Dir(folder) {
		if _, err := os.Lstat(folder); err == nil || folder == filepath.Dir(folder) {
			return folder
		}
	}
}

// MakeFolder makes a folder to write to, if it may be.
func MakeFolder(folder string, inputs []source.Input) error {
	err := MayWrite(filepath.Join(folder, "file"), inputs)
	if err == nil {
		err = os.MkdirAll(folder, 0o755)
	}
	if err != nil {
		return fmt.Errorf("write %s: %s", folder, source.Reason(err))
	}
	return nil
}

func writeThrough(path string, write func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	if err := through(path, f, write); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// through names what is written to where that fails; another error is of what is written.
func through(name string, to io.Writer, write func(io.Writer) error) error {
	out := &Minded{To: to}
	err := write(out)
	if err != nil && out.Err != nil {
		return fmt.Errorf("write %s: %w", name, err)
	}
	return err
}

// Minded keeps the first error of writing, for who can't tell it from others or never
// looks at it, as when help is printed.
type Minded struct {
	To  io.Writer
	Err error
}

// Write implements io.Writer.
func (m *Minded) Write(b []byte) (int, error) {
	n, err := m.To.Write(b)
	if err != nil && m.Err == nil {
		m.Err = err
	}
	return n, err
}

// Rewrite replaces a spec by its changed bytes, whole or not at all. What a
// symbolic link stands for is replaced, and not the link.
func Rewrite(path string, data []byte) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	return writeWhole(real, data)
}

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/git"
)

// writeOutput writes to standard output, or to the file at path: a regular
// file whole or not at all, a device or a pipe as it comes.
func writeOutput(path string, stdout io.Writer, inputs []input, write func(io.Writer) error) error {
	if path == "" {
		if err := write(stdout); err != nil {
			return fmt.Errorf("write standard output: %w", err)
		}
		return nil
	}
	if err := mayWrite(path, inputs); err != nil {
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

// mayWrite is an error where a path is that of an input, or of a standards file,
// or leads out of the repository that it is in: a stranger's repository may have
// such a link where one writes.
func mayWrite(path string, inputs []input) error {
	if root := git.Root("."); root != "" && filepath.IsLocal(below(root, absolute(path))) {
		if leadsOut(path, root) || leadsOut(thereAbove(path), root) {
			return errors.New("a symbolic link leads out of the repository")
		}
	}
	info, err := os.Stat(path)
	if err != nil {
		return nil // there is none, or none to be had
	}
	if isStandards(path) {
		return errors.New("it is a standards file")
	}
	for _, in := range inputs {
		if other, err := os.Stat(in.path); err == nil && os.SameFile(info, other) {
			return errors.New("it is an input")
		}
	}
	return nil
}

// thereAbove is the nearest folder above a path that is there.
func thereAbove(path string) string {
	folder := filepath.Dir(absolute(path))
	for ; ; folder = filepath.Dir(folder) {
		if _, err := os.Lstat(folder); err == nil || folder == filepath.Dir(folder) {
			return folder
		}
	}
}

// makeFolder makes a folder to write to, if it may be.
func makeFolder(folder string, inputs []input) error {
	err := mayWrite(filepath.Join(folder, "file"), inputs)
	if err == nil {
		err = os.MkdirAll(folder, 0o755)
	}
	if err != nil {
		return fmt.Errorf("write %s: %s", folder, reason(err))
	}
	return nil
}

func writeThrough(path string, write func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	if err := write(f); err != nil {
		f.Close()
		return fmt.Errorf("write %s: %w", path, err)
	}
	return f.Close()
}

// rewrite replaces a spec by its changed bytes, whole or not at all. What a
// symbolic link stands for is replaced, and not the link.
func rewrite(path string, data []byte) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	return writeWhole(real, data)
}

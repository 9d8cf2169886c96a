package outfile

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/source"
)

// Packed is one file of a package.
type Packed struct {
	Name  string
	Write func(io.Writer) error
}

// WritePackage writes files as a folder that appears whole or not at all. It may be
// there already where it is empty or, of a package with an index, one of the same kind.
func WritePackage(ctx context.Context, folder, index string, inputs []source.Input, files []Packed) error {
	if err := replaceable(folder, index, inputs); err != nil {
		return fmt.Errorf("write %s: %w", folder, err)
	}
	target := source.Absolute(folder)
	if real, err := filepath.EvalSymlinks(target); err == nil {
		target = real
	}
	made, err := foldersAbove(target)
	if err == nil {
		err = beside(ctx, target, files)
	}
	if err != nil {
		for _, m := range made {
			os.Remove(m) // only where it is still empty
		}
		return fmt.Errorf("write %s: %w", folder, plainly(err))
	}
	return nil
}

// plainly is an error of the file system without the path of a file that nobody
// will see.
func plainly(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}

// beside writes the files to a folder beside the target, and puts it in its place.
func beside(ctx context.Context, target string, files []Packed) error {
	work, err := os.MkdirTemp(filepath.Dir(target), "."+filepath.Base(target)+"-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work) // what is left of it: nothing, or the old package
	fresh := filepath.Join(work, "new")
	if err := os.Mkdir(fresh, 0o755); err != nil {
		return err
	}
	for _, f := range files {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err := writeFile(filepath.Join(fresh, f.Name), f.Write); err != nil {
			return err
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	return inPlaceOf(target, fresh, filepath.Join(work, "old"))
}

func writeFile(path string, write func(io.Writer) error) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := write(f); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

package outfile

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"dryfit/cmd/dryfit/internal/report/making"
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

// foldersAbove makes what is missing above a path, and lists it, innermost first.
func foldersAbove(path string) (made []string, err error) {
	for up := filepath.Dir(path); ; up = filepath.Dir(up) {
		if _, err := os.Lstat(up); err == nil || up == filepath.Dir(up) {
			break
		}
		made = append(made, up)
	}
	return made, os.MkdirAll(filepath.Dir(path), 0o755)
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

// inPlaceOf puts a folder where another may be, which is moved away first and back
// again where the new one can't be put there.
func inPlaceOf(target, fresh, old string) error {
	switch err := os.Rename(target, old); {
	case errors.Is(err, os.ErrNotExist):
		return os.Rename(fresh, target)
	case err != nil:
		return err
	}
	if err := os.Rename(fresh, target); err != nil {
		return errors.Join(err, os.Rename(old, target))
	}
	return nil
}

// replaceable is an error where something is at a path that is no package of this
// command's and not an empty folder.
func replaceable(folder, index string, inputs []source.Input) error {
	if err := MayWrite(filepath.Join(folder, "file"), inputs); err != nil {
		return err
	}
	info, err := os.Stat(folder)
	switch {
	case errors.Is(err, os.ErrNotExist):
		if _, err := os.Lstat(folder); err == nil {
			return errors.New("it is a symbolic link to nothing")
		}
		return nil
	case err != nil:
		return err
	case !info.IsDir():
		return errors.New("it is a file; a package is a folder")
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) == 0 {
		return err
	}
	if index == "" {
		return errors.New("it is a folder with files in it; name a new one")
	}
	own, ok := packageFiles(filepath.Join(folder, index))
	if !ok {
		return errors.New("it is a folder with other files; name a new one, or one that this command made")
	}
	for _, e := range entries {
		if e.Name() != index && !slices.Contains(own, e.Name()) {
			return fmt.Errorf("it has %q besides the package's own files; move that away first", e.Name())
		}
	}
	return nil
}

// packageFiles are those that a package lists; false of what is none.
func packageFiles(index string) ([]string, bool) {
	f, err := source.OpenRegular(index)
	if err != nil {
		return nil, false
	}
	defer f.Close()
	const most = 16 << 20
	var said struct {
		Package string   `json:"package"`
		Files   []string `json:"files"`
	}
	if err := json.NewDecoder(io.LimitReader(f, most)).Decode(&said); err != nil {
		return nil, false
	}
	return said.Files, said.Package == making.ShopKind
}

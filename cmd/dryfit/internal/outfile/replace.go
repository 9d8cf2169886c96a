package outfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/source"
)

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
			return errors.New("it is a symbolic link to a missing file")
		}
		return nil
	case err != nil:
		return err
	case !info.IsDir():
		return errors.New("it is a file; name a folder")
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

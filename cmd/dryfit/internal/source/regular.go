package source

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

var errIrregular = errors.New("not a regular file")

// OpenRegular opens a regular file. It looks before it opens, since opening a
// device may do something, and again after: what took the file's place between
// the two, as a pipe that nobody writes to, is not waited for.
func OpenRegular(path string) (*os.File, error) {
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		err = errIrregular
	}
	if err != nil {
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_RDONLY|withoutWaiting, 0)
	if err != nil {
		return nil, err
	}
	info, err = f.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = errIrregular
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// LeadsOut reports whether a symbolic link leads out of a folder, which a
// stranger's repository may use to have what it points at printed.
func LeadsOut(link, root string) bool {
	to, err := filepath.EvalSymlinks(link)
	if err != nil {
		return false // nothing there; reading it says so
	}
	root, err = filepath.EvalSymlinks(root)
	if err != nil {
		return true
	}
	if to, err = filepath.Abs(to); err != nil {
		return true
	}
	if root, err = filepath.Abs(root); err != nil {
		return true
	}
	rel, err := filepath.Rel(root, to)
	return err != nil || !filepath.IsLocal(rel)
}

// outOf is said of such a link.
func outOf(root string) string {
	return "a symbolic link that leads out of " + shown(root) + " is not followed; name the file that it leads to"
}

// Reason is an error of the file system without the path, which the report
// names.
func Reason(err error) string {
	var pathError *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "no permission to read it"
	case errors.As(err, &pathError):
		return pathError.Err.Error()
	default:
		return err.Error()
	}
}

// IsFolder reports whether there is a folder at a path.
func IsFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// Package source finds and reads what a run is of: specs, the standards that hold
// for them, and what a revision had of both.
package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
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

// Gather lists the specs at the paths: a file as it is named, a folder with
// all specs under it, - for standard input; and a standards file, where the walk
// takes one, with all specs that it rules. A path that is not there is listed too;
// reading it says so. No spec at all is an error, but not of a standards file.
func (w *Walker) Gather(paths []string, stdinName string) ([]Input, error) {
	var inputs []Input
	for _, named := range paths {
		if named == "-" {
			inputs = append(inputs, Input{Name: stdinName, Stdin: true})
			continue
		}
		matches, err := expanded(named)
		if err != nil {
			return nil, err
		}
		for _, p := range matches {
			inputs = append(inputs, w.under(p)...)
		}
	}
	if len(inputs) == 0 && len(w.rule) > 0 {
		fmt.Fprintln(w.warnings, show.Safe("dryfit: no spec is checked to "+strings.Join(w.rule, ", ")+w.leftOut()))
		return nil, nil
	}
	if len(inputs) == 0 {
		return nil, fmt.Errorf("no *%s under %s%s", Extension, strings.Join(paths, ", "), w.leftOut())
	}
	return unique(inputs), nil
}

// under are the specs that one path stands for.
func (w *Walker) under(path string) []Input {
	switch {
	case IsFolder(path):
		return w.walk(path)
	case w.Rules && IsStandards(path):
		return w.ruled(path)
	default:
		return []Input{NewInput(path)}
	}
}

// NewInput is the spec at a path.
func NewInput(path string) Input {
	return Input{Name: filepath.ToSlash(filepath.Clean(path)), Path: path}
}

// unique drops an input that was named twice.
func unique(inputs []Input) []Input {
	seen := map[string]bool{}
	return slices.DeleteFunc(inputs, func(in Input) bool {
		twice := seen[in.Name]
		seen[in.Name] = true
		return twice
	})
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

package main

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

// extension is what the name of a spec ends in.
const extension = ".ceiling.toml"

// input is one spec to check.
type input struct {
	name  string // for reports, with forward slashes
	path  string
	stdin bool
	found string // why it can't be read, where that was found on the way to it
}

// gather lists the specs at the paths: a file as it is named, a folder with
// all specs under it, - for standard input; and a standards file, where the walk
// takes one, with all specs that it rules. A path that is not there is listed too;
// reading it says so. No spec at all is an error, but not of a standards file.
func (w *walker) gather(paths []string, stdinName string) ([]input, error) {
	var inputs []input
	for _, named := range paths {
		if named == "-" {
			inputs = append(inputs, input{name: stdinName, stdin: true})
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
		return nil, fmt.Errorf("no *%s under %s%s", extension, strings.Join(paths, ", "), w.leftOut())
	}
	return unique(inputs), nil
}

// under are the specs that one path stands for.
func (w *walker) under(path string) []input {
	switch {
	case isFolder(path):
		return w.walk(path)
	case w.rules && isStandards(path):
		return w.ruled(path)
	default:
		return []input{newInput(path)}
	}
}

func newInput(path string) input {
	return input{name: filepath.ToSlash(filepath.Clean(path)), path: path}
}

// unique drops an input that was named twice.
func unique(inputs []input) []input {
	seen := map[string]bool{}
	return slices.DeleteFunc(inputs, func(in input) bool {
		twice := seen[in.name]
		seen[in.name] = true
		return twice
	})
}

// read returns the bytes, or why there are none. More than a spec may have is
// not read: one byte over the limit is enough for the reader to say so.
func (in input) read(stdin io.Reader) (src []byte, problem string) {
	if in.found != "" {
		return nil, in.found
	}
	from := stdin
	if !in.stdin {
		f, err := openRegular(in.path)
		if err != nil {
			return nil, reason(err)
		}
		defer f.Close()
		from = f
	}
	var b bytes.Buffer
	if _, err := io.Copy(&b, io.LimitReader(from, spec.MaxSize+1)); err != nil {
		return nil, reason(err)
	}
	return b.Bytes(), ""
}

var errIrregular = errors.New("not a regular file")

// openRegular opens a regular file. It looks before it opens, since opening a
// device may do something, and again after: what took the file's place between
// the two, as a pipe that nobody writes to, is not waited for.
func openRegular(path string) (*os.File, error) {
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

// leadsOut reports whether a symbolic link leads out of a folder, which a
// stranger's repository may use to have what it points at printed.
func leadsOut(link, root string) bool {
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

// reason is an error of the file system without the path, which the report
// names.
func reason(err error) string {
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

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

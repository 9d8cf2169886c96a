package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/bmatcuk/doublestar/v4"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/cmd/dryfit/internal/report"
)

// walker lists the specs under folders.
type walker struct {
	ctx      context.Context
	s        streams
	excluded func(path string) bool // by the standards
	warned   bool
}

// newWalker walks to the standards named, or else to those found; of several
// sets a spec is excluded where all of them do.
func newWalker(ctx context.Context, s streams, named []string) *walker {
	if len(named) == 0 {
		named = []string{""}
	}
	shelves := make([]*shelf, len(named))
	for i, name := range named {
		shelves[i] = newShelf(name)
	}
	return &walker{ctx: ctx, s: s, excluded: func(path string) bool {
		return !slices.ContainsFunc(shelves, func(s *shelf) bool { return !s.excludes(path) })
	}}
}

// excludes reports whether the standards of a spec exclude it.
func (s *shelf) excludes(path string) bool {
	for _, file := range s.chain(filepath.Dir(path)) {
		l := s.layer(file)
		if l == nil {
			continue // which is reported when the spec is checked
		}
		rel, err := filepath.Rel(filepath.Dir(real(file)), real(path))
		if err != nil {
			continue
		}
		for _, pattern := range l.Exclude {
			if ok, _ := doublestar.Match(pattern, filepath.ToSlash(rel)); ok {
				return true
			}
		}
	}
	return false
}

// tracked is what git has to say of a folder: the specs below that it tracks or
// does not ignore, and the folders on the way to them, by their paths from it.
type tracked struct {
	base           string
	files, folders map[string]bool
}

// walk lists the specs under a folder, in the order of their names. In a git
// repository those that git ignores and does not track are left out. Where git
// has no say, folders whose names begin with a dot and node_modules are passed
// over. Symbolic links to folders are not followed, those to files are as long
// as they stay in the repository, or in the folder where there is none. What
// can't be read is listed, so that it is reported.
func (w *walker) walk(folder string) []input {
	var inputs []input
	root := folder
	if top := git.Root(folder); top != "" {
		root = top
	}
	said := []*tracked{w.ask(folder, git.Root(folder) != "")}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		for len(said) > 1 && !within(said[len(said)-1].base, path) {
			said = said[:len(said)-1]
		}
		by := said[len(said)-1]
		switch {
		case err != nil:
			in := newInput(path)
			in.found = reason(err)
			inputs = append(inputs, in)
			if d != nil && d.IsDir() {
				return fs.SkipDir
			}
		case d.IsDir() && path != folder && by.skips(path, d.Name()):
			return fs.SkipDir
		case strings.HasSuffix(d.Name(), extension):
			if !by.ignores(path) && !w.excluded(path) {
				inputs = append(inputs, found(path, d, root))
			}
			if d.IsDir() {
				return fs.SkipDir
			}
		case d.IsDir() && path != folder && isRepository(path):
			said = append(said, w.ask(path, true))
		}
		return nil
	})
	if err != nil {
		panic(err) // the function above returns none but SkipDir
	}
	return inputs
}

// found is a spec that the walk came to.
func found(path string, d fs.DirEntry, root string) input {
	in := newInput(path)
	if d.Type()&fs.ModeSymlink != 0 && leadsOut(path, root) {
		in.found = outOf(root)
	}
	return in
}

func isRepository(folder string) bool {
	_, err := os.Lstat(filepath.Join(folder, ".git"))
	return err == nil
}

func within(base, path string) bool {
	rel, err := filepath.Rel(base, path)
	return err == nil && filepath.IsLocal(rel)
}

// ask asks git about a folder that is in a repository. Where git can't tell, all
// that is found is checked, which is said once.
func (w *walker) ask(folder string, repository bool) *tracked {
	t := &tracked{base: folder}
	if !repository {
		return t
	}
	files, err := git.Unignored(w.ctx, folder, extension)
	if err != nil {
		if !w.warned && w.ctx.Err() == nil {
			w.warned = true
			fmt.Fprintln(w.s.err, report.Safe(fmt.Sprintf("dryfit: %v; specs that git ignores are checked too", err)))
		}
		return t
	}
	t.files, t.folders = files, map[string]bool{}
	for file := range files {
		for at := path.Dir(file); at != "." && !t.folders[at]; at = path.Dir(at) {
			t.folders[at] = true
		}
	}
	return t
}

func (t *tracked) rel(path string) string {
	rel, err := filepath.Rel(t.base, path)
	if err != nil {
		return path
	}
	return filepath.ToSlash(rel)
}

// ignores reports whether git ignores a spec and does not track it.
func (t *tracked) ignores(path string) bool { return t.files != nil && !t.files[t.rel(path)] }

// skips reports whether there is nothing to look for in a folder.
func (t *tracked) skips(path, name string) bool {
	if name == ".git" {
		return true
	}
	by := strings.HasPrefix(name, ".") || name == "node_modules"
	return by && !t.folders[t.rel(path)]
}

// expanded are the paths that a pattern stands for, which the shell left as it
// was; a path that is no pattern, or that is there as it is written, stands for
// itself.
func expanded(p string) ([]string, error) {
	if _, err := os.Lstat(p); err == nil || !strings.ContainsAny(p, "*?[{") {
		return []string{p}, nil
	}
	matches, err := doublestar.FilepathGlob(p)
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s is no pattern that a path can match: %v", p, err)
	case len(matches) == 0:
		return nil, fmt.Errorf("no path matches %s", p)
	default:
		return matches, nil
	}
}

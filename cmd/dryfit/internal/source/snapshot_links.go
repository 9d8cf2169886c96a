package source

import (
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// mostLinks is how many symbolic links are followed on the way to a file.
const mostLinks = 32

// resolve is the file that a path leads to.
func (s *Snapshot) resolve(at string) (e git.Entry, there bool, err error) {
	for range mostLinks {
		e, rest, found := s.on(at)
		switch {
		case e.Size > spec.MaxSize:
			return e, true, BadFile(fmt.Sprintf("the file is larger than %dMiB, the maximum", spec.MaxSize>>20))
		case !found || !e.Link():
			return e, found, nil
		}
		to, err := s.repository.Content(s.ctx, e)
		if err != nil {
			return e, true, err
		}
		at = path.Join(path.Dir(e.Path), string(to), rest)
		if path.IsAbs(string(to)) || at == ".." || strings.HasPrefix(at, "../") {
			return e, true, BadFile("the symbolic link " + e.Path + " leads out of the repository")
		}
	}
	return e, true, BadFile(fmt.Sprintf("more than %d symbolic links lead to it", mostLinks))
}

// on is the first that is no folder on the way to a path, with what comes after
// it: a symbolic link, or the file itself.
func (s *Snapshot) on(at string) (e git.Entry, rest string, found bool) {
	for end := 0; end < len(at); end++ {
		if at[end] != '/' {
			continue
		}
		if e, ok := s.files[at[:end]]; ok {
			return e, at[end+1:], e.Link()
		}
	}
	e, found = s.files[at]
	return e, "", found && !e.Submodule()
}

// chain lists the standards files that the revision had for a spec in a folder,
// the nearest first, as REV:path. Of a folder of another repository it knows
// none: one is listed, and reading it says so.
func (s *Snapshot) chain(folder string) []string {
	at := s.Place(filepath.Join(folder, standards.FileName))
	if at == "" {
		return []string{s.named(filepath.ToSlash(filepath.Join(folder, standards.FileName)))}
	}
	var files []string
	for folder := path.Dir(at); ; folder = path.Dir(folder) {
		file := path.Join(folder, standards.FileName)
		if _, there, _ := s.resolve(file); there { // also where it can't be read
			files = append(files, s.named(file))
		}
		if folder == "." {
			return files
		}
	}
}

func (s *Snapshot) named(file string) string { return s.Rev + ":" + file }

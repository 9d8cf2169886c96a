package source

import (
	"fmt"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/rules/model/standards"
)

// OrFolders is the paths, or the folders that the standards of a run name: each
// file that is named, or else the nearest of those found. A named file that names
// no folder leaves this one to be checked, whatever other files there are: they
// are not what is trusted.
func OrFolders(finders []*Finder, paths []string) ([]string, error) {
	if len(paths) > 0 {
		return paths, nil
	}
	var out []string
	for _, s := range finders {
		folders, err := s.folders()
		if len(folders) == 0 || err != nil {
			return []string{"."}, err
		}
		out = append(out, folders...)
	}
	return out, nil
}

// folders are those that the nearest standards name.
func (s *Finder) folders() (out []string, err error) {
	for _, file := range s.chain(".") {
		l := s.layer(file)
		if l == nil || len(l.Folders) == 0 {
			continue
		}
		for _, folder := range l.Folders {
			path := filepath.Join(s.folderOf(file), folder.Text)
			if err := within(path, folder); err != nil {
				return nil, err
			}
			out = append(out, path)
		}
		return out, nil
	}
	return nil, nil
}

// within is an error where a folder that standards name leads out of the repository
// that this one is in.
func within(path string, named standards.Pattern) error {
	if root := git.Root("."); root != "" && LeadsOut(path, root) {
		return fmt.Errorf("%s:%d: [check] folders: %q leads out of the repository", named.Origin.File, named.Origin.Line, named.Text)
	}
	return nil
}

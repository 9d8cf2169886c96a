package source

import (
	"context"
	"os"
	"path/filepath"
	"slices"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/rules/model/standards"
)

// changes tells which files of the working tree differ from a revision.
type changes struct{ *Snapshot }

// ChangedSince asks git what was at a revision. What a file is now is read from
// the working tree, so that nothing of the repository's has a say in it.
func ChangedSince(ctx context.Context, rev string) (changes, error) {
	s, err := SnapshotAt(ctx, rev)
	return changes{s}, err
}

// Concerned are the inputs that changed, or whose standards did: those named, or
// any from the spec's folder up to the root, deleted ones too. A spec that was
// deleted is left out. Standard input has no history and stays.
func (c changes) Concerned(inputs []Input, named []string) []Input {
	namedChanged := slices.ContainsFunc(named, c.changed)
	return slices.DeleteFunc(inputs, func(in Input) bool {
		if in.Stdin {
			return false
		}
		if _, err := os.Lstat(in.Path); err != nil && c.was(in.Path) {
			return true
		}
		return !(c.changed(in.Path) || namedChanged || len(named) == 0 && c.standardsOf(in.Path))
	})
}

// entry is what the revision had at a path; zero where it had nothing.
func (c changes) entry(path string) git.Entry {
	rel, err := filepath.Rel(c.repository.Root(), real(path))
	if err != nil {
		return git.Entry{}
	}
	return c.files[filepath.ToSlash(rel)]
}

func (c changes) was(path string) bool { return c.entry(path) != git.Entry{} }

// changed reports whether a path is new, gone or different. A symbolic link has
// changed too where what it leads to has.
func (c changes) changed(path string) bool {
	e := c.entry(path)
	if e == (git.Entry{}) {
		_, err := os.Lstat(path)
		return err == nil
	}
	if !c.repository.Same(e) {
		return true
	}
	to, err := filepath.EvalSymlinks(real(path))
	return e.Link() && (err != nil || c.changed(to))
}

func (c changes) standardsOf(path string) bool {
	for at := filepath.Dir(real(path)); ; at = filepath.Dir(at) {
		if c.changed(filepath.Join(at, standards.FileName)) {
			return true
		}
		if at == c.repository.Root() || at == filepath.Dir(at) {
			return false
		}
	}
}

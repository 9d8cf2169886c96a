package source

import (
	"context"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/git"
)

// Snapshot is what a revision of this folder's repository had.
type Snapshot struct {
	ctx        context.Context
	Rev        string
	repository *git.Repository
	root       string // of the repository, as this folder's path leads to it
	files      map[string]git.Entry
}

// SnapshotAt is a revision of the working folder's repository. It fails outside a repository, and
// where there is no such revision.
func SnapshotAt(ctx context.Context, rev string) (*Snapshot, error) {
	repository, err := git.Open(".")
	if err != nil {
		return nil, err
	}
	commit, err := repository.Commit(ctx, rev)
	if err != nil {
		return nil, err
	}
	files, err := repository.Files(ctx, commit)
	return &Snapshot{ctx, rev, repository, git.Root("."), files}, err
}

// Place is a path of the working tree as it counts from the repository's root;
// "" where it is outside, or in another repository below.
func (s *Snapshot) Place(name string) string {
	abs, err := filepath.Abs(name)
	if err != nil {
		return ""
	}
	if rel := inside(s.root, abs); rel != "" {
		return rel
	}
	return inside(s.repository.Root(), real(name))
}

// inside is a path from a repository's root; "" where it is not in that one.
func inside(root, at string) string {
	rel, err := filepath.Rel(root, at)
	if err != nil || !filepath.IsLocal(rel) || git.Root(filepath.Dir(at)) != root {
		return ""
	}
	return filepath.ToSlash(rel)
}

// BadFile is what is wrong with a file of a revision, as against with git.
type BadFile string

// Error is the text itself.
func (b BadFile) Error() string { return string(b) }

// Read returns a file as the revision had it, by its path from the root; links
// lead where they led then, within the repository.
func (s *Snapshot) Read(at string) (src []byte, there bool, err error) {
	e, there, err := s.resolve(at)
	if !there || err != nil {
		return nil, there, err
	}
	src, err = s.repository.Content(s.ctx, e)
	return src, true, err
}

// standards reads a file of a chain.
func (s *Snapshot) standards(name string) (src []byte, fault string) {
	src, there, err := s.Read(strings.TrimPrefix(name, s.named("")))
	switch {
	case err != nil:
		return nil, err.Error()
	case !there:
		return nil, "it is not in the repository of this folder, whose revision " + s.Rev + " is"
	}
	return src, ""
}

// folderOf is where the folder of a file of a chain is in the working tree.
func (s *Snapshot) folderOf(name string) string {
	file := filepath.FromSlash(strings.TrimPrefix(name, s.named("")))
	return filepath.FromSlash(shown(filepath.Join(s.root, filepath.Dir(file))))
}

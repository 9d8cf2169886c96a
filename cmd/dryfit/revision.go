package main

import (
	"context"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/git"
)

// revision is a spec as git keeps it: REV:path, the path from the repository's
// root or, after ./, from this folder.
type revision struct{ rev, path string }

// revisionOf reads REV:path. What is there as a file is a file.
func revisionOf(name string) (revision, bool) {
	rev, path, ok := strings.Cut(name, ":")
	if _, err := os.Lstat(name); err == nil || !ok || rev == "" || path == "" || filepath.VolumeName(name) != "" {
		return revision{}, false
	}
	return revision{rev, path}, true
}

// fromGit reads a revision of a spec.
func fromGit(ctx context.Context, r revision) (src []byte, problem string) {
	src, err := r.read(ctx)
	if err != nil {
		return nil, err.Error()
	}
	return src, ""
}

func (r revision) read(ctx context.Context) ([]byte, error) {
	s, err := snapshotAt(ctx, r.rev)
	if err != nil {
		return nil, err
	}
	path, err := r.inRepository(s.repository)
	if err != nil {
		return nil, err
	}
	src, there, err := s.read(path)
	if err == nil && !there {
		err = fmt.Errorf("there is no file %s at %s", r.path, r.rev)
	}
	return src, err
}

// local reports whether the path counts from this folder.
func (r revision) local() bool {
	return strings.HasPrefix(r.path, "./") || strings.HasPrefix(r.path, "../")
}

// inRepository is the path from the repository's root.
func (r revision) inRepository(in *git.Repository) (string, error) {
	if !r.local() {
		return path.Clean(r.path), nil
	}
	rel, err := filepath.Rel(in.Root(), real(filepath.FromSlash(r.path)))
	if err != nil || !filepath.IsLocal(rel) {
		return "", fmt.Errorf("%s is outside the repository", r.path)
	}
	return filepath.ToSlash(rel), nil
}

// folder is where a revision's path lies in the working tree, whose standards
// it is judged by.
func (r revision) folder() string {
	root := git.Root(".")
	if r.local() || root == "" {
		return filepath.Dir(filepath.FromSlash(r.path))
	}
	return filepath.Dir(filepath.Join(root, filepath.FromSlash(r.path)))
}

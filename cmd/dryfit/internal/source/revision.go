package source

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
type revision struct{ Rev, Path string }

// RevisionOf reads REV:path. What is there as a file is a file.
func RevisionOf(name string) (revision, bool) {
	rev, path, ok := strings.Cut(name, ":")
	if _, err := os.Lstat(name); err == nil || !ok || rev == "" || path == "" || filepath.VolumeName(name) != "" {
		return revision{}, false
	}
	return revision{rev, path}, true
}

// FromGit reads a revision of a spec.
func FromGit(ctx context.Context, r revision) (src []byte, problem string) {
	src, err := r.read(ctx)
	if err != nil {
		return nil, err.Error()
	}
	return src, ""
}

func (r revision) read(ctx context.Context) ([]byte, error) {
	s, err := SnapshotAt(ctx, r.Rev)
	if err != nil {
		return nil, err
	}
	path, err := r.inRepository(s.repository)
	if err != nil {
		return nil, err
	}
	src, there, err := s.Read(path)
	if err == nil && !there {
		err = fmt.Errorf("there is no file %s at %s", r.Path, r.Rev)
	}
	return src, err
}

// local reports whether the path counts from this folder.
func (r revision) local() bool {
	return strings.HasPrefix(r.Path, "./") || strings.HasPrefix(r.Path, "../")
}

// inRepository is the path from the repository's root.
func (r revision) inRepository(in *git.Repository) (string, error) {
	if !r.local() {
		return path.Clean(r.Path), nil
	}
	rel, err := filepath.Rel(in.Root(), real(filepath.FromSlash(r.Path)))
	if err != nil || !filepath.IsLocal(rel) {
		return "", fmt.Errorf("%s is outside the repository", r.Path)
	}
	return filepath.ToSlash(rel), nil
}

// Folder is where a revision's path lies in the working tree, whose standards
// it is judged by.
func (r revision) Folder() string {
	root := git.Root(".")
	if r.local() || root == "" {
		return filepath.Dir(filepath.FromSlash(r.Path))
	}
	return filepath.Dir(filepath.Join(root, filepath.FromSlash(r.Path)))
}

package git_test

import (
	"context"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/internal/outside"
)

// begin makes a repository with the real git, or skips aloud.
func begin(t *testing.T, args ...string) (folder string, do func(args ...string)) {
	t.Helper()
	outside.Program(t, "git")
	folder = t.TempDir()
	do = func(args ...string) {
		t.Helper()
		c := exec.Command("git", append([]string{"-C", folder, "-c", "user.name=t", "-c", "user.email=t@example.com", "-c", "commit.gpgsign=false"}, args...)...)
		c.Env = append(os.Environ(), "HOME="+folder, "GIT_CONFIG_NOSYSTEM=1")
		out, err := c.CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	do(append([]string{"init", "-q"}, args...)...)
	return folder, do
}

func write(t *testing.T, path, text string) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
}

func TestFilesOfACommit(t *testing.T) {
	for _, format := range []string{"sha1", "sha256"} {
		t.Run(format, func(t *testing.T) {
			folder, do := begin(t, "--object-format="+format)
			ctx := context.Background()
			write(t, filepath.Join(folder, "a b.toml"), "one")
			write(t, filepath.Join(folder, "deep", "ü.toml"), "two")
			require.NoError(t, os.Symlink("a b.toml", filepath.Join(folder, "link.toml")))
			do("add", ".")
			do("commit", "-q", "-m", "first")
			r, err := git.Open(filepath.Join(folder, "deep"))
			require.NoError(t, err)
			commit, err := r.Commit(ctx, "HEAD")
			require.NoError(t, err)
			files, err := r.Files(ctx, commit)
			require.NoError(t, err)
			require.Len(t, files, 3)
			for _, e := range files {
				assert.True(t, r.Same(e), e.Path)
			}
			content, err := r.Content(ctx, files["deep/ü.toml"])
			require.NoError(t, err)
			assert.Equal(t, "two", string(content))
			assert.True(t, files["link.toml"].Link())

			write(t, filepath.Join(folder, "deep", "ü.toml"), "owt") // as long as before
			assert.False(t, r.Same(files["deep/ü.toml"]))
			require.NoError(t, os.Remove(filepath.Join(folder, "link.toml")))
			assert.False(t, r.Same(files["link.toml"]), "gone")
			require.NoError(t, os.Symlink("deep/ü.toml", filepath.Join(folder, "link.toml")))
			assert.False(t, r.Same(files["link.toml"]), "another target")
			require.NoError(t, os.Remove(filepath.Join(folder, "a b.toml")))
			require.NoError(t, os.Symlink("deep/ü.toml", filepath.Join(folder, "a b.toml")))
			assert.False(t, r.Same(files["a b.toml"]), "a link in the place of a file")
		})
	}
}

func TestRevisionsThatAreNone(t *testing.T) {
	folder, do := begin(t)
	ctx := context.Background()
	r, err := git.Open(folder)
	require.NoError(t, err)
	_, err = r.Commit(ctx, "HEAD")
	assert.ErrorContains(t, err, "git has no revision HEAD", "there is no commit yet")
	write(t, filepath.Join(folder, "a.toml"), "one")
	do("add", ".")
	do("commit", "-q", "-m", "first")
	do("update-ref", "refs/heads/-odd", "HEAD")
	for _, rev := range []string{"", "nowhere", "--output=x", "HEAD:a.toml", "HEAD^{tree}", "a\nHEAD", "HEAD extra"} {
		_, err := r.Commit(ctx, rev)
		assert.Error(t, err, "%q", rev)
	}
	for _, rev := range []string{"HEAD", "-odd", "refs/heads/-odd"} {
		_, err := r.Commit(ctx, rev)
		assert.NoError(t, err, "%q", rev)
	}
	_, err = git.Open(t.TempDir())
	assert.ErrorContains(t, err, "not in a git repository")
	_, err = r.Commit(canceled(), "HEAD")
	assert.ErrorIs(t, err, context.Canceled)
}

func canceled() context.Context {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	return ctx
}

func TestAShallowCloneSaysSo(t *testing.T) {
	folder, do := begin(t)
	for _, text := range []string{"one", "two"} {
		write(t, filepath.Join(folder, "a.toml"), text)
		do("add", ".")
		do("commit", "-q", "-m", text)
	}
	clone := filepath.Join(t.TempDir(), "clone")
	do("clone", "-q", "--depth=1", "file://"+filepath.ToSlash(folder), clone)
	r, err := git.Open(clone)
	require.NoError(t, err)
	_, err = r.Commit(context.Background(), "HEAD~1")
	assert.ErrorContains(t, err, "shallow clone")
}

// A partial clone lacks the contents of what it has not checked out, and must not
// fetch them: by what program is for its configuration to say.
func TestAPartialCloneFetchesNothing(t *testing.T) {
	folder, do := begin(t)
	do("config", "uploadpack.allowFilter", "true")
	for _, text := range []string{"one", "two"} {
		write(t, filepath.Join(folder, "a.toml"), text)
		write(t, filepath.Join(folder, "same.toml"), "same")
		do("add", ".")
		do("commit", "-q", "-m", text)
	}
	clone := filepath.Join(t.TempDir(), "clone")
	do("clone", "-q", "--filter=blob:none", "file://"+filepath.ToSlash(folder), clone)
	ran := filepath.Join(t.TempDir(), "ran")
	planted := filepath.Join(t.TempDir(), "planted.sh")
	require.NoError(t, os.WriteFile(planted, []byte("#!/bin/sh\ntouch '"+ran+"'\n"), 0o755))
	do("-C", clone, "config", "remote.origin.uploadpack", planted)
	do("-C", clone, "config", "protocol.file.allow", "always")
	r, err := git.Open(clone)
	require.NoError(t, err)
	ctx := context.Background()
	commit, err := r.Commit(ctx, "HEAD~1")
	require.NoError(t, err)
	files, err := r.Files(ctx, commit)
	require.NoError(t, err)
	require.Len(t, files, 2)
	assert.False(t, r.Same(files["a.toml"]))
	assert.True(t, r.Same(files["same.toml"]))
	_, err = r.Content(ctx, files["a.toml"])
	assert.EqualError(t, err, "this is a partial clone; fetch a.toml first")
	assert.NoFileExists(t, ran)
}

func TestUnignored(t *testing.T) {
	folder, do := begin(t)
	for _, p := range []string{"a.toml", "build/b.toml", "build/tracked.toml", "deep/c.toml", "d.txt"} {
		write(t, filepath.Join(folder, filepath.FromSlash(p)), p)
	}
	write(t, filepath.Join(folder, ".gitignore"), "build/\nempty/\n")
	require.NoError(t, os.Mkdir(filepath.Join(folder, "empty"), 0o755))
	do("add", "-f", "build/tracked.toml")
	got, err := git.Unignored(context.Background(), folder, ".toml")
	require.NoError(t, err)
	assert.Equal(t, map[string]bool{"a.toml": true, "build/tracked.toml": true, "deep/c.toml": true}, got)
	got, err = git.Unignored(context.Background(), filepath.Join(folder, "build"), ".toml")
	require.NoError(t, err)
	assert.Equal(t, map[string]bool{"tracked.toml": true}, got)
	for path, want := range map[string]bool{
		"build": false, "build/b.toml": true, "build/tracked.toml": false, "deep": false, ".": false, "../x": false, "empty": true, "empty/x": true,
	} {
		assert.Equal(t, want, git.Ignored(context.Background(), folder, path), path)
	}
	for path, want := range map[string]bool{"build": true, "deep": false, ".": false, "empty": true} {
		assert.Equal(t, want, git.IgnoredWhole(context.Background(), filepath.Join(folder, path)), path)
	}
}

// No other package runs git: each call goes through the settings of this one.
func TestGitIsCalledHereAlone(t *testing.T) {
	root := filepath.Join("..", "..", "..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && path != root && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(filepath.Dir(path), filepath.Join("internal", "git")):
			return nil
		case strings.HasSuffix(filepath.Dir(path), filepath.Join("frame", "calculix")):
			return nil // runs the finite element program for tests
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && x.Name == "exec" {
					assert.NotContains(t, []string{"Command", "CommandContext"}, s.Sel.Name, path)
				}
			}
			return true
		})
		return nil
	})
	require.NoError(t, err)
}

// Package git reads what git keeps of a repository, and lets git run nothing
// that the repository brings. Every call of git in this program is here.
package git

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// settings switch off, over whatever a repository's own configuration says, each
// setting that names a program which a reading command would run. Filters and
// textconv have names of the repository's choosing, and are never reached: no
// command here compares or converts files of the working tree.
var settings = []string{
	"core.fsmonitor=false",
	"core.hooksPath=" + os.DevNull,
	"core.pager=cat",
	"core.askPass=",
	"core.sshCommand=false",
	"core.gitProxy=",
	"core.editor=false",
	"core.alternateRefsCommand=",
	"core.attributesFile=" + os.DevNull,
	"credential.helper=",
	"diff.external=",
	"submodule.recurse=false",
	"safe.bareRepository=explicit",
}

// environment is this process's, without what leads git to another repository,
// another configuration or another program, and with what keeps it from writing,
// asking and fetching. A partial clone would fetch what it lacks, by a program
// that its configuration names: an older git minds only the list of protocols,
// which is empty here and stands over the configuration's own.
func environment() []string {
	env := []string{
		"GIT_OPTIONAL_LOCKS=0", "GIT_TERMINAL_PROMPT=0", "GIT_NO_LAZY_FETCH=1", "GIT_ALLOW_PROTOCOL=", "GIT_LITERAL_PATHSPECS=0",
		"GIT_NO_REPLACE_OBJECTS=1", "LC_ALL=C",
	}
	for _, e := range os.Environ() {
		name, _, _ := strings.Cut(e, "=")
		if kept := name == "GIT_CEILING_DIRECTORIES" || name == "GIT_DISCOVERY_ACROSS_FILESYSTEM"; kept || !strings.HasPrefix(name, "GIT_") && name != "LC_ALL" {
			env = append(env, e)
		}
	}
	return env
}

// run runs a command of git in a folder, and returns what it prints.
func run(ctx context.Context, folder, in string, args ...string) ([]byte, error) {
	full := []string{"-C", folder, "--no-pager"}
	for _, s := range settings {
		full = append(full, "-c", s)
	}
	c := exec.CommandContext(ctx, "git", append(full, args...)...)
	var out, errs bytes.Buffer
	c.Env, c.Stdin, c.Stdout, c.Stderr = environment(), strings.NewReader(in), &out, &errs
	err := c.Run()
	var exit *exec.ExitError
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case errors.Is(err, exec.ErrNotFound):
		return nil, errors.New("git is not installed here")
	case errors.As(err, &exit) && exit.ExitCode() == 1 && errs.Len() == 0:
		return out.Bytes(), nil // a plain no
	case err != nil:
		return nil, fmt.Errorf("git: %s", complaint(errs.String()))
	}
	return out.Bytes(), nil
}

// complaint is what git died of, without its warnings.
func complaint(said string) string {
	first := ""
	for line := range strings.Lines(said) {
		line = strings.TrimSpace(line)
		if why, ok := strings.CutPrefix(line, "fatal: "); ok {
			return why
		}
		first = cmp.Or(first, line)
	}
	return first
}

// Repository is one on this machine.
type Repository struct{ root string }

// Root is the folder that a folder's repository begins at: the nearest with a
// .git in it, which is a folder, or a file of a worktree or a submodule. It is ""
// where there is none. Git is not asked.
func Root(folder string) string {
	at, err := filepath.Abs(folder)
	if err != nil {
		return ""
	}
	for ; ; at = filepath.Dir(at) {
		if _, err := os.Lstat(filepath.Join(at, ".git")); err == nil {
			return at
		}
		if at == filepath.Dir(at) {
			return ""
		}
	}
}

// Open is the repository that a folder is in.
func Open(folder string) (*Repository, error) {
	root := Root(folder)
	if root == "" {
		return nil, errors.New("this folder is not in a git repository")
	}
	if real, err := filepath.EvalSymlinks(root); err == nil {
		root = real
	}
	return &Repository{root}, nil
}

// Root is the repository's first folder, absolute and through no symbolic link.
func (r *Repository) Root() string { return r.root }

// oneLine reports whether names can be told to git a line each.
func oneLine(names ...string) bool {
	for _, n := range names {
		if strings.ContainsAny(n, "\n\r\x00") {
			return false
		}
	}
	return true
}

// Commit is the hash of the commit that a revision names.
func (r *Repository) Commit(ctx context.Context, rev string) (string, error) {
	if rev == "" || !oneLine(rev) {
		return "", fmt.Errorf("%q is not a revision", rev)
	}
	// On standard input a revision is never taken for an option.
	kind, hash, err := r.object(ctx, rev+"^{commit}")
	if err != nil {
		return "", err
	}
	if kind != "commit" {
		return "", r.unknown(rev)
	}
	return hash, nil
}

// unknown says that a revision is not here, and where it may be.
func (r *Repository) unknown(rev string) error {
	if _, err := os.Lstat(filepath.Join(r.root, ".git", "shallow")); err == nil {
		return fmt.Errorf("git has no revision %s; this is a shallow clone, so fetch the revision first", rev)
	}
	return fmt.Errorf("git has no revision %s", rev)
}

// object asks what a name stands for: its kind and its hash; both empty where it
// stands for nothing.
func (r *Repository) object(ctx context.Context, name string) (kind, hash string, err error) {
	answer, err := run(ctx, r.root, name+"\n", "cat-file", "--batch-check=%(objectname) %(objecttype)")
	if err != nil {
		return "", "", err
	}
	fields := strings.Fields(string(answer))
	if len(fields) != 2 || fields[1] == "missing" || fields[1] == "ambiguous" {
		return "", "", nil
	}
	return fields[1], fields[0], nil
}

// Entry is a file of a commit.
type Entry struct {
	Path string // from the root, with forward slashes
	Mode string // "100644", "100755", "120000" of a symbolic link, "160000" of a submodule
	Hash string
	Size int64 // of the content; zero of a submodule, and in a partial clone
}

// Link reports whether the entry is a symbolic link.
func (e Entry) Link() bool { return e.Mode == "120000" }

// Submodule reports whether the entry is another repository's commit.
func (e Entry) Submodule() bool { return e.Mode == "160000" }

// Files lists the files of a commit, by their paths.
func (r *Repository) Files(ctx context.Context, commit string) (map[string]Entry, error) {
	tree := func(more ...string) ([]byte, error) {
		args := append([]string{"ls-tree", "-r", "-z", "--full-tree"}, more...)
		return run(ctx, r.root, "", append(args, "--end-of-options", commit)...)
	}
	answer, err := tree("-l")
	if err != nil { // a partial clone does not know how long the contents are
		answer, err = tree()
	}
	if err != nil {
		return nil, err
	}
	files := map[string]Entry{}
	for _, line := range strings.Split(string(answer), "\x00") {
		facts, path, ok := strings.Cut(line, "\t")
		fields := strings.Fields(facts)
		if !ok || len(fields) < 3 {
			continue
		}
		e := Entry{Path: path, Mode: fields[0], Hash: fields[2]}
		if len(fields) > 3 {
			_, _ = fmt.Sscan(fields[3], &e.Size) // "-" of a submodule, which has none
		}
		files[path] = e
	}
	return files, nil
}

// Content is that of an entry.
func (r *Repository) Content(ctx context.Context, e Entry) ([]byte, error) {
	content, err := run(ctx, r.root, "", "cat-file", "blob", e.Hash)
	if err != nil && strings.Contains(err.Error(), "promisor remote") {
		return nil, fmt.Errorf("this is a partial clone; fetch %s first", e.Path)
	}
	return content, err
}

// Unignored lists the files under a folder of a repository whose names end in
// one of the endings, and that git tracks or does not ignore, by their paths
// from the folder, with forward slashes. It does not look into other
// repositories below.
func Unignored(ctx context.Context, folder string, endings ...string) (map[string]bool, error) {
	args := []string{"ls-files", "-z", "--cached", "--others", "--exclude-standard", "--"}
	for _, e := range endings {
		args = append(args, ":(glob)**/*"+e)
	}
	answer, err := run(ctx, folder, "", args...)
	if err != nil {
		return nil, err
	}
	files := map[string]bool{}
	for _, path := range strings.Split(string(answer), "\x00") {
		if path != "" {
			files[path] = true
		}
	}
	return files, nil
}

// Ignored reports whether git ignores a file or a folder below another one and
// tracks neither it nor anything in it. It is not ignored where git can't tell.
func Ignored(ctx context.Context, folder, below string) bool {
	answer, err := run(ctx, folder, below+"\x00", "check-ignore", "-z", "--stdin")
	return err == nil && len(answer) > 0
}

// IgnoredWhole reports whether git ignores a folder, whatever it tracks in it.
func IgnoredWhole(ctx context.Context, folder string) bool {
	answer, err := run(ctx, folder, ".\x00", "check-ignore", "--no-index", "-z", "--stdin")
	return err == nil && len(answer) > 0
}

// Same reports whether the file at a path of the working tree is what an entry
// is: as many bytes of the same hash, or a symbolic link with the same target.
// Line endings that git would convert count as a difference.
func (r *Repository) Same(e Entry) bool {
	path := filepath.Join(r.root, filepath.FromSlash(e.Path))
	info, err := os.Lstat(path)
	if err != nil {
		return false
	}
	if isLink := info.Mode()&os.ModeSymlink != 0; isLink || e.Link() {
		to, err := os.Readlink(path)
		if err != nil || !e.Link() {
			return false
		}
		to = filepath.ToSlash(to)
		hash, err := hashOf(strings.NewReader(to), int64(len(to)), e.Hash)
		return err == nil && hash == e.Hash
	}
	if !info.Mode().IsRegular() {
		return false
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	hash, err := hashOf(f, info.Size(), e.Hash)
	return err == nil && hash == e.Hash
}

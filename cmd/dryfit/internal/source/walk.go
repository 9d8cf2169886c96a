package source

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"github.com/bmatcuk/doublestar/v4"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/standards"
)

// Walker lists the specs under folders.
type Walker struct {
	Ctx      context.Context
	warnings io.Writer
	finders  []*Finder
	Rules    bool     // a standards file that is named stands for the specs that it rules
	rule     []string // such files, as they were named
	left     int      // how many specs git ignores or the standards exclude
	warned   bool
}

// NewWalker walks to some standards.
func NewWalker(ctx context.Context, warnings io.Writer, finders []*Finder) *Walker {
	return &Walker{Ctx: ctx, warnings: warnings, finders: finders}
}

// excluded reports whether the standards exclude a spec that a walk came to; of
// several sets, whether all of them do.
func (w *Walker) excluded(path, start string) bool {
	return !slices.ContainsFunc(w.finders, func(s *Finder) bool { return !s.excludes(path, start) })
}

// excludes reports whether the standards of a spec exclude it. A pattern that the
// start of the walk itself matches does not count: that folder was named.
func (s *Finder) excludes(path, start string) bool {
	for _, file := range s.chain(filepath.Dir(path)) {
		l := s.layer(file)
		if l == nil || len(l.Exclude) == 0 {
			continue // one that is broken is reported when the spec is checked
		}
		from := real(s.folderOf(file))
		spec, named := Below(from, real(path)), Below(from, start)
		for _, p := range l.Exclude {
			if fits(p.Text, spec) && (named == "." || !fits(p.Text, named)) {
				return true
			}
		}
	}
	return false
}

// IsStandards reports whether a path is that of a standards file.
func IsStandards(path string) bool {
	info, err := os.Stat(path)
	return filepath.Base(path) == standards.FileName && err == nil && info.Mode().IsRegular()
}

// ruled lists the specs that a standards file rules, which are those below it
// whose chain has it: a repository below has its own. The file itself is read, so
// that its mistakes are reported though it should rule nothing.
func (w *Walker) ruled(file string) []Input {
	w.rule = append(w.rule, file)
	found, abs := NewFinder(""), file
	if a, err := filepath.Abs(file); err == nil {
		abs = a
	}
	for _, s := range w.finders {
		if s.named == "" && s.From == nil {
			s.layer(shown(abs))
		}
	}
	return slices.DeleteFunc(w.walk(filepath.Dir(file)), func(in Input) bool {
		return !slices.Contains(found.chain(filepath.Dir(in.Path)), shown(abs))
	})
}

func fits(pattern, path string) bool {
	ok, _ := doublestar.Match(pattern, path)
	return ok
}

// Below is a path from a folder, with forward slashes.
func Below(folder, path string) string {
	rel, err := filepath.Rel(folder, path)
	if err != nil {
		return path
	}
	return filepath.ToSlash(rel)
}

// tracked is what git has to say of a folder: the specs below that it tracks or
// does not ignore, and the folders on the way to them, by their paths from it. It
// has no say where files is nil.
type tracked struct {
	base           string
	files, folders map[string]bool
	whole          func() bool // whether what git ignores is checked all the same
}

// walking is a walk on its way.
type walking struct {
	*Walker
	start  string // of the walk, as it was named
	real   string // the same through no symbolic link
	root   string // what no link may lead out of
	said   []*tracked
	inputs []Input
}

// walk lists the specs under a folder, in the order of their names. In a git
// repository those that git ignores and does not track are left out, unless it
// ignores the folder itself, which was named all the same. Folders whose names
// begin with a dot and node_modules are passed over where git tracks no spec in
// them. Symbolic links to folders are not followed, those to files are as long as
// they stay in the repository, or in the folder where there is none. What can't be
// read is listed, so that it is reported.
func (w *Walker) walk(folder string) []Input {
	v := &walking{Walker: w, start: folder, real: filepath.Dir(real(filepath.Join(folder, "x")))}
	v.root = cmp.Or(git.Root(v.real), v.real)
	first := &tracked{base: folder}
	if git.Root(v.real) != "" {
		first = w.ask(folder)
	}
	if v.root != v.real { // a repository does not ignore itself
		first.whole = sync.OnceValue(func() bool { return git.IgnoredWhole(w.Ctx, folder) })
	}
	v.said = []*tracked{first}
	if info, err := os.Lstat(folder); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		v.start += string(filepath.Separator) // into what it leads to
	}
	if err := filepath.WalkDir(v.start, v.at); err != nil {
		panic(err) // it returns none but SkipDir
	}
	return v.inputs
}

// at is what the walk does at a path.
func (v *walking) at(path string, d fs.DirEntry, err error) error {
	folder := d != nil && d.IsDir()
	switch by := v.by(path); {
	case folder && path != v.start && v.passes(by, path, d.Name(), err != nil):
	case err != nil:
		in := NewInput(path)
		in.found = Reason(err)
		v.inputs = append(v.inputs, in)
	case strings.HasSuffix(d.Name(), Extension):
		v.spec(by, path, d)
	case folder && path != v.start && isRepository(path):
		v.said = append(v.said, v.ask(path))
		return nil
	default:
		return nil
	}
	if folder {
		return fs.SkipDir
	}
	return nil
}

// by is what the repository that a path is in has to say.
func (v *walking) by(path string) *tracked {
	last := len(v.said) - 1
	for ; last > 0 && !filepath.IsLocal(Below(v.said[last].base, path)); last-- {
	}
	v.said = v.said[:last+1]
	return v.said[last]
}

// passes reports whether there is nothing to look for in a folder.
func (v *walking) passes(by *tracked, path, name string, unreadable bool) bool {
	switch {
	case name == ".git":
		return true
	case Aside(name):
		return !by.folders[Below(by.base, path)]
	default: // git's list does not tell of the specs in either
		return (unreadable || isRepository(path)) && by.files != nil && !by.whole() && git.Ignored(v.Ctx, by.base, Below(by.base, path))
	}
}

// Aside reports whether a folder of some name is another program's.
func Aside(name string) bool { return strings.HasPrefix(name, ".") || name == "node_modules" }

// spec lists a spec, unless it is left out. A folder of such a name is reported.
func (v *walking) spec(by *tracked, path string, d fs.DirEntry) {
	ignored := !d.IsDir() && by.files != nil && !by.files[Below(by.base, path)] && !by.whole()
	if ignored || v.excluded(path, v.real) {
		v.left++
		return
	}
	in := NewInput(path)
	if d.Type()&fs.ModeSymlink != 0 && LeadsOut(path, v.root) {
		in.found = outOf(v.root)
	}
	v.inputs = append(v.inputs, in)
}

// leftOut says that there was something to check.
func (w *Walker) leftOut() string {
	if w.left == 0 {
		return ""
	}
	return "; " + Specs(w.left) + " left out, ignored by git or excluded by the standards; name their paths to check them"
}

func isRepository(folder string) bool {
	_, err := os.Lstat(filepath.Join(folder, ".git"))
	return err == nil
}

// ask asks git about a folder that is in a repository. Where git can't tell, all
// that is found is checked, which is said once.
func (w *Walker) ask(folder string) *tracked {
	t := &tracked{base: folder, whole: func() bool { return false }}
	files, err := git.Unignored(w.Ctx, folder, Extension)
	if err != nil {
		if !w.warned && w.Ctx.Err() == nil {
			w.warned = true
			fmt.Fprintln(w.warnings, show.Safe(fmt.Sprintf("dryfit: %v; specs that git ignores are checked too", err)))
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

// expanded are the paths that a pattern stands for, which the shell left as it
// was: names that begin with a dot only where the pattern has the dot, and ** for
// any folders. A path that is no pattern, or that is there as it is written, stands for
// itself.
func expanded(p string) ([]string, error) {
	if _, err := os.Lstat(p); err == nil || !strings.ContainsAny(p, "*?[{") {
		return []string{p}, nil
	}
	matches, err := doublestar.FilepathGlob(p, doublestar.WithNoHidden())
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s is no pattern that a path can match: %v", p, err)
	case len(matches) == 0:
		return nil, fmt.Errorf("no path matches %s", p)
	default:
		return matches, nil
	}
}

// Absolute is a path from the root, or the path itself where the working folder is not known.
func Absolute(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path
}

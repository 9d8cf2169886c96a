package source

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// What one run reads of standards is bounded, so that no change to a repository
// exhausts the machine that checks it: the files that hold for one spec, and what
// all files of the run come to, in bytes.
const (
	MostNested    = 16
	mostStandards = 4 * spec.MaxSize
)

// Finder finds the standards that hold for a spec, and reads each file once.
type Finder struct {
	named  string    // the file that replaces what would be found; "" for none
	From   *Snapshot // the revision that the files are read at; nil for the working tree
	layers map[string]*standards.Layer
	broken map[string][]spec.Problem
	Hashes map[string]report.Digest
	read   int                             // bytes, of all files
	chains map[string]string               // by the folder of the spec: its files, a line each
	merged map[string]*standards.Standards // by such lines
}

// NewFinder finds standards in the working tree; a file that is named replaces them, "" for none.
func NewFinder(named string) *Finder {
	return &Finder{
		named: named, layers: map[string]*standards.Layer{}, broken: map[string][]spec.Problem{}, Hashes: map[string]report.Digest{},
		chains: map[string]string{}, merged: map[string]*standards.Standards{},
	}
}

// FindersOf are those of standards that are named, or else the one of those found.
func FindersOf(named []string) []*Finder {
	if len(named) == 0 {
		return []*Finder{NewFinder("")}
	}
	var out []*Finder
	for _, name := range named {
		out = append(out, NewFinder(name))
	}
	return out
}

// layer reads a standards file; what is wrong with it is kept.
func (s *Finder) layer(path string) *standards.Layer {
	if l, ok := s.layers[path]; ok {
		return l
	}
	src, fault := s.source(path)
	if s.read += len(src); fault == "" && s.read > mostStandards {
		fault = fmt.Sprintf("it is not read, because the standards of this run would exceed %dMiB", mostStandards>>20)
	}
	var l *standards.Layer
	problems := review.Unreadable(path, fault, review.Options{Standards: standards.BuiltIn()}).Problems
	if fault == "" {
		s.Hashes[path] = report.DigestOf(filepath.ToSlash(path), src)
		l, problems = catalog.ReadStandards(filepath.ToSlash(path), src)
	}
	s.layers[path] = l
	if len(problems) > 0 {
		s.layers[path], s.broken[path] = nil, problems
	}
	return s.layers[path]
}

func (s *Finder) source(path string) (src []byte, fault string) {
	if s.From != nil {
		return s.From.standards(path)
	}
	in := NewInput(path)
	if root := git.Root(filepath.Dir(path)); root != "" && path != s.named && LeadsOut(path, root) {
		in.found = outOf(root)
	}
	return in.Read(nil)
}

// folderOf is the folder that the paths in a standards file count from: the one
// that it is in, or was; of a file that is named from elsewhere the root of this
// folder's repository.
func (s *Finder) folderOf(file string) string {
	if s.From != nil {
		return s.From.folderOf(file)
	}
	if root := git.Root("."); file == s.named && root != "" && inside(root, real(file)) == "" {
		return root
	}
	return filepath.Dir(file)
}

// chain lists the standards files for a spec in a folder, the nearest first: up
// to the repository's root, where .git is, or else the file system's.
func (s *Finder) chain(folder string) []string {
	if s.named != "" {
		return []string{s.named}
	}
	if s.From != nil {
		return s.From.chain(folder)
	}
	at, err := filepath.Abs(folder)
	if err != nil {
		return nil
	}
	var files []string
	for {
		file := filepath.Join(at, standards.FileName)
		if _, err := os.Lstat(file); err == nil {
			files = append(files, shown(file))
		}
		if _, err := os.Lstat(filepath.Join(at, ".git")); err == nil {
			return files
		}
		up := filepath.Dir(at)
		if up == at {
			return files
		}
		at = up
	}
}

// Whereabouts are this folder and the root of the repository that it is in, as
// far as there is one.
func Whereabouts() (folder, root string) {
	folder, err := os.Getwd()
	if err != nil {
		return "", ""
	}
	return folder, git.Root(folder)
}

// shown is a path relative to this folder where it lies below or near it, as
// one would name it.
func shown(path string) string {
	here, err := os.Getwd()
	if err != nil {
		return path
	}
	if rel, err := filepath.Rel(here, path); err == nil {
		return filepath.ToSlash(rel)
	}
	return path
}

// ForFolder is the standards for specs in a folder. It is nil where one of the
// files is broken, which the name says.
func (s *Finder) ForFolder(folder string) (std *standards.Standards, brokenFile string) {
	if key, ok := s.chains[folder]; ok {
		return s.merged[key], ""
	}
	files := s.chain(folder)
	key := strings.Join(files, "\n")
	if s.merged[key] == nil {
		layers, broken := s.layersOf(files)
		if broken != "" {
			return nil, broken
		}
		std = standards.With(layers...)
		if s.From != nil && len(layers) == 0 {
			std.Name += ", since " + s.From.Rev + " has no " + standards.FileName + " for it"
		}
		s.merged[key] = std
	}
	s.chains[folder] = key
	return s.merged[key], ""
}

// layersOf reads the files of a chain, or names one that is broken: also the one
// that is too many.
func (s *Finder) layersOf(files []string) (layers []*standards.Layer, broken string) {
	if len(files) > MostNested {
		file := files[MostNested]
		fault := fmt.Sprintf("it is not read, because more than %d standards files apply to one spec", MostNested)
		s.broken[file] = review.Unreadable(file, fault, review.Options{Standards: standards.BuiltIn()}).Problems
		return nil, file
	}
	for _, file := range files {
		l := s.layer(file)
		if l == nil {
			return nil, file
		}
		layers = append(layers, l)
	}
	return layers, ""
}

// Assessments reports the broken files, in order.
func (s *Finder) Assessments() []*review.Assessment {
	var files []string
	for f := range s.broken {
		files = append(files, f)
	}
	slices.Sort(files)
	var out []*review.Assessment
	for _, f := range files {
		out = append(out, review.Broken(filepath.ToSlash(f), s.broken[f]))
	}
	return out
}

// UnderStandards pairs each input with the standards it is checked to; an input
// whose standards can't be read gets an assessment that says so.
func (s *Finder) UnderStandards(in Input, o review.Options) (review.Options, *review.Assessment) {
	folder := "."
	if !in.Stdin {
		folder = filepath.Dir(in.Path)
	}
	std, broken := s.ForFolder(folder)
	if std == nil {
		return o, review.Unreadable(in.Name, "its standards, "+filepath.ToSlash(broken)+", can't be read", o)
	}
	o.Standards = std
	return o, nil
}

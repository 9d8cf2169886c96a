package main

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
	mostNested    = 16
	mostStandards = 4 * spec.MaxSize
)

// finder finds the standards that hold for a spec, and reads each file once.
type finder struct {
	named  string    // the file that replaces what would be found; "" for none
	from   *snapshot // the revision that the files are read at; nil for the working tree
	layers map[string]*standards.Layer
	broken map[string][]spec.Problem
	hashes map[string]report.Digest
	read   int                             // bytes, of all files
	chains map[string]string               // by the folder of the spec: its files, a line each
	merged map[string]*standards.Standards // by such lines
}

func newFinder(named string) *finder {
	return &finder{
		named: named, layers: map[string]*standards.Layer{}, broken: map[string][]spec.Problem{}, hashes: map[string]report.Digest{},
		chains: map[string]string{}, merged: map[string]*standards.Standards{},
	}
}

// findersOf are those of standards that are named, or else the one of those found.
func findersOf(named []string) []*finder {
	if len(named) == 0 {
		return []*finder{newFinder("")}
	}
	var out []*finder
	for _, name := range named {
		out = append(out, newFinder(name))
	}
	return out
}

// layer reads a standards file; what is wrong with it is kept.
func (s *finder) layer(path string) *standards.Layer {
	if l, ok := s.layers[path]; ok {
		return l
	}
	src, fault := s.source(path)
	if s.read += len(src); fault == "" && s.read > mostStandards {
		fault = fmt.Sprintf("it is not read: with it the standards of this run come to more than %dMiB", mostStandards>>20)
	}
	var l *standards.Layer
	problems := review.Unreadable(path, fault, review.Options{Standards: standards.BuiltIn()}).Problems
	if fault == "" {
		s.hashes[path] = report.DigestOf(filepath.ToSlash(path), src)
		l, problems = catalog.ReadStandards(filepath.ToSlash(path), src)
	}
	s.layers[path] = l
	if len(problems) > 0 {
		s.layers[path], s.broken[path] = nil, problems
	}
	return s.layers[path]
}

func (s *finder) source(path string) (src []byte, fault string) {
	if s.from != nil {
		return s.from.standards(path)
	}
	in := newInput(path)
	if root := git.Root(filepath.Dir(path)); root != "" && path != s.named && leadsOut(path, root) {
		in.found = outOf(root)
	}
	return in.read(nil)
}

// folderOf is the folder that the paths in a standards file count from: the one
// that it is in, or was; of a file that is named from elsewhere the root of this
// folder's repository.
func (s *finder) folderOf(file string) string {
	if s.from != nil {
		return s.from.folderOf(file)
	}
	if root := git.Root("."); file == s.named && root != "" && inside(root, real(file)) == "" {
		return root
	}
	return filepath.Dir(file)
}

// chain lists the standards files for a spec in a folder, the nearest first: up
// to the repository's root, where .git is, or else the file system's.
func (s *finder) chain(folder string) []string {
	if s.named != "" {
		return []string{s.named}
	}
	if s.from != nil {
		return s.from.chain(folder)
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

// whereabouts are this folder and the root of the repository that it is in, as
// far as there is one.
func whereabouts() (folder, root string) {
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

// forFolder is the standards for specs in a folder. It is nil where one of the
// files is broken, which the name says.
func (s *finder) forFolder(folder string) (std *standards.Standards, brokenFile string) {
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
		if s.from != nil && len(layers) == 0 {
			std.Name += ", since " + s.from.rev + " has no " + standards.FileName + " for it"
		}
		s.merged[key] = std
	}
	s.chains[folder] = key
	return s.merged[key], ""
}

// layersOf reads the files of a chain, or names one that is broken: also the one
// that is too many.
func (s *finder) layersOf(files []string) (layers []*standards.Layer, broken string) {
	if len(files) > mostNested {
		file := files[mostNested]
		fault := fmt.Sprintf("it is not read: more than %d standards files hold for one spec", mostNested)
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

// sheets reports the broken files, in order.
func (s *finder) sheets() []*review.Sheet {
	var files []string
	for f := range s.broken {
		files = append(files, f)
	}
	slices.Sort(files)
	var out []*review.Sheet
	for _, f := range files {
		out = append(out, review.Broken(filepath.ToSlash(f), s.broken[f]))
	}
	return out
}

// underStandards pairs each input with the standards it is checked to; an input
// whose standards can't be read gets a sheet that says so.
func (s *finder) underStandards(in input, o review.Options) (review.Options, *review.Sheet) {
	folder := "."
	if !in.stdin {
		folder = filepath.Dir(in.path)
	}
	std, broken := s.forFolder(folder)
	if std == nil {
		return o, review.Unreadable(in.name, "its standards, "+filepath.ToSlash(broken)+", can't be read", o)
	}
	o.Standards = std
	return o, nil
}

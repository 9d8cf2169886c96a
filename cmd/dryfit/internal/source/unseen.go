package source

import (
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
)

// Unseen are the specs that a revision had under some paths, and its standards
// did not exclude, and that the walk did not come to, as where a folder has become
// a link: a change has no say in what it is judged on. Specs that are gone are
// said, and those that the standards of this tree exclude, where these count and
// the revision's did not.
func (w *Walker) Unseen(from *Snapshot, paths []string, inputs []Input) (out []Input) {
	seen := map[string]bool{}
	for _, in := range inputs {
		seen[from.Place(in.Path)] = true
	}
	var gone, excluded []string
	kept := w.had(from, paths)
	for _, file := range w.trusted(from).had(from, paths) {
		name := shown(filepath.Join(from.root, file))
		switch _, err := os.Lstat(name); {
		case err != nil:
			gone = append(gone, name)
		case seen[file]:
		case !slices.Contains(kept, file):
			excluded = append(excluded, name)
		default:
			in := NewInput(name)
			in.found = from.Rev + " has this spec in a checked folder, and this run does not reach it"
			out = append(out, in)
		}
	}
	w.warnSince(from, "deleted", gone)
	w.warnSince(from, "excluded", excluded)
	return out
}

// warnSince says which files have gone or are excluded since a revision, if any.
func (w *Walker) warnSince(from *Snapshot, what string, names []string) {
	if len(names) > 0 {
		fmt.Fprintln(w.warnings, show.Safe(fmt.Sprintf("dryfit: %s since %s: %s", what, from.Rev, strings.Join(names, ", "))))
	}
}

// trusted walks to the standards that are trusted: those of a revision, where no
// others are named.
func (w *Walker) trusted(from *Snapshot) *Walker {
	if w.finders[0].named != "" || w.finders[0].From != nil {
		return w
	}
	then := NewFinder("")
	then.From = from
	return &Walker{finders: []*Finder{then}}
}

// had are the specs of a revision under some folders, by their paths from the
// root, but for those that the standards exclude.
func (w *Walker) had(from *Snapshot, paths []string) []string {
	found := map[string]bool{}
	for _, p := range paths {
		if !IsFolder(p) {
			continue
		}
		start := path.Dir(from.Place(filepath.Join(p, "x"+Extension)))
		for file, e := range from.files {
			under := start == "." || strings.HasPrefix(file, start+"/")
			if under && strings.HasSuffix(file, Extension) && !e.Submodule() && !w.excluded(filepath.Join(from.root, file), real(p)) {
				found[file] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(found))
}

package report

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// loosening says what standards have loosened: a change of them could let
// anything pass, so that every format shows it.
func loosening(l engine.Loosened) string {
	return fmt.Sprintf("loosened by the standards: %s is %s, built in is %s; %s:%d: %s", l.Name, l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source)
}

// Loosenings are those in words, made safe.
func Loosenings(list []engine.Loosened) []string {
	var out []string
	for _, l := range list {
		out = append(out, show.Safe(loosening(l)))
	}
	return out
}

// loosenedNotes mark the line of the standards that loosens something, once for
// all specs; of a file that is not in the working tree the spec is marked.
func (r Report) loosenedNotes(s *review.Assessment, said map[string]bool) []note {
	var out []note
	for _, l := range s.Loosened {
		text := show.Shown(loosening(l))
		path, ok := r.treeFile(l.Origin.File)
		line := l.Origin.Line
		if !ok {
			path, line = r.InRepository(s.Path), 1
		}
		if said[path+text] {
			continue
		}
		said[path+text] = true
		out = append(out, note{"warning", path, fmt.Sprintf("line=%d,endLine=%d", line, line), "loosened " + l.Name, text})
	}
	return out
}

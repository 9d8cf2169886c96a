package report

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"dryfit/rules"
	"dryfit/rules/review"
)

// loosening says what standards have loosened: a change of them could let
// anything pass, so that every format shows it.
func loosening(l rules.Loosened) string {
	return fmt.Sprintf("loosened by the standards: %s is %s, built in is %s; %s:%d: %s", l.Name, l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source)
}

// loosenings are those in words, made safe.
func loosenings(list []rules.Loosened) []string {
	var out []string
	for _, l := range list {
		out = append(out, Safe(loosening(l)))
	}
	return out
}

// annotateLoosened marks the line of the standards that loosens something, once for
// all specs; of a file that is not in the working tree the spec is marked.
func (r Report) annotateLoosened(out io.Writer, s *review.Sheet, said map[string]bool) {
	for _, l := range s.Loosened {
		text := loosening(l)
		path, line := r.InRepository(l.Origin.File), l.Origin.Line
		if filepath.IsAbs(path) || strings.HasPrefix(path, "../") || strings.Contains(path, ":") {
			path, line = r.InRepository(s.Path), 1
		}
		if said[path+text] {
			continue
		}
		said[path+text] = true
		fmt.Fprintf(out, "::warning file=%s,line=%d,title=%s::%s\n", annotationValue.Replace(Safe(path)), line,
			annotationValue.Replace(Safe("loosened "+l.Name)), annotationText.Replace(Safe(text)))
	}
}

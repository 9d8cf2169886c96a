package remedy

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/spec"
)

// Comment is one of a spec's file, that a change leaves as it is.
type Comment struct {
	Line int
	Text string
	Key  string // the changed key that it is about
}

// beside are the comments on the lines of changed values, and those elsewhere
// that state what a value was.
func beside(doc *spec.Document, changes []Change) []Comment {
	var out []Comment
	for _, c := range changes {
		r, ok := doc.ValueRange(c.Key)
		if !ok {
			continue
		}
		first, last := doc.Position(r.Start).Line, doc.Position(r.End).Line
		for i, line := range strings.Split(string(doc.Source), "\n") {
			n, text := i+1, commentOf(line)
			on := first <= n && n <= last
			listed := slices.ContainsFunc(out, func(had Comment) bool { return had.Line == n })
			if text != "" && !listed && (on || states(text, c.Was)) {
				out = append(out, Comment{n, text, c.Key})
			}
		}
	}
	slices.SortFunc(out, func(a, b Comment) int { return a.Line - b.Line })
	return out
}

// states reports whether a comment has a quantity in it as a spec writes it. A
// mere count may be one of anything.
func states(comment string, was any) bool {
	text := fmt.Sprint(was)
	_, quantity := was.(string)
	if !quantity || !strings.ContainsAny(text, "0123456789") {
		return false
	}
	for rest := comment; ; {
		before, after, found := strings.Cut(rest, text)
		if !found {
			return false
		}
		if !ends(before, "0123456789./") && !begins(after, "0123456789./") {
			return true
		}
		rest = after
	}
}

func ends(text, with string) bool {
	return text != "" && strings.ContainsRune(with, rune(text[len(text)-1]))
}

func begins(text, with string) bool { return text != "" && strings.ContainsRune(with, rune(text[0])) }

// commentOf is what a line of TOML has after its values.
func commentOf(line string) string {
	quote := rune(0)
	escaped := false
	for i, r := range line {
		switch {
		case escaped:
			escaped = false
		case quote == '"' && r == '\\':
			escaped = true
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case r == '"' || r == '\'':
			quote = r
		case r == '#':
			return strings.TrimSpace(line[i:])
		}
	}
	return ""
}

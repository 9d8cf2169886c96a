package editor

import (
	"unicode/utf8"

	"dryfit/spec"
	"dryfit/spec/edit"
)

// change puts a text in the place of a range of bytes.
type change struct {
	at   spec.Range
	text string
}

func (c change) apply(text string) string { return text[:c.at.Start] + c.text + text[c.at.End:] }

// set is the change of a spec's text that gives a key a value. It reports false
// where that can't be done in place.
func set(text, key string, value any) (change, bool) {
	changed, err := edit.Apply([]byte(text), []edit.Change{{Key: key, Value: value}})
	if err != nil {
		return change{}, false
	}
	return between(text, string(changed)), true
}

// between is the least change that makes one text of another, in whole
// characters.
func between(from, to string) change {
	start := 0
	for start < min(len(from), len(to)) && from[start] == to[start] {
		start++
	}
	for start > 0 && start < len(from) && !utf8.RuneStart(from[start]) {
		start--
	}
	end := 0
	for end < min(len(from), len(to))-start && from[len(from)-1-end] == to[len(to)-1-end] {
		end++
	}
	for end > 0 && !utf8.RuneStart(from[len(from)-end]) {
		end--
	}
	return change{spec.Range{Start: start, End: len(from) - end}, to[start : len(to)-end]}
}

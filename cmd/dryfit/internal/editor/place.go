package editor

import (
	"sort"
	"strings"
	"unicode/utf8"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/spec"
)

// lined is a text with its lines as the protocol counts them. Inside the
// server a place is a byte offset; only here it becomes a line and a character.
type lined struct {
	text   string
	starts []int // offset of each line
	bytes  bool  // characters are bytes, and not UTF-16 code units
}

func newLined(text string, bytes bool) lined {
	l := lined{text: text, starts: []int{0}, bytes: bytes}
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\r' && i+1 < len(text) && text[i+1] == '\n':
		case text[i] == '\n', text[i] == '\r':
			l.starts = append(l.starts, i+1)
		}
	}
	return l
}

// position is the place of a byte offset.
func (l lined) position(offset int) position {
	offset = min(max(offset, 0), len(l.text))
	line := l.lineOf(offset)
	return position{Line: line, Character: l.units(l.text[l.starts[line]:offset])}
}

// lineOf is the line that a byte offset is in.
func (l lined) lineOf(offset int) int { return sort.SearchInts(l.starts, offset+1) - 1 }

// units is the length of a text in characters of the protocol.
func (l lined) units(s string) int {
	if l.bytes {
		return len(s)
	}
	n := 0
	for _, r := range s {
		n++
		if r > 0xffff {
			n++
		}
	}
	return n
}

// offset is the byte offset of a place. One past the end of its line is that
// end, and one inside a code point is its start.
func (l lined) offset(p position) int {
	if p.Line < 0 {
		return 0
	}
	if p.Line >= len(l.starts) {
		return len(l.text)
	}
	at, end := l.starts[p.Line], l.lineEnd(p.Line)
	for left := p.Character; at < end; {
		r, size := utf8.DecodeRuneInString(l.text[at:end])
		width := 1
		switch {
		case l.bytes:
			width = size
		case r > 0xffff:
			width = 2
		}
		if left < width {
			break
		}
		left -= width
		at += size
	}
	return at
}

// lineEnd is the offset past the last character of a line, without its end.
func (l lined) lineEnd(line int) int {
	end := len(l.text)
	if line+1 < len(l.starts) {
		end = l.starts[line+1]
	}
	return l.starts[line] + len(strings.TrimRight(l.text[l.starts[line]:end], "\r\n"))
}

// span is a range of bytes as the protocol has it.
func (l lined) span(r spec.Range) span {
	return span{Start: l.position(r.Start), End: l.position(r.End)}
}

// shown is the range to mark for something: never nothing, since that can't be
// seen. An empty one becomes the rest of its line, or the line before it.
func (l lined) shown(r spec.Range) span {
	if r.End > r.Start {
		return l.span(r)
	}
	line := l.position(r.Start).Line
	end := l.lineEnd(line)
	if end <= r.Start {
		r.Start = l.starts[line]
	}
	return l.span(spec.Range{Start: r.Start, End: end})
}

// fromDocument is a range of a document as one of the whole text.
func (l lined) fromDocument(r spec.Range) spec.Range {
	if strings.HasPrefix(l.text, outline.ByteOrderMark) {
		return spec.Range{Start: r.Start + len(outline.ByteOrderMark), End: r.End + len(outline.ByteOrderMark)}
	}
	return r
}

// follower finds places near the last one without counting from the start of
// their line, which may be the whole text.
type follower struct {
	lined
	offset int
	place  position
}

func (f *follower) at(offset int) position {
	switch line := f.lineOf(offset); {
	case line != f.place.Line:
		f.place = f.position(offset)
	case offset < f.offset:
		f.place.Character -= f.units(f.text[offset:f.offset])
	default:
		f.place.Character += f.units(f.text[f.offset:offset])
	}
	f.offset = offset
	return f.place
}

func (f *follower) span(r spec.Range) span { return span{Start: f.at(r.Start), End: f.at(r.End)} }

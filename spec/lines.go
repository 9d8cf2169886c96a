package spec

import "sort"

// block is how many bytes lie between two counts of code points. It makes a
// place cheap to find in a line as long as a file may be.
const block = 256

// lines knows where each line of a source starts, and how many code points
// come before.
type lines struct {
	src    []byte
	starts []int // byte offset of each line
	counts []int // code points before each block
}

func linesOf(src []byte) lines {
	l := lines{src: src, starts: []int{0}, counts: make([]int, 0, len(src)/block+1)}
	count := 0
	for i, c := range src {
		if i%block == 0 {
			l.counts = append(l.counts, count)
		}
		if startsRune(c) {
			count++
		}
		if c == '\n' {
			l.starts = append(l.starts, i+1)
		}
	}
	l.counts = append(l.counts, count)
	return l
}

// startsRune reports whether a byte of UTF-8 is not the continuation of a code
// point.
func startsRune(c byte) bool { return c&0xc0 != 0x80 }

// at is the number of the line that an offset is in, from 0.
func (l lines) at(offset int) int { return sort.SearchInts(l.starts, offset+1) - 1 }

// before counts the code points that start before an offset.
func (l lines) before(offset int) int {
	n := offset / block
	count := l.counts[n]
	for _, c := range l.src[n*block : offset] {
		if startsRune(c) {
			count++
		}
	}
	return count
}

// Position is the line and column of a byte offset.
func (d *Document) Position(offset int) Position {
	offset = min(max(offset, 0), len(d.Source))
	line := d.lines.at(offset)
	return Position{line + 1, d.lines.before(offset) - d.lines.before(d.lines.starts[line]) + 1}
}

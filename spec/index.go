package spec

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// place is where a key and its value stand. A table that a header opens has
// the header's last name as its key, and no value.
type place struct {
	key, value Range
}

// KeyRange is where a key is written, without quotes added or dropped.
func (d *Document) KeyRange(key string) (Range, bool) {
	p, ok := d.index[key]
	return p.key, ok && p.key.End > 0
}

// ValueRange is where a key's value is written.
func (d *Document) ValueRange(key string) (Range, bool) {
	p, ok := d.index[key]
	return p.value, ok && p.value.End > 0
}

// Locate is the place to show for a key: its value, else its own name, else
// the same for the nearest table that it is in, else the start of the file.
func (d *Document) Locate(key string) Range {
	for ; key != ""; key = Parent(key) {
		if r, ok := d.ValueRange(key); ok {
			return r
		}
		if r, ok := d.KeyRange(key); ok {
			return r
		}
	}
	return Range{}
}

// indexOf walks a document that the decoder has accepted. It only locates: it
// decides nothing.
func indexOf(src []byte) map[string]place {
	w := walker{src: src, index: make(map[string]place, bytes.Count(src, []byte("="))), counts: map[string]int{}}
	w.parser.Reset(src)
	for w.parser.NextExpression() {
		e := w.parser.Expression()
		switch e.Kind {
		case unstable.Table:
			w.table = w.header(e, false)
		case unstable.ArrayTable:
			w.table = w.header(e, true)
		case unstable.KeyValue:
			w.keyValue(w.table, e)
		}
	}
	return w.index
}

type walker struct {
	parser unstable.Parser
	src    []byte
	index  map[string]place
	counts map[string]int // of the elements of each array of tables so far
	table  string         // key of the table that the last header opened
}

func join(key, name string) string {
	if key == "" {
		return name
	}
	return key + "." + name
}

func rangeOf(r unstable.Range) Range {
	return Range{int(r.Offset), int(r.Offset + r.Length)}
}

// header opens a table and returns its key. A name on the way that is an array
// of tables stands for its last element.
func (w *walker) header(e *unstable.Node, element bool) string {
	key := ""
	names := e.Key()
	for names.Next() {
		n := names.Node()
		key = join(key, quotedName(string(n.Data)))
		at := rangeOf(n.Raw)
		w.note(key, at)
		if names.IsLast() && element {
			w.counts[key]++
		} else if names.IsLast() {
			w.open(key, at)
		}
		if c := w.counts[key]; c > 0 {
			key = join(key, strconv.Itoa(c))
			w.note(key, at)
		}
	}
	return key
}

// note keeps the first place where several headers or dotted keys name a key.
func (w *walker) note(key string, at Range) {
	if _, had := w.index[key]; !had {
		w.index[key] = place{key: at}
	}
}

// open is the place of a table's own header, which counts for more than those
// that passed through the table before.
func (w *walker) open(key string, at Range) {
	p := w.index[key]
	p.key = at
	w.index[key] = p
}

// keyValue indexes a key and its value under a table, and returns the offset
// past the value.
func (w *walker) keyValue(table string, e *unstable.Node) int {
	key, end := table, 0
	names := e.Key()
	for names.Next() {
		n := names.Node()
		key = join(key, quotedName(string(n.Data)))
		w.note(key, rangeOf(n.Raw))
		end = rangeOf(n.Raw).End
	}
	start := w.skip(end, " \t")        // to the equals sign
	start = w.skip(start+1, " \t\r\n") // and past it
	past := w.value(key, e.Value(), start)
	p := w.index[key]
	p.value = Range{start, past}
	w.index[key] = p
	return past
}

// value indexes what is inside a value that starts at an offset, and returns
// the offset past it.
func (w *walker) value(key string, n *unstable.Node, start int) int {
	switch n.Kind {
	case unstable.Array:
		return w.array(key, n, start)
	case unstable.InlineTable:
		at := start + 1
		for pairs := n.Children(); pairs.Next(); {
			at = w.keyValue(key, pairs.Node())
		}
		return w.close(at, '}')
	default:
		return rangeOf(n.Raw).End
	}
}

func (w *walker) array(key string, n *unstable.Node, start int) int {
	at, i := start+1, 0
	for elements := n.Children(); elements.Next(); {
		i++
		element := join(key, strconv.Itoa(i))
		from := w.skipComments(at)
		at = w.value(element, elements.Node(), from)
		w.index[element] = place{value: Range{from, at}}
	}
	return w.close(at, ']')
}

// close is the offset past the next closing bracket, which only blanks,
// commas, line ends and comments stand before.
func (w *walker) close(at int, bracket byte) int {
	at = w.skipComments(at)
	if at < len(w.src) && w.src[at] == bracket {
		at++
	}
	return at
}

func (w *walker) skip(at int, over string) int {
	for at < len(w.src) && strings.IndexByte(over, w.src[at]) >= 0 {
		at++
	}
	return at
}

func (w *walker) skipComments(at int) int {
	for {
		at = w.skip(at, " \t\r\n,")
		if at >= len(w.src) || w.src[at] != '#' {
			return at
		}
		end := bytes.IndexByte(w.src[at:], '\n')
		if end < 0 {
			return len(w.src)
		}
		at += end
	}
}

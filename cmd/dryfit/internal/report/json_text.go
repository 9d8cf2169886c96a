package report

import (
	"bytes"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/spool"
)

// jsonText writes a document of JSON part by part, with the line ends and indents that
// it would have as a whole.
type jsonText struct {
	to  io.Writer
	err error // of the first write that failed, after which nothing is written
}

func (j *jsonText) text(s string) {
	if j.err == nil {
		_, j.err = io.WriteString(j.to, s)
	}
}

// line begins a line that is indented by so many levels.
func (j *jsonText) line(depth int) { j.text("\n" + indent(depth)) }

// value writes a value whose lines are indented by so many levels.
func (j *jsonText) value(depth int, v any) { j.text(j.encoded(depth, v)) }

// open writes an object that has members, to which more can be added.
func (j *jsonText) open(depth int, v any) {
	j.text(strings.TrimSuffix(j.encoded(depth, v), "\n"+indent(depth)+"}"))
}

// member begins a further member of an object.
func (j *jsonText) member(depth int, name string) {
	j.text(",")
	j.line(depth)
	j.text(`"` + name + `": `)
}

// next begins an element of a list that has so many.
func (j *jsonText) next(elements *int, depth int) {
	if *elements > 0 {
		j.text(",")
	}
	*elements++
	j.line(depth)
}

// end ends a list whose elements, if it has any, are indented by so many levels.
func (j *jsonText) end(elements, depth int) {
	if elements > 0 {
		j.line(depth - 1)
	}
	j.text("]")
}

func (j *jsonText) encoded(depth int, v any) string {
	var b bytes.Buffer
	e := show.NewEncoder(&b)
	e.SetIndent(indent(depth), "  ")
	if err := e.Encode(v); err != nil && j.err == nil {
		j.err = err
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func indent(depth int) string { return strings.Repeat("  ", depth) }

// jsonKept is a list that is written after what is known only at the end of it.
type jsonKept struct {
	jsonText // to spool
	spool    spool.Spool
	elements int
	depth    int // of the elements
}

func newJSONKept(depth int) *jsonKept {
	k := &jsonKept{depth: depth}
	k.to = &k.spool
	return k
}

func (k *jsonKept) add(v any) {
	k.next(&k.elements, k.depth)
	k.value(k.depth, v)
}

// list writes a list that was kept.
func (j *jsonText) list(k *jsonKept) {
	j.text("[")
	if j.err == nil {
		j.err = k.err
	}
	if j.err == nil {
		_, j.err = k.spool.WriteTo(j.to)
	}
	j.end(k.elements, k.depth)
}

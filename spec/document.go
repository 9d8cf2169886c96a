// Package spec reads the specification of a ceiling: the document with the
// place of every key and value in it, and its typed form.
package spec

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// MaxSize is the greatest size of a file, in bytes.
const MaxSize = 1 << 20

// FormatVersion is the version of the format that this program reads.
const FormatVersion = 1

// Document is one TOML file: a spec, or standards.
type Document struct {
	Path   string
	Source []byte // without byte order mark
	// Tree is what the file says, in few types: map[string]any, []any, string,
	// int64, float64, bool; dates and times are strings.
	Tree map[string]any

	lines []int // byte offset of each line's start
	index map[string]place
}

// Range is a part of the source, in bytes; End is the first byte past it.
type Range struct{ Start, End int }

// Position is a place in the source; both count from 1, and Column counts code
// points.
type Position struct{ Line, Column int }

// Problem is a fault of the file itself.
type Problem struct {
	Rule     string // "file.read", "file.toml", "file.shape", "spec.geometry"
	Key      string // "" where it is not of one key
	Range    Range
	Position Position
	End      Position
	Message  string // one sentence, without a full stop
}

// The byte order mark in UTF-8.
var mark = []byte("\xef\xbb\xbf")

// Parse reads the bytes of a file. Where there are problems the document may
// lack its tree; its source and lines are always there.
func Parse(path string, src []byte) (*Document, []Problem) {
	d := &Document{Path: path, Source: bytes.TrimPrefix(src, mark), Tree: map[string]any{}}
	d.lines = lineStarts(d.Source)
	if problem := d.unfit(len(src)); problem != nil {
		return d, []Problem{*problem}
	}
	var tree map[string]any
	if _, err := toml.Decode(string(d.Source), &tree); err != nil {
		return d, []Problem{d.syntax(err)}
	}
	d.index = indexOf(d.Source)
	var problems []Problem
	d.Tree = d.normal(tree, nil, &problems).(map[string]any)
	slices.SortFunc(problems, func(a, b Problem) int { return cmp.Compare(a.Range.Start, b.Range.Start) })
	return d, problems
}

// unfit says why the bytes can't be TOML at all.
func (d *Document) unfit(size int) *Problem {
	at := func(offset int, rule, message string) *Problem {
		p := d.at(Range{offset, offset}, rule, message)
		return &p
	}
	if size > MaxSize {
		return at(0, "file.read", fmt.Sprintf("the file is over %dMiB, which no spec is", MaxSize>>20))
	}
	if len(bytes.TrimSpace(d.Source)) == 0 {
		return at(0, "file.read", "the file is empty")
	}
	for i := 0; i < len(d.Source); {
		r, n := utf8.DecodeRune(d.Source[i:])
		if r == utf8.RuneError && n == 1 {
			return at(i, "file.toml", fmt.Sprintf("byte 0x%02x is not UTF-8; save the file as UTF-8", d.Source[i]))
		}
		i += n
	}
	return nil
}

// syntax turns the decoder's error into a problem.
func (d *Document) syntax(err error) Problem {
	var pe toml.ParseError
	if !errors.As(err, &pe) {
		return d.at(Range{}, "file.toml", strings.TrimPrefix(err.Error(), "toml: "))
	}
	start := min(max(pe.Position.Start, 0), len(d.Source))
	end := min(start+max(pe.Position.Len, 0), len(d.Source))
	for start < end && (d.Source[start] == ' ' || d.Source[start] == '\t') {
		start++ // the decoder may point at the blank before what offends
	}
	return d.at(Range{start, end}, "file.toml", "not TOML: "+strings.TrimSuffix(pe.Message, "."))
}

// at is a problem at a range of the source.
func (d *Document) at(r Range, rule, message string) Problem {
	return Problem{Rule: rule, Range: r, Position: d.Position(r.Start), End: d.Position(r.End), Message: message}
}

// Problem is a problem at a key.
func (d *Document) Problem(rule, key, message string) Problem {
	p := d.at(d.Locate(key), rule, message)
	p.Key = key
	return p
}

// KeyProblem is a problem with a key itself, not with its value.
func (d *Document) KeyProblem(rule, key, message string) Problem {
	r, ok := d.KeyRange(key)
	if !ok {
		return d.Problem(rule, key, message)
	}
	p := d.at(r, rule, message)
	p.Key = key
	return p
}

// normal copies what the decoder gave into the few types of a tree. What is
// not a finite number is a problem, and is left out.
func (d *Document) normal(v any, path []any, problems *[]Problem) any {
	switch v := v.(type) {
	case map[string]any:
		out := make(map[string]any, len(v))
		for name, x := range v {
			if n := d.normal(x, append(path[:len(path):len(path)], name), problems); n != nil {
				out[name] = n
			}
		}
		return out
	case []map[string]any:
		out := make([]any, 0, len(v))
		for i, x := range v {
			out = append(out, d.normal(x, append(path[:len(path):len(path)], i+1), problems))
		}
		return out
	case []any:
		out := make([]any, 0, len(v))
		for i, x := range v {
			out = append(out, d.normal(x, append(path[:len(path):len(path)], i+1), problems))
		}
		return out
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			*problems = append(*problems, d.Problem("file.shape", Key(path...), "is not a finite number"))
			return nil
		}
		return v
	case time.Time:
		return timeText(v)
	default:
		return v
	}
}

// timeText prints a date or a time as TOML writes it; the decoder keeps which
// of them it was as the name of a time zone.
func timeText(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return t.Format(time.DateOnly)
	case "time-local":
		return t.Format("15:04:05")
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05")
	default:
		return t.Format(time.RFC3339)
	}
}

// Format reads the format's version number, which comes before all else. The
// problem says what is wrong with it.
func Format(d *Document) (int, *Problem) {
	v, given := d.Tree["dryfit"]
	n, whole := v.(int64)
	message := ""
	switch {
	case !given:
		message = fmt.Sprintf("the format's version is missing; begin the file with dryfit = %d", FormatVersion)
	case !whole || n < 1:
		message = fmt.Sprintf("the format's version is a whole number; write dryfit = %d", FormatVersion)
	case n > FormatVersion:
		message = fmt.Sprintf("the file is written for format %d, and this version of dryfit reads format %d", n, FormatVersion)
	default:
		return int(n), nil
	}
	p := d.Problem("file.shape", "dryfit", message)
	return 0, &p
}

// Package spec reads the specification of a ceiling: the document with the
// place of every key and value in it, and its typed form.
package spec

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
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

	lines lines
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
	d.lines = linesOf(d.Source)
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

// unfit says why the bytes can't be TOML at all, or should not be tried.
func (d *Document) unfit(size int) *Problem {
	at := func(start, length int, rule, format string, args ...any) *Problem {
		p := d.at(Range{start, start + length}, rule, fmt.Sprintf(format, args...))
		return &p
	}
	if size > MaxSize {
		return at(0, 0, "file.read", "the file is larger than %dMiB, the maximum", MaxSize>>20)
	}
	if len(bytes.TrimSpace(d.Source)) == 0 {
		return at(0, 0, "file.read", "the file is empty")
	}
	for i := 0; i < len(d.Source); {
		if b := d.Source[i]; b >= ' ' && b < 0x7f { // most are
			i++
			continue
		}
		r, n := utf8.DecodeRune(d.Source[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			return at(i, n, "file.toml", "byte 0x%02x is not UTF-8; save the file as UTF-8", d.Source[i])
		case r < ' ' && r != '\t' && r != '\n' && !bytes.HasPrefix(d.Source[i:], []byte("\r\n")), r == 0x7f:
			return at(i, n, "file.toml", "control character 0x%02x is not allowed in TOML; save the file as text in UTF-8", r)
		}
		i += n
	}
	if offset, deep := tooDeep(d.Source); deep {
		return at(offset, 1, "file.toml", "nested more than %d deep, the maximum", MaxDepth)
	}
	return nil
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

// step is a name or a number on the way to a value; up is the one before, nil of none.
type step struct {
	up     *step
	name   string
	number int // from 1; 0 of a name
}

// key is the key that the way leads to.
func (s *step) key() string {
	if s == nil {
		return ""
	}
	name := quotedName(s.name)
	if s.number > 0 {
		name = strconv.Itoa(s.number)
	}
	return join(s.up.key(), name)
}

// normal turns what the decoder gave into the few types of a tree, in place.
// What is not a finite number is a problem, and is left out.
func (d *Document) normal(v any, at *step, problems *[]Problem) any {
	switch v := v.(type) {
	case map[string]any:
		for name, x := range v {
			switch x.(type) {
			case string, int64, bool:
				continue // most are
			}
			if v[name] = d.normal(x, &step{up: at, name: name}, problems); v[name] == nil {
				delete(v, name)
			}
		}
		return v
	case []map[string]any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = x
		}
		return d.normalList(out, at, problems)
	case []any:
		return d.normalList(v, at, problems)
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			*problems = append(*problems, d.Problem("file.shape", at.key(), "is not a finite number"))
			return nil
		}
		return v
	case time.Time:
		return timeText(v)
	default:
		return v
	}
}

func (d *Document) normalList(list []any, at *step, problems *[]Problem) []any {
	for i, x := range list {
		list[i] = d.normal(x, &step{up: at, number: i + 1}, problems)
	}
	return list
}

// timeText prints a date or a time as TOML writes it; the decoder keeps which
// of them it was as the name of a time zone.
func timeText(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return t.Format(time.DateOnly)
	case "time-local":
		return t.Format("15:04:05.999999999")
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05.999999999")
	default:
		return t.Format(time.RFC3339Nano)
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

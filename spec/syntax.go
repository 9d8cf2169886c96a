package spec

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// syntax turns the decoder's error into a problem. What goes wrong most is a
// quantity without its quotes, so that has a sentence of its own.
func (d *Document) syntax(err error) Problem {
	var pe toml.ParseError
	if !errors.As(err, &pe) {
		return d.at(Range{}, "file.toml", strings.TrimPrefix(err.Error(), "toml: "))
	}
	start := min(max(pe.Position.Start, 0), len(d.Source))
	end := min(start+max(pe.Position.Len, 0), len(d.Source))
	if r, ok := d.unquoted(start); ok {
		return d.at(r, "file.toml", withoutQuotes(string(d.Source[r.Start:r.End])))
	}
	for start < end && (d.Source[start] == ' ' || d.Source[start] == '\t') {
		start++ // the decoder may point at the blank before what offends
	}
	return d.at(Range{start, end}, "file.toml", "not TOML: "+plain(pe.Message))
}

// plain is the decoder's message in the form of ours: it starts its sentences
// with capitals now and then, and shows the end of the file as a zero byte.
func plain(message string) string {
	message = strings.ReplaceAll(strings.TrimSuffix(message, "."), `'\x00'`, "the end of the file")
	first, size := utf8.DecodeRuneInString(message)
	return string(unicode.ToLower(first)) + message[size:]
}

var (
	// text begins as a word or a quantity does.
	text = regexp.MustCompile(`^[+-]?[0-9\p{L}]`)
	// figures are what TOML writes without quotes: numbers, dates and times.
	figures = regexp.MustCompile(`^[-+0-9._:eETZ ]*$`)
)

// unquoted finds the value without quotes that the decoder stopped at: what
// lies between an equals sign, or a comma or bracket after it, and the next
// comma, bracket, comment or end of the line.
func (d *Document) unquoted(offset int) (Range, bool) {
	from := d.lines.starts[d.lines.at(offset)]
	equals := bytes.IndexByte(d.Source[from:offset], '=')
	if equals < 0 || bytes.ContainsAny(d.Source[from:from+equals], `[#`) {
		return Range{}, false
	}
	from += bytes.LastIndexAny(d.Source[from:offset], "=[,") + 1
	rest := d.Source[from:]
	if end := bytes.IndexAny(rest, ",]}#\r\n"); end >= 0 {
		rest = rest[:end]
	}
	value := bytes.TrimSpace(rest)
	if !text.Match(value) || figures.Match(value) || bytes.IndexByte(value, '=') >= 0 {
		return Range{}, false
	}
	from += bytes.Index(rest, value)
	return Range{from, from + len(value)}, offset <= from+len(value)
}

func withoutQuotes(value string) string {
	if lower := strings.ToLower(value); lower == "true" || lower == "false" {
		return fmt.Sprintf("%s is written %s", value, lower)
	}
	return fmt.Sprintf("%s has no quotes; write %q", value, value)
}

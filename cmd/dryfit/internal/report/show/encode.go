package show

import (
	"encoding/json"
	"io"
	"unicode/utf16"
	"unicode/utf8"
)

// NewEncoder is that of every JSON output. Control and format characters in
// texts are written as \uXXXX, so that the bytes do nothing to a terminal or to
// a reader's eye, and yet decode to the same text.
func NewEncoder(w io.Writer) *json.Encoder {
	e := json.NewEncoder(escaper{w})
	e.SetEscapeHTML(false)
	return e
}

// WriteJSON writes one document, indented.
func WriteJSON(w io.Writer, document any) error {
	e := NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(document)
}

// escaper escapes what an encoder writes. The encoder writes each document
// whole, so that no character is cut in two.
type escaper struct{ to io.Writer }

// Write reports the length of the document as given, since an io.Writer may report
// no more.
func (e escaper) Write(document []byte) (int, error) {
	if _, err := e.to.Write(EscapeJSON(document)); err != nil {
		return 0, err
	}
	return len(document), nil
}

// EscapeJSON is the same document with every character that is not fit to be
// shown written by its code. Such characters stand in texts alone; the line ends
// between the parts of a document stay.
func EscapeJSON(document []byte) []byte {
	var out []byte
	kept := 0
	for i := 0; i < len(document); {
		if b := document[i]; b >= ' ' && b < 0x7f { // as most are
			i++
			continue
		}
		r, size := utf8.DecodeRune(document[i:])
		if r != '\n' && !SafeRune(r) {
			out = appendEscape(append(out, document[kept:i]...), r)
			kept = i + size
		}
		i += size
	}
	if kept == 0 {
		return document
	}
	return append(out, document[kept:]...)
}

// appendEscape adds a character by its code, one past U+FFFF as a pair.
func appendEscape(out []byte, r rune) []byte {
	for _, unit := range utf16.Encode([]rune{r}) {
		out = append(out, '\\', 'u')
		for shift := 12; shift >= 0; shift -= 4 {
			out = append(out, "0123456789abcdef"[unit>>shift&0xf])
		}
	}
	return out
}

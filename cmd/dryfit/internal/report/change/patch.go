package change

import (
	"bytes"
	"fmt"
	"io"
	"path"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
)

// Patch writes the difference between two versions of a file as git apply and
// patch take it, the path from the folder that they are run in.
func Patch(w io.Writer, file string, before, after []byte) error {
	text := diff.Diff("before", before, "after", after)
	if text == nil {
		return nil
	}
	// Its three lines of heading name the files as they are; ours quotes them.
	for range 3 {
		_, text, _ = bytes.Cut(text, []byte("\n"))
	}
	name := strings.TrimPrefix(path.Clean(file), "/")
	_, err := fmt.Fprintf(w, "--- %s\n+++ %s\n%s", patchName("a/"+name), patchName("b/"+name), text)
	return err
}

// patchName is a file's name as git writes it: quoted where it holds a quote or
// a control character, with a tab after it where it holds a blank.
func patchName(name string) string {
	plain := true
	var b strings.Builder
	for _, c := range []byte(name) {
		switch {
		case c == '"' || c == '\\':
			plain = false
			b.WriteByte('\\')
			b.WriteByte(c)
		case c < ' ' || c == 0x7f:
			plain = false
			fmt.Fprintf(&b, `\%03o`, c)
		default:
			b.WriteByte(c)
		}
	}
	switch {
	case !plain:
		return `"` + b.String() + `"`
	case strings.Contains(name, " "):
		return name + "\t"
	default:
		return name
	}
}

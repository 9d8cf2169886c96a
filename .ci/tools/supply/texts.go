package main

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
)

// writeTexts writes the licences and notices of all that is in a program, as
// most of them ask of whoever passes it on.
func writeTexts(b *bytes.Buffer, linked map[string]*module) error {
	var err error
	for _, path := range slices.Sorted(maps.Keys(linked)) {
		m := linked[path]
		err = errors.Join(err, m.agree(true))
		name := strings.TrimSpace(path + " " + m.version)
		if path == standard {
			name = "Go's standard library"
		}
		fmt.Fprintf(b, "%s\n%s (%s)\n%[1]s\n", strings.Repeat("=", 80), name, m.licence)
		for _, f := range m.files {
			text, readErr := os.ReadFile(f)
			err = errors.Join(err, readErr)
			fmt.Fprintf(b, "\n%s\n\n", bytes.TrimSpace(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))))
		}
	}
	return err
}

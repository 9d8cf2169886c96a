package beginning

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/design/begin"
	"dryfit/spec"
)

// measure reads the survey, and prints what is wrong with it at its place.
func (f *Flags) measure(s console.Streams) error {
	if f.Survey == "" {
		return nil
	}
	in := source.NewInput(f.Survey)
	src, unread := in.Read(nil)
	if unread != "" {
		return fmt.Errorf("read %s: %s", in.Name, unread)
	}
	measured, problems := begin.ReadSurvey(in.Name, src)
	for _, p := range problems {
		fmt.Fprintln(s.Err, show.Safe(inFile(in.Name, p.Position, p.Key, p.Message)))
	}
	if len(problems) > 0 {
		return exit.VerdictError{Status: exit.NotChecked}
	}
	f.measured = measured
	return nil
}

// atReading is an error at a key of the survey's file.
func atReading(doc *spec.Document, key, text string) error {
	return fmt.Errorf("%s", inFile(doc.Path, doc.Position(doc.Locate(key).Start), key, text))
}

// inFile says something at its place in a file.
func inFile(path string, at spec.Position, key, text string) string {
	if key != "" && !strings.HasPrefix(text, key) {
		text = key + ": " + text
	}
	return fmt.Sprintf("%s:%d:%d: %s", path, at.Line, at.Column, text)
}

package source

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// Opened is the one spec that a command works on, reviewed.
type Opened struct {
	Input
	Src        []byte
	Assessment *review.Assessment
	Options    review.Options  // that it was reviewed with, to its standards
	Hashes     []report.Digest // of the files of those, nearest first
}

// Inputs are what the command read: the spec and its standards.
func (one Opened) Inputs() []Input { return append(InputsAt(one.Options.Standards.Files), one.Input) }

// InputsAt are the files at some paths.
func InputsAt(paths []string) (out []Input) {
	for _, p := range paths {
		out = append(out, NewInput(p))
	}
	return out
}

// InputAt is the spec at a path, - for standard input.
func InputAt(path string) Input {
	if path == "-" {
		return Input{Name: "standard-input" + Extension, Stdin: true}
	}
	return NewInput(path)
}

// Review reads the input and reviews it.
func (in Input) Review(stdin io.Reader, o review.Options) (*review.Assessment, []byte) {
	src, problem := in.Read(stdin)
	if problem != "" {
		return review.Unreadable(in.Name, problem, o), nil
	}
	return review.Spec(in.Name, src, o), src
}

// OneFinder is the standards of a command that takes no more than one file.
func OneFinder(named []string) (*Finder, error) {
	if len(named) > 1 {
		return nil, fmt.Errorf("one --standards file, not %d", len(named))
	}
	return NewFinder(append(named, "")[0]), nil
}

// Open reviews an input to the standards that hold for it.
func (s *Finder) Open(in Input, stdin io.Reader, o review.Options) Opened {
	o.Standards = standards.BuiltIn()
	o, assessment := s.UnderStandards(in, o)
	one := Opened{Input: in, Assessment: assessment, Options: o}
	if assessment == nil {
		one.Assessment, one.Src = in.Review(stdin, o)
	}
	return one
}

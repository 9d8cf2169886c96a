package main

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// single is the one spec that a command works on, reviewed.
type single struct {
	input
	src     []byte
	sheet   *review.Sheet
	options review.Options  // that it was reviewed with, to its standards
	hashes  []report.Digest // of the files of those, nearest first
}

// inputs are what the command read: the spec and its standards.
func (one single) inputs() []input { return append(inputsAt(one.options.Standards.Files), one.input) }

func inputsAt(paths []string) (out []input) {
	for _, p := range paths {
		out = append(out, newInput(p))
	}
	return out
}

// inputAt is the spec at a path, - for standard input.
func inputAt(path string) input {
	if path == "-" {
		return input{name: "standard-input" + extension, stdin: true}
	}
	return newInput(path)
}

// review reads the input and reviews it.
func (in input) review(stdin io.Reader, o review.Options) (*review.Sheet, []byte) {
	src, problem := in.read(stdin)
	if problem != "" {
		return review.Unreadable(in.name, problem, o), nil
	}
	return review.Spec(in.name, src, o), src
}

// oneFinder is the standards of a command that takes no more than one file.
func oneFinder(named []string) (*finder, error) {
	if len(named) > 1 {
		return nil, fmt.Errorf("one --standards file, not %d", len(named))
	}
	return newFinder(append(named, "")[0]), nil
}

// open reviews an input to the standards that hold for it.
func (s *finder) open(in input, stdin io.Reader, o review.Options) single {
	o.Standards = standards.BuiltIn()
	o, sheet := s.underStandards(in, o)
	one := single{input: in, sheet: sheet, options: o}
	if sheet == nil {
		one.sheet, one.src = in.review(stdin, o)
	}
	return one
}

package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
)

// finders are those that a check is to, one for each set of standards.
func (f checkFlags) finders(ctx context.Context) ([]*finder, error) {
	if f.from == "" {
		return findersOf(f.standards), nil
	}
	if len(f.standards) > 0 {
		return nil, errors.New("--standards-from takes the standards of a revision, and --standards those of a file; leave one out")
	}
	from, err := snapshotAt(ctx, f.from)
	if err != nil {
		return nil, fmt.Errorf("--standards-from %s: %w", f.from, err)
	}
	s := newFinder("")
	s.from = from
	return []*finder{s}, nil
}

// chosen are the inputs that are left by --changed-since and --part. Where none
// is left, that is said: nothing to check is no failure.
func (f checkFlags) chosen(s streams, w *walker, r report.Report, paths []string, inputs []input) ([]input, error) {
	all := len(inputs)
	if f.since != "" {
		changed, err := changedSince(w.ctx, f.since)
		if err != nil {
			return nil, fmt.Errorf("--changed-since %s: %w", f.since, err)
		}
		if f.since != f.from {
			inputs = append(inputs, w.unseen(changed.snapshot, paths, inputs)...)
		}
		inputs = changed.concerned(inputs, f.standards)
		if len(inputs) == 0 {
			fmt.Fprintln(s.err, show.Safe(fmt.Sprintf("dryfit: of %s none has changed since %s, nor have its standards", specs(all), f.since)))
		}
	}
	if f.part == "" {
		return inputs, nil
	}
	part, err := study.ParsePart(f.part)
	if err != nil {
		return nil, fmt.Errorf("--part %w", err)
	}
	before := len(inputs)
	above := ""
	if r.Root == "" {
		above = common(inputs)
	}
	inputs = slices.DeleteFunc(inputs, func(in input) bool { return !inPart(part, placed(r, in, above)) })
	if len(inputs) == 0 && before > 0 {
		fmt.Fprintf(s.err, "dryfit: of %s none is in part %s\n", specs(before), f.part)
	}
	return inputs, nil
}

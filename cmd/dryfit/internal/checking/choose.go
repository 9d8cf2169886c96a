package checking

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/design/study"
)

// finders are those that a check is to, one for each set of standards.
func (f Flags) finders(ctx context.Context) ([]*source.Finder, error) {
	if f.From == "" {
		return source.FindersOf(f.Standards), nil
	}
	if len(f.Standards) > 0 {
		return nil, errors.New("--standards-from and --standards can't be combined: one takes the standards of a revision, the other those of a file")
	}
	from, err := source.SnapshotAt(ctx, f.From)
	if err != nil {
		return nil, fmt.Errorf("--standards-from %s: %w", f.From, err)
	}
	s := source.NewFinder("")
	s.From = from
	return []*source.Finder{s}, nil
}

// chosen are the inputs that are left by --changed-since and --part. Where none
// is left, that is said: nothing to check is no failure.
func (f Flags) chosen(s console.Streams, w *source.Walker, r report.Report, paths []string, inputs []source.Input) ([]source.Input, error) {
	all := len(inputs)
	if f.Since != "" {
		changed, err := source.ChangedSince(w.Ctx, f.Since)
		if err != nil {
			return nil, fmt.Errorf("--changed-since %s: %w", f.Since, err)
		}
		if f.Since != f.From {
			inputs = append(inputs, w.Unseen(changed.Snapshot, paths, inputs)...)
		}
		inputs = changed.Concerned(inputs, f.Standards)
		if len(inputs) == 0 {
			fmt.Fprintln(s.Err, show.Safe(fmt.Sprintf("dryfit: nothing has changed since %s in %s or the standards", f.Since, source.Specs(all))))
		}
	}
	if f.Part == "" {
		return inputs, nil
	}
	part, err := study.ParsePart(f.Part)
	if err != nil {
		return nil, fmt.Errorf("--part %w", err)
	}
	before := len(inputs)
	above := ""
	if r.Root == "" {
		above = source.Common(inputs)
	}
	inputs = slices.DeleteFunc(inputs, func(in source.Input) bool { return !source.InPart(part, source.Placed(r, in, above)) })
	if len(inputs) == 0 && before > 0 {
		fmt.Fprintf(s.Err, "dryfit: none of %s is in part %s\n", source.Specs(before), f.Part)
	}
	return inputs, nil
}

package studying

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"slices"

	"github.com/spf13/pflag"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/design/study"
)

// part is a file with a part of a study.
type part struct {
	*options.StudyPart
	name string
	file *os.File
}

// ofParts are the flags that the parts of a study state themselves.
var ofParts = []string{"vary", "aim", "weigh", "columns", "part", "strict", "search", "on"}

// Join reads the parts of one study and writes what the whole would be.
func Join(ctx context.Context, s console.Streams, paths []string, f Flags, given *pflag.FlagSet) error {
	for _, name := range ofParts {
		if given.Changed(name) {
			return fmt.Errorf("--join takes --%s from the parts; omit the flag", name)
		}
	}
	if err := f.sensible(); err != nil {
		return err
	}
	parts, err := openParts(paths)
	for _, p := range parts {
		defer p.file.Close()
	}
	if err == nil {
		err = whole(parts)
	}
	if err != nil {
		return fmt.Errorf("--join: %w", err)
	}
	first := parts[0]
	f.Columns = first.Chosen()
	f.Vary, f.Aim, f.Weigh, f.Strict, f.Search, f.Part = first.Vary(), first.Weighed(), nil, first.Strict(), first.Search(), "1/1"
	r, one, err := f.open(s, first.Path(), first.On())
	if err != nil {
		return err
	}
	if key := first.Without(r.out); key != "" {
		return fmt.Errorf("--join: --sort: the parts have no figure %s; make them with --columns %s", key, key)
	}
	if what := first.DiffersFrom(r.out); what != "" {
		return fmt.Errorf("--join: %s is part of another study than the one that %s makes now: %s has changed", first.name, first.Path(), what)
	}
	r.each = func(ctx context.Context, take func(study.Row) error) error { return r.read(ctx, parts, take) }
	return r.writeTo(ctx, s, append(one.Inputs(), source.InputsAt(paths)...))
}

// openParts opens files and reads their first lines; what was opened is returned
// with an error too.
func openParts(paths []string) (parts []part, err error) {
	for _, path := range paths {
		file, err := os.Open(path)
		if err != nil {
			return parts, err
		}
		p := part{name: path, file: file}
		if p.StudyPart, err = options.ReadStudyPart(file); err != nil {
			return append(parts, p), fmt.Errorf("%s: %w", path, err)
		}
		parts = append(parts, p)
	}
	return parts, nil
}

// whole puts parts in their order, and is an error where they are not all of one
// study.
func whole(parts []part) error {
	for _, p := range parts[1:] {
		if what := p.Differs(parts[0].StudyPart); what != "" {
			return fmt.Errorf("%s and %s are of different studies: %s differs", parts[0].name, p.name, what)
		}
		if p.Part.Of != parts[0].Part.Of {
			return fmt.Errorf("%s is one of %d parts and %s one of %d", parts[0].name, parts[0].Part.Of, p.name, p.Part.Of)
		}
	}
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(a.Part.Number, b.Part.Number) })
	for i, p := range parts {
		switch {
		case i > 0 && p.Part == parts[i-1].Part:
			return fmt.Errorf("%s and %s are both part %d/%d", parts[i-1].name, p.name, p.Part.Number, p.Part.Of)
		case p.Part.Number != i+1:
			return missing(i+1, p.Part.Of)
		}
	}
	if of := parts[0].Part.Of; len(parts) < of {
		return missing(len(parts)+1, of)
	}
	return nil
}

func missing(number, of int) error { return fmt.Errorf("part %d/%d is missing", number, of) }

// read hands on the rows of all parts, until ctx ends.
func (r *studyRun) read(ctx context.Context, parts []part, take func(study.Row) error) error {
	for _, p := range parts {
		loosened, err := p.Each(r.out.Columns, func(row study.Row) error {
			if err := ctx.Err(); err != nil {
				return err
			}
			return take(row)
		})
		switch {
		case ctx.Err() != nil:
			return nil // what was read is written
		case err != nil:
			return fmt.Errorf("--join: %s: %w", p.name, err)
		}
		r.out.Tally.Loosen(loosened)
	}
	return nil
}

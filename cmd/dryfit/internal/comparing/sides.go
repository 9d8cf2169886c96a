package comparing

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// bothSides reads and checks the two specs. One that can't be is reported as
// check reports it.
func bothSides(ctx context.Context, s console.Streams, args []string, f Flags, on string) ([]*review.Assessment, []source.Input, error) {
	finders, err := f.finders(ctx, args)
	if err != nil {
		return nil, nil, err
	}
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: on, Strict: f.Strict, Frames: new(hanging.Memory)}
	o.Search.Memory = carrying.NewMemory()
	var assessments, broken []*review.Assessment
	var inputs []source.Input
	for i, name := range args {
		o.Search.Memory = o.Search.Memory.Next() // the sides have much in common
		in, src, problem := side(ctx, s, name)
		under, assessment := finders[i].UnderStandards(f.judgedAs(in, args), o)
		switch {
		case assessment != nil:
		case problem != "":
			assessment = review.Unreadable(in.Name, problem, under)
		default:
			assessment = review.Spec(in.Name, src, under)
		}
		o.Like = assessment.Said
		assessments, inputs = append(assessments, assessment), append(inputs, in)
		if assessment.Ceiling == nil {
			broken = append(broken, assessment)
		}
	}
	if ctx.Err() != nil {
		return nil, nil, ctx.Err()
	}
	if len(broken) > 0 {
		said := finders[0].Assessments()
		if finders[1] != finders[0] {
			said = append(said, finders[1].Assessments()...)
		}
		return nil, nil, single.Unresolved(s, on, append(said, broken...)...)
	}
	return assessments, inputs, nil
}

// finders are the standards that each of the two specs is judged by.
func (f Flags) finders(ctx context.Context, names []string) ([2]*source.Finder, error) {
	var out [2]*source.Finder
	if f.JudgeBy == "" {
		one, err := source.OneFinder(f.Standards)
		return [2]*source.Finder{one, one}, err
	}
	if len(f.Standards) > 0 {
		return out, errors.New("--judge-by and --standards can't be combined: one takes the standards of a revision, the other those of a file")
	}
	for i, name := range names {
		out[i] = source.NewFinder("")
		r, ok := source.RevisionOf(name)
		if !ok {
			continue
		}
		var err error
		if out[i].From, err = source.SnapshotAt(ctx, r.Rev); err != nil {
			return out, fmt.Errorf("--judge-by: %w", err)
		}
	}
	switch f.JudgeBy {
	case "old":
		out[1] = out[0]
	case "new":
		out[0] = out[1]
	case "each":
	default:
		return out, fmt.Errorf("--judge-by %q is not old, new or each", f.JudgeBy)
	}
	return out, nil
}

// judgedAs is where the standards of an input are looked for: where both are judged
// by those of one, at that one.
func (f Flags) judgedAs(in source.Input, names []string) source.Input {
	at, ok := map[string]int{"old": 0, "new": 1}[f.JudgeBy]
	if !ok {
		return in
	}
	if r, is := source.RevisionOf(names[at]); is {
		in.Path = filepath.Join(r.Folder(), filepath.Base(r.Path))
	} else if by := source.InputAt(names[at]); !by.Stdin {
		in.Path = by.Path
	}
	return in
}

// side reads one of the two specs.
func side(ctx context.Context, s console.Streams, name string) (in source.Input, src []byte, problem string) {
	if r, ok := source.RevisionOf(name); ok {
		in = source.Input{Name: name, Path: filepath.Join(r.Folder(), filepath.Base(r.Path))}
		src, problem = source.FromGit(ctx, r)
		return in, src, problem
	}
	in = source.InputAt(name)
	src, problem = in.Read(s.In)
	return in, src, problem
}

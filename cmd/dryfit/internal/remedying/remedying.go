// Package remedying looks for remedies as the remedy command is asked to, and writes
// one into the spec.
package remedying

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/change"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/remedy"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// Flags are those of the remedy command.
type Flags struct {
	Format, Output, On string
	Standards          []string
	MayChange          []string
	Strict, Write      bool
	Each               bool
	Answer, Answers    int
	Limit              int
}

func (f Flags) fault(path string) error {
	switch {
	case f.Format != "text" && f.Format != "json" && f.Format != "patch":
		return fmt.Errorf("--format %q is not text, json or patch", f.Format)
	case f.Answer < 1 || f.Answers < 1 || f.Limit < 1:
		return errors.New("--answer, --answers and --limit are at least 1")
	case f.Answer > f.Answers:
		return fmt.Errorf("--answer %d of the %d that --answers looks for", f.Answer, f.Answers)
	case f.Write && path == "-":
		return errors.New("--write has no file to write: the spec comes from standard input")
	case f.Each && (f.Write || f.Format == "patch"):
		return errors.New("--each gives no complete answer, so there is nothing to write")
	default:
		return nil
	}
}

// Run looks for remedies of one spec, and writes one into it where the flags ask
// for that.
func Run(ctx context.Context, s console.Streams, path string, f Flags) error {
	on, err := usage.JudgedOn(f.On)
	if err == nil {
		err = f.fault(path)
	}
	if err != nil {
		return err
	}
	one, err := single.Open(s, path, f.Standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.Strict, Search: carrying.Search{Memory: carrying.NewMemory()}})
	if err != nil {
		return err
	}
	options := remedy.Options{Review: one.Options, MayChange: f.MayChange, Limit: f.Limit, Answers: f.Answers}
	r := change.Remedy{Version: build.Version(), On: on, Strict: f.Strict}
	if f.Each {
		r, err = eachBy(ctx, one.Assessment, options, r)
	} else {
		r.Result, err = remedy.Search(ctx, one.Name, one.Src, options)
	}
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return err
	}
	if err := outfile.Write(f.Output, s.Out, one.Inputs(), func(w io.Writer) error { return f.print(w, s.Err, one.Src, r) }); err != nil {
		return err
	}
	return f.conclude(s, one.Input, one.Src, r)
}

// eachBy cures every hold and query by itself.
func eachBy(ctx context.Context, assessment *review.Assessment, o remedy.Options, r change.Remedy) (change.Remedy, error) {
	r.Result.Assessment = assessment
	r.Each = []change.Cured{}
	left := o.Limit
	for _, f := range r.Result.Assessment.Findings {
		if f.Accepted != nil || f.Severity != engine.Hold && f.Severity != engine.Query {
			continue
		}
		o.Limit = max(1, left)
		cures, reviews, err := remedy.Cures(ctx, r.Result.Assessment.Document.Tree, f, o)
		if err != nil {
			return r, err
		}
		left -= reviews
		r.Result.Reviews += reviews
		r.Each = append(r.Each, change.Cured{Finding: f, Cures: cures})
	}
	return r, nil
}

func (f Flags) print(w, messages io.Writer, src []byte, r change.Remedy) error {
	switch f.Format {
	case "json":
		return change.RemedyJSON(w, r)
	case "text":
		return change.RemedyText(w, r)
	}
	a, ok := f.chosen(r)
	if !ok {
		return change.RemedyText(messages, r)
	}
	return change.Patch(w, r.Result.Assessment.Path, src, a.Source)
}

// chosen is the answer that is asked for.
func (f Flags) chosen(r change.Remedy) (remedy.Answer, bool) {
	if f.Answer > len(r.Result.Answers) {
		return remedy.Answer{}, false
	}
	return r.Result.Answers[f.Answer-1], true
}

// conclude writes the answer where that is asked for, and gives the exit
// status.
func (f Flags) conclude(s console.Streams, in source.Input, src []byte, r change.Remedy) error {
	failed := len(r.Result.Open) > 0 && len(r.Result.Answers) == 0
	for _, e := range r.Each {
		failed = failed || len(e.Cures) == 0
	}
	a, ok := f.chosen(r)
	switch {
	case failed:
		return exit.VerdictError{Status: exit.Fail}
	case !ok && len(r.Result.Open) > 0 && (f.Write || f.Format == "patch"):
		return fmt.Errorf("--answer %d: there are %d", f.Answer, len(r.Result.Answers))
	case !f.Write || !ok || r.Result.Interrupted:
		return nil
	}
	if now, fault := in.Read(nil); fault != "" || !bytes.Equal(now, src) {
		return fmt.Errorf("write %s: it was changed since it was read", in.Path)
	}
	if err := outfile.Rewrite(in.Path, a.Source); err != nil {
		return fmt.Errorf("write %s: %w", in.Path, err)
	}
	fmt.Fprintf(s.Err, "dryfit: answer %d is written to %s\n", f.Answer, show.Safe(in.Name))
	for _, c := range a.Comments {
		fmt.Fprintf(s.Err, "dryfit: line %d has a comment on %s, which changed: %s\n", c.Line, show.Safe(c.Key), show.Safe(c.Text))
	}
	return nil
}

// Package studying makes a study as the study command is asked to: whole, in parts, of
// parts, and options taken out of it.
package studying

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/study"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// Flags are those of the study command.
type Flags struct {
	Vary, Aim, Weigh, Sort []string
	Columns                []string
	Only, Part, Save       string
	Compare                []string
	Format, Output         string
	On                     string
	Strict                 bool
	Search, Join           bool
	Jobs                   usage.Jobs
	Standards              []string
}

// Run checks the flags, makes the study and writes it.
func Run(ctx context.Context, s console.Streams, path string, f Flags) error {
	if err := f.sensible(); err != nil {
		return err
	}
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return err
	}
	r, one, err := f.open(s, path, on)
	if err != nil {
		return err
	}
	r.each = func(ctx context.Context, take func(study.Row) error) error {
		return study.Run(ctx, r.out.Study, r.out.First, r.out.Last, int(f.Jobs), r.out.Row, take)
	}
	if f.takesOptions() {
		return r.options(ctx, s, one)
	}
	return r.writeTo(ctx, s, one.Inputs())
}

// open reads the spec and sees what is varied of it.
func (f Flags) open(s console.Streams, path, on string) (studyRun, source.Opened, error) {
	r := studyRun{flags: f}
	one, err := single.Open(s, path, f.Standards, review.Options{On: on})
	if err != nil {
		return r, one, err
	}
	search := carrying.Search{Depth: carrying.None}
	if f.Search {
		search.Depth = carrying.Plain
	}
	made, err := study.New(one.Assessment, f.Vary, review.Options{Rules: catalog.Rules(), Standards: one.Options.Standards, On: on, Strict: f.Strict, Search: search})
	if err != nil {
		return r, one, err
	}
	r.out = options.Study{
		Study: made, On: on, Only: f.Only, Strict: f.Strict, Search: f.Search,
		Spec: report.DigestOf(one.Name, one.Src), Standards: one.Hashes,
	}
	return r, one, r.prepare()
}

// Formats are those that a study is written in; svg is its contact sheet.
var Formats = []string{"text", "csv", "json", "jsonl", "html", "svg"}

func (f Flags) sensible() error {
	switch {
	case !slices.Contains(Formats, f.Format):
		return fmt.Errorf("--format %q is not %s", f.Format, usage.OneOf(Formats))
	case f.Only != "" && f.Only != "pass":
		return fmt.Errorf("--only %q is not pass", f.Only)
	case f.Weigh != nil && len(f.Weigh) == 0:
		return errors.New("--weigh names no figure")
	case f.Format == "jsonl" && len(f.Sort) > 0:
		return errors.New("--sort can't be combined with --format jsonl, which writes options in the order of their numbers")
	default:
		return f.sensibleOptions()
	}
}

// aims are those that were given, or else those that only a shop would argue with.
func (f Flags) aims() []string {
	if len(f.Aim)+len(f.Weigh) == 0 {
		return study.Weighed
	}
	return slices.Concat(f.Aim, f.Weigh)
}

// front is that of the aims; an error names the flag that it is of.
func (f Flags) front(s *study.Study) (*study.Front, error) {
	if _, err := study.NewFront(s, f.Aim); err != nil {
		return nil, fmt.Errorf("--aim: %w", err)
	}
	if _, err := study.NewFront(s, f.Weigh); err != nil {
		return nil, fmt.Errorf("--weigh: %w", err)
	}
	return study.NewFront(s, f.aims())
}

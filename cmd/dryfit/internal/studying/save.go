package studying

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/change"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/design/compare"
	"dryfit/rules/design/study"
	"dryfit/rules/review"
)

// unbeatenOptions is what --save takes for all that no other option beats.
const unbeatenOptions = "unbeaten"

// takesOptions reports whether options are taken out of a study, in place of its table.
func (f Flags) takesOptions() bool { return f.Save != "" || len(f.Compare) > 0 }

// sensibleOptions is an error where the flags that take options out contradict each
// other, or those of the table.
func (f Flags) sensibleOptions() error {
	switch {
	case !f.takesOptions():
		return nil
	case f.Save != "" && len(f.Compare) > 0:
		return errors.New("--save and --compare can't be combined")
	case f.Join:
		return errors.New("--join can't be combined with --save or --compare, which need the spec")
	case f.Save != "" && f.Output == "":
		return errors.New("--save writes a spec; name the file with --output")
	case f.Save != "" && f.Format != "text":
		return errors.New("--save writes a spec and no table; leave out --format")
	case len(f.Compare) > 0 && len(f.Compare) != 2:
		return errors.New("--compare takes two options, as in --compare 2,3")
	case len(f.Compare) > 0 && f.Format != "text" && f.Format != "json":
		return fmt.Errorf("--compare writes text or json, not %s", f.Format)
	default:
		return nil
	}
}

// options takes options out of a study: writes them as specs, or compares two.
func (r *studyRun) options(ctx context.Context, s console.Streams, one source.Opened) error {
	switch {
	case len(r.flags.Compare) > 0:
		return r.compareTwo(s, one)
	case r.flags.Save == unbeatenOptions:
		return r.saveUnbeaten(ctx, s, one)
	}
	index, err := strconv.Atoi(r.flags.Save)
	if err != nil {
		return fmt.Errorf("--save %q is not the number of an option, nor %s", r.flags.Save, unbeatenOptions)
	}
	text, err := r.out.Written(one.Src, index)
	if err != nil {
		return fmt.Errorf("--save: %w", err)
	}
	if err := outfile.Write(r.flags.Output, s.Out, one.Inputs(), func(w io.Writer) error { _, err := w.Write(text); return err }); err != nil {
		return err
	}
	r.said(s, index, r.flags.Output)
	return nil
}

// saveUnbeaten makes the study, and writes a spec for each option that no other beats,
// to a folder that appears whole or not at all.
func (r *studyRun) saveUnbeaten(ctx context.Context, s console.Streams, one source.Opened) error {
	p := console.NewProgress(s.Err, r.out.Last-r.out.First+1, "options")
	p.Begin()
	err := r.each(ctx, func(row study.Row) error {
		p.Done()
		r.out.Front.Add(row)
		return nil
	})
	p.End()
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		return err
	}
	if len(r.out.Front.Members) == 0 {
		return errors.New("--save unbeaten: no option is unbeaten, since none passes")
	}
	var files []outfile.Packed
	for _, m := range r.out.Front.Members {
		text, err := r.out.Written(one.Src, m.Index)
		if err != nil {
			return fmt.Errorf("--save: option %d: %w", m.Index, err)
		}
		write := func(w io.Writer) error { _, err := w.Write(text); return err }
		files = append(files, outfile.Packed{Name: fmt.Sprintf("option-%d.ceiling.toml", m.Index), Write: write})
	}
	if err := outfile.WritePackage(ctx, r.flags.Output, "", one.Inputs(), files); err != nil {
		return err
	}
	for i, m := range r.out.Front.Members {
		r.said(s, m.Index, files[i].Name)
	}
	return nil
}

// said says on standard error what was written.
func (r *studyRun) said(s console.Streams, index int, name string) {
	fmt.Fprintf(s.Err, "dryfit: option %d is written to %s: %s\n", index, show.Safe(name), show.Safe(r.valuesOf(index)))
}

// valuesOf are the varied keys of an option, and what they have.
func (r *studyRun) valuesOf(index int) string {
	var out []string
	for i, v := range r.out.Values(index) {
		out = append(out, r.out.Vary[i].Key+" = "+show.Written(v))
	}
	return strings.Join(out, ", ")
}

// compareTwo compares two options as compare does two specs.
func (r *studyRun) compareTwo(s console.Streams, one source.Opened) error {
	var assessments [2]*review.Assessment
	for i, number := range r.flags.Compare {
		index, err := strconv.Atoi(strings.TrimSpace(number))
		if err != nil {
			return fmt.Errorf("--compare %q is not the number of an option", number)
		}
		text, err := r.out.Written(one.Src, index)
		if err != nil {
			return fmt.Errorf("--compare: %w", err)
		}
		assessments[i] = r.out.Review(fmt.Sprintf("option %d: %s", index, r.valuesOf(index)), text)
	}
	const threshold = 0.005
	c := change.Comparison{Comparison: compare.Of(assessments[0], assessments[1], threshold), Version: build.Version(), On: r.out.On}
	write := change.CompareText
	if r.flags.Format == "json" {
		write = change.CompareJSON
	}
	return outfile.Write(r.flags.Output, s.Out, one.Inputs(), func(w io.Writer) error { return write(w, c) })
}

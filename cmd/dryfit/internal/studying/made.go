package studying

import (
	"context"
	"fmt"
	"io"
	"slices"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/design/study"
	"dryfit/rules/engine"
)

// writeTo makes the study and writes it where the flags say.
func (r *studyRun) writeTo(ctx context.Context, s console.Streams, inputs []source.Input) error {
	p := console.NewProgress(s.Err, r.out.Last-r.out.First+1, "options")
	p.Shown = p.Shown && !(r.streams() && r.flags.Output == "" && console.Terminal(s.Out)) // its lines would run into the options'
	return outfile.Stream(r.flags.Output, s.Out, inputs, func(w io.Writer) error { return r.run(ctx, w, p) })
}

// studyRun is one study on its way to its writer.
type studyRun struct {
	flags Flags
	out   options.Study
	rows  options.StudyRows                                  // nil where all is written at the end
	each  func(context.Context, func(study.Row) error) error // hands on every row in order
}

// prepare finds the part and holds the flags that name figures against the
// study.
func (r *studyRun) prepare() error {
	part, err := study.ParsePart(r.flags.Part)
	if err != nil {
		return fmt.Errorf("--part %w", err)
	}
	r.out.Part = part
	r.out.First, r.out.Last = part.Options(r.out.Total)
	r.out.All = r.out.Last-r.out.First < study.Listed
	if r.out.Front, err = r.flags.front(r.out.Study); err != nil {
		return err
	}
	if r.out.Chosen, err = r.out.Choose(r.flags.Columns); err != nil {
		return fmt.Errorf("--columns: %w", err)
	}
	if err := r.out.Sort(nil, r.flags.Sort); err != nil {
		return fmt.Errorf("--sort: %w", err)
	}
	if r.flags.Format == "csv" && !r.out.All && len(r.flags.Sort) > 0 {
		return fmt.Errorf("--sort can't be combined with --format csv for more than %d options, which are written in the order of their numbers", study.Listed)
	}
	return nil
}

// run makes the study and writes it. Where ctx ends early, what was done is
// written whole, and the error is that of ctx.
func (r *studyRun) run(ctx context.Context, w io.Writer, p *console.Progress) error {
	if err := r.stream(w); err != nil {
		return err
	}
	p.Begin()
	err := r.each(ctx, func(row study.Row) error {
		p.Done()
		return r.take(row)
	})
	p.End()
	if err != nil {
		return err
	}
	if err := r.write(w); err != nil {
		return err
	}
	if r.flags.Format == "csv" {
		p.Say(r.out.Beside())
	}
	return ctx.Err()
}

// streams reports whether options are written as they come.
func (r *studyRun) streams() bool {
	return r.flags.Format == "jsonl" || r.flags.Format == "csv" && !r.out.All
}

// stream opens a writer of rows for what is written as it comes.
func (r *studyRun) stream(w io.Writer) (err error) {
	switch {
	case r.flags.Format == "jsonl":
		r.rows, err = options.NewStudyJSONL(w, r.out)
	case r.flags.Format == "csv" && !r.out.All:
		r.rows, err = options.NewStudyCSV(w, r.out, false)
	}
	return err
}

// take counts a row, weighs it, and writes or keeps it.
func (r *studyRun) take(row study.Row) error {
	r.out.Tally.Add(row)
	r.out.Front.Add(row)
	if r.flags.Only == "pass" && !(row.Made() && row.Verdict < engine.Failed) {
		return nil
	}
	switch {
	case r.rows != nil:
		return r.rows.Row(row)
	case r.out.All:
		r.out.Rows = append(r.out.Rows, row)
	}
	return nil
}

// write writes what is left to write once all options are known.
func (r *studyRun) write(w io.Writer) error {
	if r.rows != nil {
		return r.rows.End(r.out)
	}
	if !r.out.All {
		r.out.Rows = slices.Clone(r.out.Front.Members)
	}
	if err := r.out.Sort(r.out.Rows, r.flags.Sort); err != nil {
		return err
	}
	switch r.flags.Format {
	case "csv":
		return writeCSV(w, r.out)
	case "json":
		return options.StudyJSON(w, r.out)
	case "html":
		return writePage(w, r.out)
	case "svg":
		return writeContact(w, r.out)
	default:
		return options.StudyText(w, r.out)
	}
}

func writeCSV(w io.Writer, s options.Study) error {
	c, err := options.NewStudyCSV(w, s, true)
	if err != nil {
		return err
	}
	for _, row := range s.Rows {
		if err := c.Row(row); err != nil {
			return err
		}
	}
	return c.End(s)
}

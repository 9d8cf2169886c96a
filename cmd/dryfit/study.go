package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/study"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// studyFlags are those of the study command.
type studyFlags struct {
	vary, aim, weigh, sort []string
	columns                []string
	only, part, save       string
	compare                []string
	format, output         string
	on                     string
	strict                 bool
	search, join           bool
	jobs                   usage.Jobs
	standards              []string
}

func studyCommand(s console.Streams) *cobra.Command {
	var f studyFlags
	c := &cobra.Command{
		Use:   "study SPEC --vary KEY=VALUES ...",
		Short: "Check every combination of some values, and compare them",
		Long: "Checks the ceiling with every combination of some values, and prints one row for each\n" +
			"option: its figures and its verdict. Among the options that do not fail, it marks those\n" +
			"that no other option beats by all aims. For each other option, it lists the figures in\n" +
			"which it is worse. The spec is not changed.\n" +
			"\n" +
			"VALUES take one of these forms:\n" +
			"\n" +
			"    3..6  or  3..9/2                      a range of counts; /2 is the step\n" +
			"    700mm..1000mm/50mm  or  2ft..3ft/3in  a range of quantities with its step\n" +
			"    6mm,9mm                               a list of values, ranges or words\n" +
			"\n" +
			"Put a word that has a comma in double quotes. The key of a named row of a list has that\n" +
			"name in it: route.\"street door\".width=1m,1.2m. Keys that must follow a change are\n" +
			"changed too, and listed. To keep such a key as it is, vary it with one value.\n" +
			"\n" +
			"Keys that change together have values with slashes between them:\n" +
			"vault.span,rise=4.2m/840mm,4m/900mm. Those of one table may be written as in a spec:\n" +
			"skin={layers=1},{layers=2}.\n" +
			"\n" +
			"An aim states what is wanted of a figure:\n" +
			"\n" +
			"    mass=least, gap=most            as low or as high as possible\n" +
			"    ratio=1.5                       near a value\n" +
			"    module-along=600mm..1200mm      inside a range\n" +
			"    ratio=2:along, ratio=2:around   near a value, with the long side of a module that way\n" +
			"\n" +
			"The distance from a value is the logarithm of the ratio, so half and double are equally\n" +
			"far.\n" +
			"\n" +
			"Figures for --aim, --weigh and --sort: ratio, long-side, coffers, module-around,\n" +
			"module-along, length, width, height, mass, strap, share, sag, sheets, joints, margin,\n" +
			"gap, holds, queries, and any that calcs prints, by its key. --sort also takes option,\n" +
			"verdict and the varied keys; prefix - to reverse the order. --columns chooses the\n" +
			"table's columns from all of these.\n" +
			"\n" +
			"--save N writes option N as a spec: the author's own text, with the varied values and\n" +
			"the keys that follow from them. --save unbeaten writes every option that no other option\n" +
			"beats to a folder. --compare 2,3 compares two options as the command compare does two\n" +
			"specs.\n" +
			"\n" +
			"--join takes, in place of a spec, the parts of one study, each written with --format\n" +
			"jsonl, and writes the result of the whole study. The spec and its standards must be\n" +
			"unchanged.\n" +
			"\n" +
			"Exit status: 0 the study was made, whatever its options; 2 it could not be made; 130\n" +
			"interrupted, with the finished options written.",
		Example: "  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --vary grid.around=5..9\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..16 --aim ratio=2:along --aim coffers=least\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --columns look.member-share,look.coffer-depth,mass\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary vault.rise=700mm..1000mm/50mm --sort mass --only pass\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary 'rib.species=white oak,red oak' --format html --output study.html\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --save 2 --output specs/four.ceiling.toml\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --compare 2,3\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary rib.depth=55mm..65mm/1mm --part 1/2 --format jsonl --output part-1.jsonl\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary rib.depth=55mm..65mm/1mm --part 2/2 --format jsonl --output part-2.jsonl\n" +
			"  dryfit study --join part-1.jsonl part-2.jsonl",
		Args: func(c *cobra.Command, args []string) error {
			if f.join {
				return cobra.MinimumNArgs(1)(c, args)
			}
			return cobra.ExactArgs(1)(c, args)
		},
	}
	flags := c.Flags()
	c.RunE = func(c *cobra.Command, args []string) error {
		if f.join {
			return joinStudy(c.Context(), s, args, f, flags)
		}
		return makeStudy(c.Context(), s, args[0], f)
	}
	flags.StringArrayVar(&f.vary, "vary", nil, "a key and its values, `KEY=VALUES`; may be repeated, and the last key changes fastest")
	flags.StringArrayVar(&f.aim, "aim", nil, "an aim for a figure, `FIGURE=WISH`; may be repeated")
	flags.StringSliceVar(&f.weigh, "weigh", nil, "`figures` to minimise or maximise, each in its better direction (default mass,strap,joints,queries, without --aim)")
	flags.StringSliceVar(&f.sort, "sort", nil, "the `keys` to sort by, best first (default: the order of the options)")
	flags.StringSliceVar(&f.columns, "columns", nil, "the `figures` in the table, by their keys (default the main ones)")
	flags.StringVar(&f.only, "only", "", "pass: list only options that do not fail")
	flags.StringVar(&f.save, "save", "", "write `option` N as a spec, or, with unbeaten, every option that no other beats to a folder")
	flags.StringSliceVar(&f.compare, "compare", nil, "compare two `options`, such as 2,3, in place of the table")
	flags.StringVar(&f.part, "part", "1/1", "make only part K of N, `K/N`, to split the study over CI jobs")
	flags.StringVar(&f.format, "format", "text", "text, csv, json, jsonl, html, or svg for a contact sheet")
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.BoolVar(&f.strict, "strict", false, "a query fails an option")
	flags.BoolVar(&f.search, "search", false, "search each leg of the route as check does; without it only simple motions are tried")
	flags.BoolVar(&f.join, "join", false, "join parts that were written with --format jsonl")
	f.jobs.AtATime(c, "options to work out")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	usage.CompleteWith(c, "format", studyFormats...)
	usage.CompleteWith(c, "only", "pass")
	return c
}

// makeStudy checks the flags, makes the study and writes it.
func makeStudy(ctx context.Context, s console.Streams, path string, f studyFlags) error {
	if err := f.sensible(); err != nil {
		return err
	}
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	r, one, err := f.open(s, path, on)
	if err != nil {
		return err
	}
	r.each = func(ctx context.Context, take func(study.Row) error) error {
		return study.Run(ctx, r.out.Study, r.out.First, r.out.Last, int(f.jobs), r.out.Row, take)
	}
	if f.takesOptions() {
		return r.options(ctx, s, one)
	}
	return r.writeTo(ctx, s, one.Inputs())
}

// open reads the spec and sees what is varied of it.
func (f studyFlags) open(s console.Streams, path, on string) (studyRun, source.Opened, error) {
	r := studyRun{flags: f}
	one, err := single.Open(s, path, f.standards, review.Options{On: on})
	if err != nil {
		return r, one, err
	}
	search := carrying.Search{Depth: carrying.None}
	if f.search {
		search.Depth = carrying.Plain
	}
	made, err := study.New(one.Sheet, f.vary, review.Options{Rules: catalog.Rules(), Standards: one.Options.Standards, On: on, Strict: f.strict, Search: search})
	if err != nil {
		return r, one, err
	}
	r.out = options.Study{
		Study: made, On: on, Only: f.only, Strict: f.strict, Search: f.search,
		Spec: report.DigestOf(one.Name, one.Src), Standards: one.Hashes,
	}
	return r, one, r.prepare()
}

// writeTo makes the study and writes it where the flags say.
func (r *studyRun) writeTo(ctx context.Context, s console.Streams, inputs []source.Input) error {
	p := console.NewProgress(s.Err, r.out.Last-r.out.First+1, "options")
	p.Shown = p.Shown && !(r.streams() && r.flags.output == "" && console.Terminal(s.Out)) // its lines would run into the options'
	return outfile.Stream(r.flags.output, s.Out, inputs, func(w io.Writer) error { return r.run(ctx, w, p) })
}

// studyFormats are those that a study is written in; svg is its contact sheet.
var studyFormats = []string{"text", "csv", "json", "jsonl", "html", "svg"}

func (f studyFlags) sensible() error {
	switch {
	case !slices.Contains(studyFormats, f.format):
		return fmt.Errorf("--format %q is not %s", f.format, usage.OneOf(studyFormats))
	case f.only != "" && f.only != "pass":
		return fmt.Errorf("--only %q is not pass", f.only)
	case f.weigh != nil && len(f.weigh) == 0:
		return errors.New("--weigh names no figure")
	case f.format == "jsonl" && len(f.sort) > 0:
		return errors.New("--sort does not go with --format jsonl, which writes options as they come")
	default:
		return f.sensibleOptions()
	}
}

// aims are those that were given, or else those that only a shop would argue with.
func (f studyFlags) aims() []string {
	if len(f.aim)+len(f.weigh) == 0 {
		return study.Weighed
	}
	return slices.Concat(f.aim, f.weigh)
}

// front is that of the aims; an error names the flag that it is of.
func (f studyFlags) front(s *study.Study) (*study.Front, error) {
	if _, err := study.NewFront(s, f.aim); err != nil {
		return nil, fmt.Errorf("--aim: %w", err)
	}
	if _, err := study.NewFront(s, f.weigh); err != nil {
		return nil, fmt.Errorf("--weigh: %w", err)
	}
	return study.NewFront(s, f.aims())
}

// studyRun is one study on its way to its writer.
type studyRun struct {
	flags studyFlags
	out   options.Study
	rows  options.StudyRows                                  // nil where all is written at the end
	each  func(context.Context, func(study.Row) error) error // hands on every row in order
}

// prepare finds the part and holds the flags that name figures against the
// study.
func (r *studyRun) prepare() error {
	part, err := study.ParsePart(r.flags.part)
	if err != nil {
		return fmt.Errorf("--part %w", err)
	}
	r.out.Part = part
	r.out.First, r.out.Last = part.Options(r.out.Total)
	r.out.All = r.out.Last-r.out.First < study.Listed
	if r.out.Front, err = r.flags.front(r.out.Study); err != nil {
		return err
	}
	if r.out.Chosen, err = r.out.Choose(r.flags.columns); err != nil {
		return fmt.Errorf("--columns: %w", err)
	}
	if err := r.out.Sort(nil, r.flags.sort); err != nil {
		return fmt.Errorf("--sort: %w", err)
	}
	if r.flags.format == "csv" && !r.out.All && len(r.flags.sort) > 0 {
		return fmt.Errorf("--sort does not go with --format csv of more than %d options, which writes them as they come", study.Listed)
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
	if r.flags.format == "csv" {
		p.Say(r.out.Beside())
	}
	return ctx.Err()
}

// streams reports whether options are written as they come.
func (r *studyRun) streams() bool {
	return r.flags.format == "jsonl" || r.flags.format == "csv" && !r.out.All
}

// stream opens a writer of rows for what is written as it comes.
func (r *studyRun) stream(w io.Writer) (err error) {
	switch {
	case r.flags.format == "jsonl":
		r.rows, err = options.NewStudyJSONL(w, r.out)
	case r.flags.format == "csv" && !r.out.All:
		r.rows, err = options.NewStudyCSV(w, r.out, false)
	}
	return err
}

// take counts a row, weighs it, and writes or keeps it.
func (r *studyRun) take(row study.Row) error {
	r.out.Tally.Add(row)
	r.out.Front.Add(row)
	if r.flags.only == "pass" && !(row.Made() && row.Verdict < engine.Failed) {
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
	if err := r.out.Sort(r.out.Rows, r.flags.sort); err != nil {
		return err
	}
	switch r.flags.format {
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

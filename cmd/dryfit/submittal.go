package main

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/submittal"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// submittalFlags are those of the submittal command.
type submittalFlags struct {
	output, on, verify string
	strict             bool
	jobs               usage.Jobs
	standards          []string
}

func submittalCommand(s console.Streams) *cobra.Command {
	var f submittalFlags
	c := &cobra.Command{
		Use:   "submittal SPEC...",
		Short: "Write the page that a reviewer reads and signs",
		Long: "Writes one self-contained page for the reviewer. It has the verdict; the findings beside\n" +
			"the drawings that show them; what is referred and to whom, with lines to sign; what was\n" +
			"accepted, assumed and not checked; the calculation sheet; the takeoff; and the SHA-256\n" +
			"of every file that it was made from. For several specs, or a folder, it writes a folder\n" +
			"of pages with an index.\n" +
			"\n" +
			"--verify reports whether an existing page still matches a spec, its standards and this\n" +
			"version of dryfit.\n" +
			"\n" +
			"Exit status: as check; with --verify 0 it matches, 1 it does not, 2 unknown. 130\n" +
			"interrupted.",
		Example: "  dryfit submittal specs/reading-room.ceiling.toml --output reading-room.html\n" +
			"  dryfit submittal specs --output submittals\n" +
			"  dryfit submittal --verify reading-room.html specs/reading-room.ceiling.toml",
		Args: cobra.MinimumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if f.verify != "" {
				return verify(s, args, f)
			}
			return submit(c.Context(), s, args, f)
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output; of several specs, to a folder")
	flags.StringVar(&f.verify, "verify", "", "an existing `page` to compare with the spec")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.BoolVar(&f.strict, "strict", false, "a query fails the spec")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	f.jobs.AtATime(c, "pages to make")
	return c
}

func submit(ctx context.Context, s console.Streams, paths []string, f submittalFlags) error {
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	m, err := newSubmitter(f.standards, on, f.strict)
	if err != nil {
		return err
	}
	inputs, err := source.NewWalker(ctx, s.Err, source.FindersOf(f.standards)).Gather(paths, "standard-input"+source.Extension)
	if err != nil {
		return err
	}
	if len(inputs) == 1 && !source.IsFolder(paths[0]) {
		return m.one(s, inputs[0], f.output)
	}
	return m.several(ctx, s, inputs, f)
}

// submitter makes pages to one date and one set of standards.
type submitter struct {
	finder  *source.Finder
	options review.Options
	where   report.Report // for paths as the repository has them
	all     []submission  // where there are several
}

func newSubmitter(named []string, on string, strict bool) (*submitter, error) {
	finder, err := source.OneFinder(named)
	if err != nil {
		return nil, err
	}
	m := &submitter{finder: finder}
	m.options = review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: on, Strict: strict, Offers: true}
	m.where.Folder, m.where.Root = source.Whereabouts()
	return m, nil
}

// submittal is the page of a spec that could be checked, with its bytes.
func (m *submitter) submittal(sheet *review.Sheet, src []byte) (submittal.Submittal, error) {
	seal := report.Seal{
		Version: build.Version(), On: m.options.On, Strict: m.options.Strict,
		Spec: report.DigestOf(m.where.InRepository(sheet.Path), src), Standards: []report.Digest{},
	}
	for _, file := range sheet.Standards.Files {
		d := m.finder.Hashes[file]
		d.Path = m.where.InRepository(d.Path)
		seal.Standards = append(seal.Standards, d)
	}
	named := *sheet // as the page names files
	named.Path = seal.Spec.Path
	drawn, undrawn, err := drawing.Figures(drawing.Input{Sheet: &named, Version: build.Version(), On: m.options.On, SHA256: seal.Spec.SHA256})
	return submittal.Submittal{
		Sheet: sheet, Seal: seal, Name: m.where.InRepository, Drawings: drawn, Undrawn: undrawn,
		Calcs: sums.Calcs{
			Path: sheet.Path, Ceiling: sheet.Ceiling, Figures: sheet.Results.Figures(), Tables: sheet.Results.Tables(), Rules: catalog.Rules(),
		},
		Takeoff: making.Takeoff{Path: sheet.Path, Ceiling: sheet.Ceiling, Takeoff: stock.Of(sheet.Ceiling, sheet.Results.Survey().Cuts())},
	}, err
}

// one writes the page of one spec. A spec that can't be checked is reported as
// check reports it.
func (m *submitter) one(s console.Streams, in source.Input, output string) error {
	one := m.finder.Open(in, s.In, m.options)
	if one.Sheet.Ceiling == nil {
		return single.Unresolved(s, m.options.On, append(m.finder.Sheets(), one.Sheet)...)
	}
	page, err := m.submittal(one.Sheet, one.Src)
	if err != nil {
		return err
	}
	if err := outfile.Write(output, s.Out, one.Inputs(), func(w io.Writer) error { return submittal.HTML(w, page) }); err != nil {
		return err
	}
	return exit.Outcome(one.Sheet.Verdict)
}

// several writes a folder of pages, each as soon as it is made, and then their
// index.
func (m *submitter) several(ctx context.Context, s console.Streams, inputs []source.Input, f submittalFlags) error {
	if f.output == "" {
		return errors.New("several specs make several pages; name a folder for them with --output")
	}
	if err := outfile.MakeFolder(f.output, inputs); err != nil {
		return err
	}
	index := submittal.Index{On: m.options.On, Version: build.Version()}
	for i, name := range pageNames(inputs) {
		in := submission{Input: inputs[i], page: filepath.Join(f.output, name)}
		in.options, in.sheet = m.finder.UnderStandards(in.Input, m.options)
		m.all = append(m.all, in)
	}
	entries, err := m.pages(ctx, s, int(f.jobs))
	if err != nil {
		return err
	}
	index.Entries = entries
	write := func(w io.Writer) error { return submittal.IndexHTML(w, index) }
	if err := outfile.Write(filepath.Join(f.output, "index.html"), nil, inputs, write); err != nil {
		return err
	}
	return exit.Outcome(index.Verdict())
}

// submission is one of several specs on its way to its page.
type submission struct {
	source.Input
	page    string
	options review.Options
	sheet   *review.Sheet // set where its standards can't be taken
}

// pages makes and writes all pages, some at a time, and keeps of each only its
// line in the index.
func (m *submitter) pages(ctx context.Context, s console.Streams, jobs int) ([]submittal.SubmittalEntry, error) {
	entries := make([]submittal.SubmittalEntry, len(m.all))
	stdin := console.Once(s.In)
	p := console.NewProgress(s.Err, len(m.all), "pages")
	p.Begin()
	var telling sync.Mutex
	group, within := errgroup.WithContext(ctx)
	group.SetLimit(jobs)
	for i, in := range m.all {
		group.Go(func() (err error) {
			if within.Err() != nil {
				return within.Err()
			}
			if entries[i], err = m.page(in, stdin()); err != nil {
				return err
			}
			telling.Lock()
			defer telling.Unlock()
			p.Done()
			return nil
		})
	}
	err := group.Wait()
	p.End()
	return entries, err
}

// page makes and writes one of several pages.
func (m *submitter) page(in submission, stdin io.Reader) (submittal.SubmittalEntry, error) {
	sheet, src := in.sheet, []byte(nil)
	if sheet == nil {
		sheet, src = in.Review(stdin, in.options)
	}
	entry := submittal.EntryOf(sheet, m.where.InRepository(in.Name))
	if sheet.Ceiling == nil {
		return entry, nil
	}
	entry.Page = filepath.Base(in.page)
	page, err := m.submittal(sheet, src)
	if err != nil {
		return entry, err
	}
	return entry, outfile.Write(in.page, nil, m.inputs(), func(w io.Writer) error { return submittal.HTML(w, page) })
}

func (m *submitter) inputs() []source.Input {
	var out []source.Input
	for _, in := range m.all {
		out = append(out, in.Input)
	}
	return out
}

// pageNames are the files of the inputs' pages: their paths, with what a file
// name or an address would stumble over left out, each once.
func pageNames(inputs []source.Input) []string {
	taken := map[string]bool{"index": true}
	var out []string
	for _, in := range inputs {
		base := strings.Trim(strings.Map(func(r rune) rune {
			if r < 0x80 && (r == '-' || r == '_' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
				return r
			}
			return '-'
		}, strings.TrimSuffix(in.Name, source.Extension)), "-")
		base = base[max(0, len(base)-longestName):]
		name := base
		for n := 2; taken[strings.ToLower(name)] || name == ""; n++ {
			name = base + "-" + strconv.Itoa(n)
		}
		taken[strings.ToLower(name)] = true
		out = append(out, name+".html")
	}
	return out
}

// longestName keeps a page's file name within what file systems take.
const longestName = 120

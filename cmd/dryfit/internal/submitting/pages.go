package submitting

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"golang.org/x/sync/errgroup"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/submittal"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/review"
)

// several writes a folder of pages, each as soon as it is made, and then their
// index.
func (m *submitter) several(ctx context.Context, s console.Streams, inputs []source.Input, f Flags) error {
	if f.Output == "" {
		return errors.New("several specs make several pages; name a folder for them with --output")
	}
	if err := outfile.MakeFolder(f.Output, inputs); err != nil {
		return err
	}
	index := submittal.Index{On: m.options.On, Version: build.Version()}
	for i, name := range pageNames(inputs) {
		in := submission{Input: inputs[i], page: filepath.Join(f.Output, name)}
		in.options, in.assessment = m.finder.UnderStandards(in.Input, m.options)
		m.all = append(m.all, in)
	}
	entries, err := m.pages(ctx, s, int(f.Jobs))
	if err != nil {
		return err
	}
	index.Entries = entries
	write := func(w io.Writer) error { return submittal.IndexHTML(w, index) }
	if err := outfile.Write(filepath.Join(f.Output, "index.html"), nil, inputs, write); err != nil {
		return err
	}
	return exit.Outcome(index.Verdict())
}

// submission is one of several specs on its way to its page.
type submission struct {
	source.Input
	page       string
	options    review.Options
	assessment *review.Assessment // set where its standards can't be taken
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
	assessment, src := in.assessment, []byte(nil)
	if assessment == nil {
		assessment, src = in.Review(stdin, in.options)
	}
	entry := submittal.EntryOf(assessment, m.where.InRepository(in.Name))
	if assessment.Ceiling == nil {
		return entry, nil
	}
	entry.Page = filepath.Base(in.page)
	page, err := m.submittal(assessment, src)
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

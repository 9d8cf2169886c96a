package checking

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"golang.org/x/sync/errgroup"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// checked is a report with the inputs that it is of.
type checked struct {
	report.Report
	inputs  []source.Input
	options review.Options
	stdin   func() io.Reader
	finders []*source.Finder // a run to the standards of each
	before  *source.Snapshot // the baseline; nil for none
}

// prepare gathers the inputs; nothing has been checked yet.
func (f Flags) prepare(ctx context.Context, s console.Streams, paths []string) (checked, error) {
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return checked{}, err
	}
	leftOut, err := f.Rules.leaves(catalog.Rules())
	if err != nil {
		return checked{}, err
	}
	finders, err := f.finders(ctx)
	if err != nil {
		return checked{}, err
	}
	w := source.NewWalker(ctx, s.Err, finders)
	w.Rules = true
	if paths, err = source.OrFolders(finders, paths); err != nil {
		return checked{}, err
	}
	inputs, err := w.Gather(paths, f.StdinName)
	if err != nil {
		return checked{}, err
	}
	if from := finders[0].From; from != nil {
		inputs = append(inputs, w.Unseen(from, paths, inputs)...)
	}
	r := report.Report{Version: build.Version(), On: on, Strict: f.Strict, Against: f.Baseline, Rules: catalog.Rules()}
	r.Folder, r.Root = source.Whereabouts()
	if inputs, err = f.chosen(s, w, r, paths, inputs); err != nil {
		return checked{}, err
	}
	options := review.Options{
		Rules: r.Rules, Standards: standards.BuiltIn(), On: on, Strict: f.Strict, LeftOut: leftOut, Offers: !f.Summary,
		Frames: new(hanging.Memory), // rooms of one section have one frame
	}
	if options.Require, err = requirements(f.Require); err != nil {
		return checked{}, err
	}
	options.Search.Memory = carrying.NewMemory() // and often one panel and one way in
	if f.Thorough {
		options.Search.Depth = carrying.Thorough
	}
	before, err := f.before(ctx)
	return checked{r, inputs, options, console.Once(s.In), finders, before}, err
}

// before is the baseline; nil for none.
func (f Flags) before(ctx context.Context) (*source.Snapshot, error) {
	if f.Baseline == "" {
		return nil, nil
	}
	before, err := source.SnapshotAt(ctx, f.Baseline)
	if err != nil {
		return nil, fmt.Errorf("--baseline %s: %w", f.Baseline, err)
	}
	return before, nil
}

// run checks the inputs to each set of standards and writes every assessment in its order,
// of which only the path, the verdict and the counts are kept: there may be any number.
func (c *checked) run(ctx context.Context, f Flags, w report.Writer) error {
	for _, s := range c.finders {
		run, err := c.checkTo(ctx, s, int(f.Jobs), w)
		if err != nil {
			return err
		}
		c.Runs = append(c.Runs, run)
		if err := w.End(run); err != nil {
			return err
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	return w.Close()
}

// checkTo checks the inputs to one set of standards, some at a time; the assessments
// are in their order, after those of standards files that can't be taken.
func (c *checked) checkTo(ctx context.Context, s *source.Finder, jobs int, w report.Writer) (report.Run, error) {
	assessments := make([]*review.Assessment, len(c.inputs))
	options := make([]review.Options, len(c.inputs))
	files := map[string]bool{}
	for i, in := range c.inputs {
		options[i], assessments[i] = s.UnderStandards(in, c.options)
		for _, f := range options[i].Standards.Files {
			files[f] = true
		}
	}
	run := report.Run{Standards: slices.Sorted(maps.Keys(files))}
	if err := w.Begin(run); err != nil {
		return run, err
	}
	run.Assessments = s.Assessments()
	for _, assessment := range run.Assessments {
		if err := written(w, assessment); err != nil {
			return run, err
		}
	}
	group, ctx := errgroup.WithContext(ctx)
	handed := &inOrder{assessments: assessments, done: make([]bool, len(assessments)), to: w}
	var taken atomic.Int64
	for range min(jobs, len(c.inputs)) { // as many goroutines, whose stacks grow once
		group.Go(func() error {
			var said *engine.Precedent // of the spec before: neighbours are often of one project
			for ctx.Err() == nil {
				i := int(taken.Add(1)) - 1
				if i >= len(c.inputs) {
					return nil
				}
				o := options[i]
				o.Like = said
				if err := c.assess(c.inputs[i], &assessments[i], o); err != nil {
					return err
				}
				if now := assessments[i].Said; now != nil {
					said = now
				}
				if err := handed.over(i); err != nil {
					return err
				}
				runtime.Gosched() // the collector's turn, which else ends late and leaves twice as much
			}
			return ctx.Err()
		})
	}
	err := group.Wait()
	run.Assessments = append(run.Assessments, assessments...)
	return run, err
}

// written writes an assessment, and lets go of all that is not asked for after it.
func written(w report.Writer, s *review.Assessment) error {
	err := w.Add(s)
	*s = review.Assessment{Path: s.Path, Verdict: s.Verdict, Counts: s.Counts}
	return err
}

// assess is the assessment of one input, against the baseline where there is one. An input
// whose standards can't be read has one already.
func (c *checked) assess(in source.Input, assessment **review.Assessment, o review.Options) error {
	var src []byte
	o.Search.Memory = o.Search.Memory.Next()
	if *assessment == nil {
		*assessment, src = in.Review(c.stdin(), o)
	}
	if c.before == nil {
		return nil
	}
	var earlier *review.Assessment
	if at := c.before.Place(in.Path); at != "" && !in.Stdin {
		was, there, err := c.before.Read(at)
		var bad source.BadFile
		switch {
		case errors.As(err, &bad): // which had no findings
		case err != nil:
			return fmt.Errorf("--baseline %s: %s: %w", c.before.Rev, at, err)
		case there && bytes.Equal(was, src):
			earlier = *assessment
		case there:
			o.Offers, o.Search.Memory, o.Like = false, o.Search.Memory.Next(), (*assessment).Said
			earlier = review.Spec(in.Name, was, o)
		}
	}
	(*assessment).Against(earlier, o)
	return nil
}

// inOrder writes assessments in their order, whatever order they are done in.
type inOrder struct {
	sync.Mutex
	assessments []*review.Assessment
	done        []bool
	next        int
	to          report.Writer
	err         error // the first of it, after which nothing is written
}

// over says that an assessment is done, and writes what need not wait any more.
func (o *inOrder) over(i int) error {
	o.Lock()
	defer o.Unlock()
	o.done[i] = true
	for ; o.err == nil && o.next < len(o.assessments) && o.done[o.next]; o.next++ {
		o.err = written(o.to, o.assessments[o.next])
	}
	return o.err
}

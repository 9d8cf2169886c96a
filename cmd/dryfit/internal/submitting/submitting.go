// Package submitting makes the pages of the submittal command, and verifies one.
package submitting

import (
	"context"
	"io"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
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

// Flags are those of the submittal command.
type Flags struct {
	Output, On, Verify string
	Strict             bool
	Jobs               usage.Jobs
	Standards          []string
}

// Run makes the page of one spec, or a page of each and their index.
func Run(ctx context.Context, s console.Streams, paths []string, f Flags) error {
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return err
	}
	m, err := newSubmitter(f.Standards, on, f.Strict)
	if err != nil {
		return err
	}
	inputs, err := source.NewWalker(ctx, s.Err, source.FindersOf(f.Standards)).Gather(paths, "standard-input"+source.Extension)
	if err != nil {
		return err
	}
	if len(inputs) == 1 && !source.IsFolder(paths[0]) {
		return m.one(s, inputs[0], f.Output)
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
func (m *submitter) submittal(assessment *review.Assessment, src []byte) (submittal.Submittal, error) {
	seal := report.Seal{
		Version: build.Version(), On: m.options.On, Strict: m.options.Strict,
		Spec: report.DigestOf(m.where.InRepository(assessment.Path), src), Standards: []report.Digest{},
	}
	for _, file := range assessment.Standards.Files {
		d := m.finder.Hashes[file]
		d.Path = m.where.InRepository(d.Path)
		seal.Standards = append(seal.Standards, d)
	}
	named := *assessment // as the page names files
	named.Path = seal.Spec.Path
	drawn, undrawn, err := drawing.Figures(sheet.Input{Assessment: &named, Version: build.Version(), On: m.options.On, SHA256: seal.Spec.SHA256})
	return submittal.Submittal{
		Assessment: assessment, Seal: seal, Name: m.where.InRepository, Drawings: drawn, Undrawn: undrawn,
		Calcs: sums.Calcs{
			Path: assessment.Path, Ceiling: assessment.Ceiling, Figures: assessment.Results.Figures(), Tables: assessment.Results.Tables(), Rules: catalog.Rules(),
		},
		Takeoff: making.Takeoff{Path: assessment.Path, Ceiling: assessment.Ceiling, Takeoff: stock.Of(assessment.Ceiling, assessment.Results.Survey().Cuts())},
	}, err
}

// one writes the page of one spec. A spec that can't be checked is reported as
// check reports it.
func (m *submitter) one(s console.Streams, in source.Input, output string) error {
	one := m.finder.Open(in, s.In, m.options)
	if one.Assessment.Ceiling == nil {
		return single.Unresolved(s, m.options.On, append(m.finder.Assessments(), one.Assessment)...)
	}
	page, err := m.submittal(one.Assessment, one.Src)
	if err != nil {
		return err
	}
	if err := outfile.Write(output, s.Out, one.Inputs(), func(w io.Writer) error { return submittal.HTML(w, page) }); err != nil {
		return err
	}
	return exit.Outcome(one.Assessment.Verdict)
}

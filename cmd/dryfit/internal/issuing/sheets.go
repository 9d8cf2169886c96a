// Package issuing writes files for others to work by: the sheets of the draw command
// and the package of the shop command.
package issuing

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// SheetFlags are those of the draw command.
type SheetFlags struct {
	Sheet, Format, Scale, Paper, Output, On string
	Strict                                  bool
	Standards                               []string
}

// Sheets draws the sheets of one spec, as many as the flags ask for.
func Sheets(s console.Streams, path string, f SheetFlags) error {
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return err
	}
	options := sheet.Options{Paper: f.Paper}
	if f.Scale != "" {
		if options.Scale, err = draft.ParseScale(f.Scale); err != nil {
			return fmt.Errorf("--scale %w", err)
		}
	}
	if err := f.settle(); err != nil {
		return err
	}
	one, err := single.Open(s, path, f.Standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.Strict})
	if err != nil {
		return err
	}
	in := sheet.Input{Assessment: one.Assessment, Version: build.Version(), On: on, SHA256: report.DigestOf(one.Name, one.Src).SHA256}
	drawn, err := f.sheets(s, in, options)
	if err != nil {
		return err
	}
	if f.Format == "pdf" {
		return outfile.Write(f.Output, s.Out, one.Inputs(), func(w io.Writer) error {
			return pdf.Write(w, document(in.Assessment.Ceiling.Project.Title.Get(), on), drawn)
		})
	}
	if len(drawn) == 1 && f.Sheet != "all" {
		return outfile.Write(f.Output, s.Out, one.Inputs(), func(w io.Writer) error { return svg.Write(w, drawn[0]) })
	}
	return writeFolder(f.Output, one.Inputs(), drawn)
}

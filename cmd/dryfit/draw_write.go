package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
)

// settle checks the flags, and takes the format from the output's name.
func (f *drawFlags) settle() error {
	if names := append(drawing.Names(), "all"); !slices.Contains(names, f.sheet) {
		return fmt.Errorf("--sheet %q is not %s", f.sheet, usage.OneOf(names))
	}
	if f.format == "" {
		f.format = "pdf"
		if strings.EqualFold(filepath.Ext(f.output), ".svg") {
			f.format = "svg"
		}
	}
	switch {
	case f.format != "svg" && f.format != "pdf":
		return fmt.Errorf("--format %q is not svg or pdf", f.format)
	case f.format == "svg" && f.sheet == "all" && f.output == "":
		return fmt.Errorf("several SVGs go into a folder; name it with --output")
	default:
		return nil
	}
}

// sheets draws what is asked for. Of all, a sheet that can't be drawn is said.
func (f drawFlags) sheets(s console.Streams, in drawing.Input, o drawing.Options) ([]paper.Sheet, error) {
	if f.sheet != "all" {
		return f.one(s, in, o)
	}
	drawn, undrawn, err := drawing.All(in, o)
	for _, u := range undrawn {
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(u))
	}
	return drawn, err
}

// one draws a sheet, and its notes behind it. A file of SVG holds the one alone.
func (f drawFlags) one(s console.Streams, in drawing.Input, o drawing.Options) ([]paper.Sheet, error) {
	sheet, err := drawing.Draw(f.sheet, in, o)
	var none *drawing.NoPlanError
	if errors.As(err, &none) {
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(err.Error()))
		return nil, exit.VerdictError{Status: exit.Fail}
	}
	if err != nil {
		return nil, err
	}
	drawn := []paper.Sheet{sheet}
	notes := drawing.Notes(in, drawn)
	if f.format == "svg" && len(notes) > 0 {
		fmt.Fprintf(s.Err, "dryfit: the %s sheet has no room for all of its notes; a PDF has them on a sheet of their own\n", f.sheet)
		return drawn, nil
	}
	drawn = append(drawn, notes...)
	drawing.Number(drawn)
	return drawn, nil
}

// document is what a PDF says of itself: its date is the one that it was
// judged on, so that the same spec makes the same bytes.
func document(title, on string) pdf.Document {
	date, err := time.Parse(time.DateOnly, on)
	if err != nil {
		date = time.Time{} // judgedOn has read it before
	}
	return pdf.Document{Title: show.Shown(title), Creator: "dryfit " + build.Version(), Date: date}
}

// writeFolder writes each sheet to a file of its name.
func writeFolder(folder string, inputs []source.Input, drawn []paper.Sheet) error {
	if err := outfile.MakeFolder(folder, inputs); err != nil {
		return err
	}
	for _, sheet := range drawn {
		var b bytes.Buffer
		if err := svg.Write(&b, sheet); err != nil {
			return err
		}
		path := filepath.Join(folder, sheet.Name+".svg")
		if err := outfile.Write(path, nil, inputs, func(w io.Writer) error { _, err := w.Write(b.Bytes()); return err }); err != nil {
			return err
		}
	}
	return nil
}

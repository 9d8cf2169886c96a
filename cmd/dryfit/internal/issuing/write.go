package issuing

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
)

// settle checks the flags, and takes the format from the output's name.
func (f *SheetFlags) settle() error {
	if names := append(drawing.Names(), "all"); !slices.Contains(names, f.Sheet) {
		return fmt.Errorf("--sheet %q is not %s", f.Sheet, usage.OneOf(names))
	}
	if f.Format == "" {
		f.Format = "pdf"
		if strings.EqualFold(filepath.Ext(f.Output), ".svg") {
			f.Format = "svg"
		}
	}
	switch {
	case f.Format != "svg" && f.Format != "pdf":
		return fmt.Errorf("--format %q is not svg or pdf", f.Format)
	case f.Format == "svg" && f.Sheet == "all" && f.Output == "":
		return fmt.Errorf("several SVGs go into a folder; name it with --output")
	default:
		return nil
	}
}

// sheets draws what is asked for. Of all, a sheet that can't be drawn is said.
func (f SheetFlags) sheets(s console.Streams, in sheet.Input, o sheet.Options) ([]paper.Sheet, error) {
	if f.Sheet != "all" {
		return f.one(s, in, o)
	}
	drawn, undrawn, err := drawing.All(in, o)
	for _, u := range undrawn {
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(u))
	}
	return drawn, err
}

// one draws a sheet, and its notes behind it. A file of SVG holds the one alone.
func (f SheetFlags) one(s console.Streams, in sheet.Input, o sheet.Options) ([]paper.Sheet, error) {
	one, err := drawing.Draw(f.Sheet, in, o)
	var none *drawing.NoPlanError
	if errors.As(err, &none) {
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(err.Error()))
		return nil, exit.VerdictError{Status: exit.Fail}
	}
	if err != nil {
		return nil, err
	}
	drawn := []paper.Sheet{one}
	notes := sheet.Notes(in, drawn, 0)
	if f.Format == "svg" && len(notes) > 0 {
		fmt.Fprintf(s.Err, "dryfit: the %s sheet has no room for all of its notes; a PDF has them on a sheet of their own\n", f.Sheet)
		return drawn, nil
	}
	drawn = append(drawn, notes...)
	drawing.Number(drawn)
	return drawn, nil
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

package issuing

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing/dxf"
	"dryfit/cmd/dryfit/internal/drawing/pattern"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// PackageFlags are those of the shop command.
type PackageFlags struct {
	Output, Part, Paper, On string
	Strict, EvenSo          bool
	Standards               []string
}

// Papers are the names of the papers that patterns are tiled on.
func Papers() (out []string) {
	for _, p := range pattern.Papers {
		out = append(out, p.Name)
	}
	return out
}

// Package writes the folder of the shop command for one spec. It writes the whole
// of it or nothing.
func Package(ctx context.Context, s console.Streams, path string, f PackageFlags) error {
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return err
	}
	if f.Output == "" {
		return errors.New("name the folder to write with --output")
	}
	tiles := slices.IndexFunc(pattern.Papers, func(p pattern.Paper) bool { return strings.EqualFold(p.Name, f.Paper) })
	if tiles < 0 {
		return fmt.Errorf("--paper %q is not %s", f.Paper, usage.OneOf(Papers()))
	}
	one, err := single.Open(s, path, f.Standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.Strict})
	if err != nil {
		return err
	}
	m := shopMaker{paper: pattern.Papers[tiles], units: one.Assessment.Ceiling.Units, on: on}
	m.Shop = making.Shop{Assessment: one.Assessment, Seal: sealOf(one, on, f.Strict), Shop: one.Assessment.Results.Shop()}
	if m.Fails() && !f.EvenSo {
		return single.Withheld(s, s.Out, one, on, "nothing is written, because the check fails the spec; --even-so writes the files, marked NOT FOR CUTTING")
	}
	files, err := m.files(f.Part)
	if err != nil {
		return err
	}
	if err := outfile.WritePackage(ctx, f.Output, making.ShopIndex, one.Inputs(), files); err != nil {
		return err
	}
	return exit.Outcome(one.Assessment.Verdict)
}

// sealOf says what a package is made of.
func sealOf(one source.Opened, on string, strict bool) report.Seal {
	var where report.Report
	where.Folder, where.Root = source.Whereabouts()
	seal := report.Seal{
		Version: build.Version(), On: on, Strict: strict,
		Spec: report.DigestOf(where.InRepository(one.Assessment.Path), one.Src), Standards: []report.Digest{},
	}
	for _, d := range one.Hashes {
		d.Path = where.InRepository(d.Path)
		seal.Standards = append(seal.Standards, d)
	}
	return seal
}

// shopMaker makes the files of one package.
type shopMaker struct {
	making.Shop
	paper pattern.Paper
	units quantity.System
	on    string
}

// files are all of a package, or those of one pattern; the index comes last.
func (m *shopMaker) files(part string) ([]outfile.Packed, error) {
	var out []outfile.Packed
	patterns := m.Shop.Shop.Patterns()
	names := []string{}
	for _, p := range patterns {
		names = append(names, p.Name)
		if part == "" || part == p.Name {
			out = append(out, m.pattern(p)...)
		}
	}
	if part != "" && out == nil {
		return nil, fmt.Errorf("--part %q is not a pattern of this ceiling: %s", part, strings.Join(names, ", "))
	}
	if part == "" {
		for _, l := range m.ShopLists(patterns) {
			out = append(out, outfile.Packed{Name: l.Name + ".csv", Write: func(w io.Writer) error { return l.Write(w, m.Shop) }})
		}
	}
	for _, f := range out {
		m.Files = append(m.Files, f.Name)
	}
	return append(out, outfile.Packed{Name: making.ShopIndex, Write: func(w io.Writer) error { return making.ShopJSON(w, m.Shop) }}), nil
}

// pattern is one in its three formats.
func (m *shopMaker) pattern(p shop.Pattern) []outfile.Packed {
	project := m.Assessment.Project
	title := show.Shown(project.Title.Get())
	if r := project.Revision.Get(); r != "" {
		title += ", revision " + show.Shown(r)
	}
	full := pattern.Of(p, pattern.About{
		Units: m.units, Title: title, Warnings: m.Warnings(p.HasStraps()),
		Lines: []string{"Checked on " + m.on + " by dryfit " + build.Version() + "; SHA-256 of the spec " + m.Seal.Spec.SHA256 + ".", show.Caution},
	})
	unit, ending := 1.0, ".mm.dxf"
	if m.units == quantity.Imperial {
		unit, ending = 1000*quantity.Inch, ".in.dxf"
	}
	return []outfile.Packed{
		{Name: p.Name + ".svg", Write: func(w io.Writer) error { return svg.Write(w, full.Sheet) }},
		{Name: p.Name + ending, Write: func(w io.Writer) error {
			return dxf.Write(w, dxf.Drawing{Items: full.Items, Origin: full.Origin, Unit: unit})
		}},
		{Name: p.Name + "-" + m.paper.Name + ".pdf", Write: func(w io.Writer) error {
			return pdf.Write(w, document(p.Name+", "+project.Title.Get(), m.on), full.Tiles(m.paper))
		}},
	}
}

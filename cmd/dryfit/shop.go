package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

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

// shopFlags are those of the shop command.
type shopFlags struct {
	output, part, paper, on string
	strict, evenSo          bool
	standards               []string
}

func shopCommand(s console.Streams) *cobra.Command {
	var f shopFlags
	c := &cobra.Command{
		Use:   "shop SPEC --output DIR",
		Short: "Write the patterns and lists that a shop cuts by",
		Long: "Writes one folder from one check of a spec. It holds patterns at full size of ribs,\n" +
			"bending forms, sawn segments, skins and story sticks, each as SVG, as DXF and as PDF in\n" +
			"tiles of office paper. Lists of strips, cut sizes, holes, stations, sheets, marks and\n" +
			"blocks are CSV. shop.json has all figures. The folder is written whole or not at all. It\n" +
			"replaces an older folder only if shop made that folder.\n" +
			"\n" +
			"If the check fails the spec, shop prints the holds and writes nothing. With --even-so it\n" +
			"writes all the same, and every file says NOT FOR CUTTING.\n" +
			"\n" +
			"Exit status: 0 written, 1 the check fails the spec, 2 not written or interrupted; an\n" +
			"older folder is then kept.",
		Example: "  dryfit shop specs/reading-room.ceiling.toml --output reading-room-shop\n" +
			"  dryfit shop specs/reading-room.ceiling.toml --output rib --part rib-1 --paper A3",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			err := makeShop(c.Context(), s, args[0], f)
			if c.Context().Err() != nil {
				return exit.ErrNothingWritten
			}
			return err
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.output, "output", "", "the `folder` to write")
	flags.StringVar(&f.part, "part", "", "write only the pattern of this `name`, such as rib-1")
	flags.StringVar(&f.paper, "paper", "A4", "the paper of the PDFs' tiles: "+usage.OneOf(paperNames()))
	flags.BoolVar(&f.evenSo, "even-so", false, "write even if the check fails the spec")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.BoolVar(&f.strict, "strict", false, "a query fails the spec")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	usage.CompleteWith(c, "paper", paperNames()...)
	return c
}

func paperNames() (out []string) {
	for _, p := range pattern.Papers {
		out = append(out, p.Name)
	}
	return out
}

func makeShop(ctx context.Context, s console.Streams, path string, f shopFlags) error {
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	if f.output == "" {
		return errors.New("name the folder to write with --output")
	}
	tiles := slices.IndexFunc(pattern.Papers, func(p pattern.Paper) bool { return strings.EqualFold(p.Name, f.paper) })
	if tiles < 0 {
		return fmt.Errorf("--paper %q is not %s", f.paper, usage.OneOf(paperNames()))
	}
	one, err := single.Open(s, path, f.standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.strict})
	if err != nil {
		return err
	}
	m := shopMaker{paper: pattern.Papers[tiles], units: one.Sheet.Ceiling.Units, on: on}
	m.Shop = making.Shop{Sheet: one.Sheet, Seal: sealOf(one, on, f.strict), Shop: one.Sheet.Results.Shop()}
	if m.Fails() && !f.evenSo {
		return single.Withheld(s, s.Out, one, on, "nothing is written: the check fails the spec; --even-so writes what is not for cutting")
	}
	files, err := m.files(f.part)
	if err != nil {
		return err
	}
	if err := outfile.WritePackage(ctx, f.output, making.ShopIndex, one.Inputs(), files); err != nil {
		return err
	}
	return exit.Outcome(one.Sheet.Verdict)
}

// sealOf says what a package is made of.
func sealOf(one source.Opened, on string, strict bool) report.Seal {
	var where report.Report
	where.Folder, where.Root = source.Whereabouts()
	seal := report.Seal{
		Version: build.Version(), On: on, Strict: strict,
		Spec: report.DigestOf(where.InRepository(one.Sheet.Path), one.Src), Standards: []report.Digest{},
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
	project := m.Sheet.Project
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

package panel

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/stock"
	"dryfit/spec/quantity"
)

// wood is the takeoff, whose marks the panel's pieces have.
func wood(in sheet.Input) stock.Takeoff {
	return stock.Of(in.Ceiling(), in.Assessment.Results.Survey().Cuts())
}

// marks names one piece of each kind that is drawn, by its mark in the takeoff.
func (d *panelOf) marks() {
	done := map[string]bool{}
	for _, p := range d.c.ArchPieces(d.piece) {
		marks := strings.Join(d.wood.MarksOf(p), ", ")
		of, drawn := d.seen(p)
		if marks == "" || done[marks] || !drawn {
			continue
		}
		done[marks] = true
		broad := p.Kind == layout.SkinSheet || p.Kind == layout.Rail
		d.b.Label(draft.Label{Text: marks + " " + p.Kind.String(), Of: of, Inside: broad, Prefer: []draft.Side{draft.Right}})
	}
}

// seen is where on the drawing a piece is seen, if it is: straps have their marks at
// their stations.
func (d *panelOf) seen(p layout.Piece) (at paper.Point, drawn bool) {
	x0, x1 := d.bay(0)
	module := d.c.Grid.ModuleAround.Get()
	beside := module * (float64(d.modules()/2) + 0.3) // off the rails
	switch p.Kind {
	case layout.HalfRib:
		if d.near > 0 {
			_, x1 := d.bay(d.bays - 1)
			return d.at((x1+d.long)/2, beside), d.far == 0
		}
		return d.at(x0/2, beside), true
	case layout.Rib:
		if d.near > 0 {
			return d.at(d.near, beside), true
		}
		return d.at(d.ribAt(1), beside), d.bays > 1
	case layout.Rail, layout.HalfRail:
		return d.at(x0+(x1-x0)*0.4, d.railSeen(p)), true
	case layout.SkinSheet:
		return d.at((x0+x1)/2, module*(float64(min(2, d.modules()))-0.5)), math.Abs(p.Width-d.skinWide()) < roundOff
	case layout.LooseTenon:
		all := d.tenons()
		if len(all) == 0 {
			return at, false
		}
		return d.at(d.c.Seam.Tenon.Length.Get()/4, all[len(all)/3]), true
	default:
		return at, false
	}
}

// roundOff is how far off two lengths that are worked out in two ways may be, in m.
const roundOff = 1e-9

// railSeen is where around a rail is seen: of halves within their piece.
func (d *panelOf) railSeen(p layout.Piece) float64 {
	s, quarter := p.At-d.from, d.c.Rail.Width.Get()/4
	switch {
	case p.Kind == layout.Rail:
		return s
	case s < d.arc/2 && s < quarter:
		return quarter
	default:
		return s - quarter
	}
}

// skinWide is how wide the skin of the panel is that is drawn, in m.
func (d *panelOf) skinWide() float64 {
	if d.c.Skin.Between.Get() {
		return d.c.Clear() * d.c.Panel.Modules.Get()
	}
	return d.long
}

// strapMark is the mark of the strap at a station; none where it has none in the takeoff.
func (d *panelOf) strapMark(share float64) string {
	if !d.c.Strap.Lap.Given() || !d.c.Room.Above.Given() {
		return ""
	}
	return strings.Join(d.wood.MarksOf(layout.Piece{Kind: layout.Hanger, Length: d.c.StrapLength(share) + 2*d.c.Strap.Lap.Get()}), "")
}

// pieces lists those of the heaviest panel, each kind with its mark and its finished size
// in the takeoff, the fittings of stated mass, and what the takeoff has besides.
func (d *panelOf) pieces() []string {
	out, had := []string{"Marks are the same as in the takeoff."}, []string(nil)
	for _, p := range d.c.Panel.Pieces.Get() {
		marks := d.wood.MarksOf(p)
		switch {
		case p.Kind == layout.Let:
			out = append(out, fmt.Sprintf("%s: %s", p.Material, d.Format(quantity.Mass(p.Mass).Value())))
		case len(marks) == 0 || p.Kind == layout.Hanger:
			out = append(out, strings.TrimLeft(fmt.Sprintf("%s %d %s, %s: %s", strings.Join(marks, ""), p.Count, p.Kind, p.Material, d.sizes(p.Length, p.Width, p.Depth)), " "))
		}
		for _, l := range d.wood.Pieces {
			if slices.Contains(marks, l.Mark) {
				had = append(had, l.Mark)
				out = append(out, fmt.Sprintf("%s %d %s, %s: %s", l.Mark, p.Count, l.Name, l.Material, d.sizes(l.Length, l.Width, l.Depth)))
			}
		}
	}
	for _, l := range d.wood.Pieces {
		if !slices.Contains(had, l.Mark) {
			out = append(out, fmt.Sprintf("%s %s, %s: %s, in other panels or seams", l.Mark, l.Name, l.Material, d.sizes(l.Length, l.Width, l.Depth)))
		}
	}
	return out
}

// sizes are a length, a width and a depth in m, as they are printed.
func (d *panelOf) sizes(length, width, depth float64) string {
	return d.Length(length) + " × " + d.Length(width) + " × " + d.Length(depth)
}

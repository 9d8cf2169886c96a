// Package stock is the takeoff: the pieces of the whole vault, the stock to buy
// for them, the hardware, and the weights.
package stock

import (
	"cmp"
	"math"
	"slices"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
)

// Takeoff is what a shop buys and makes. Lengths are in m, masses in kg.
type Takeoff struct {
	Pieces    []Line
	Boards    []Boards
	Sheets    []SheetGoods
	Hardware  []Hardware
	PanelMass float64 // of the heaviest panel
	Panels    int
	Mass      float64 // of all pieces

	ceiling *layout.Ceiling
	made    *shop.Shop
}

// Line is a kind of piece, all of one size.
type Line struct {
	Mark                 string // of the kind, "K1"
	Name, Material       string
	Count                int
	Length, Width, Depth float64 // finished; of a curved piece along its intrados
	Strips               float64 // of a laminated piece; not whole where they do not make up its depth
	Halves               int     // 2 of a rib that is mitred at a pointed crown, each half of so many strips
	StripThickness       float64
	Mass                 float64 // of all of them
}

// Boards is the lumber of one species.
type Boards struct {
	Species   string
	Volume    float64 // finished, m3, of the ribs and rails that it is bought for
	BoardFeet float64 // to buy
	Waste     float64 // what is bought over what is finished: kerfs, planing, trim and defects
	Missing   bool    // some of the pieces come out of no plank of the shop's, or can't be made, and are not in it
}

// SheetGoods is the stock sheets of one material.
type SheetGoods struct {
	Material       string
	Straight, Bent float64 // sides of a sheet
	Thickness      float64
	Count          int   // to buy; 0 where they are not computed
	Err            error // why they are not
	Pieces         int   // that all skins are cut into
}

// Hardware is bought by the piece, or by its length.
type Hardware struct {
	Mark   string // of the kind, of a strap that is as drawn
	Name   string
	Count  int
	Length float64 // of one strap; of moulding, all of it
	Mass   float64 // of all; 0 where it is not worked out
	// Measured says that it is cut to the room as measured.
	Measured bool
}

// Of works out the takeoff of a ceiling. The straps are those that were measured,
// their lengths by panel and station, or as drawn where none are given.
func Of(c *layout.Ceiling, measured [][]float64) Takeoff {
	made := shop.Of(c)
	t := Takeoff{PanelMass: c.Panel.Mass.Get(), Panels: c.Panel.Count.Get(), ceiling: c, made: made}
	for _, f := range c.Fitting.Get() {
		if f.Mass.Given() {
			t.Mass += f.Mass.Get()
		}
	}
	var hangers []layout.Piece
	for _, p := range c.VaultPieces() {
		switch p.Kind {
		case layout.Hanger:
			hangers = append(hangers, p)
		case layout.SkinSheet:
			t.Mass += p.Mass * float64(p.Count)
			for _, l := range skins(c, made, p) {
				t.Pieces = merge(t.Pieces, l)
			}
		case layout.LooseTenon: // of the seams around alone; all of them are added below
		default:
			t.Mass += p.Mass * float64(p.Count)
			t.Pieces = merge(t.Pieces, line(c, p))
		}
	}
	if l, ok := tenons(c, made); ok {
		t.Mass += l.Mass
		t.Pieces = append(t.Pieces, l)
	}
	t.Boards = boards(c, made)
	sheets := made.Sheets.Get()
	t.Sheets = []SheetGoods{{
		Material: c.Skin.Material.Get().Name, Straight: c.Skin.Sheet.Straight.Get(), Bent: c.Skin.Sheet.Bent.Get(),
		Thickness: c.Skin.Thickness.Get(), Count: sheets.Count + sheets.TooLarge, Err: sheets.Err, Pieces: made.SkinCount.Get().Pieces,
	}}
	t.Hardware = straps(hangers, measured)
	for _, h := range t.Hardware {
		t.Mass += h.Mass
	}
	t.Hardware = append(t.Hardware, others(c)...)
	t.mark()
	return t
}

// straps are those as drawn, or as measured: two of each length on a panel, the
// longest first.
func straps(drawn []layout.Piece, measured [][]float64) (out []Hardware) {
	if len(drawn) == 0 {
		return nil
	}
	if measured == nil {
		for _, p := range drawn {
			out = append(out, Hardware{Name: p.Kind.String(), Count: p.Count, Length: p.Length, Mass: p.Mass * float64(p.Count)})
		}
		return mergeHardware(out)
	}
	each := drawn[0].Mass / drawn[0].Length
	for _, panel := range measured {
		for _, length := range panel {
			out = append(out, Hardware{Name: drawn[0].Kind.String(), Count: 2, Length: length, Mass: 2 * each * length, Measured: true})
		}
	}
	slices.SortStableFunc(out, func(a, b Hardware) int { return cmp.Compare(b.Length, a.Length) })
	return mergeHardware(out)
}

func line(c *layout.Ceiling, p layout.Piece) Line {
	l := Line{
		Name: p.Kind.String(), Material: p.Material, Count: p.Count, Length: p.Length, Width: p.Width, Depth: p.Depth,
		Mass: p.Mass * float64(p.Count),
	}
	if p.Kind == layout.Rib || p.Kind == layout.HalfRib {
		l.Strips, l.StripThickness, l.Halves = c.Laminations(), c.Rib.Lamination.Get(), shop.Halves(c, p.At)
	}
	return l
}

// skins are the layers of the skin of one piece of an arch, each as long as it is cut.
func skins(c *layout.Ceiling, made *shop.Shop, p layout.Piece) []Line {
	var out []Line
	total := 0.0
	for _, s := range made.Skins.Get() {
		if s.From > p.At+alike || s.To < p.At-alike {
			continue
		}
		total += s.Length
		out = append(out, Line{
			Name: p.Kind.String(), Material: p.Material, Count: p.Count, Length: s.Length, Width: p.Width, Depth: c.Skin.Actual(),
			Mass: p.Mass * float64(p.Count) * s.Length,
		})
	}
	for i := range out {
		out[i].Mass /= total
	}
	return out
}

// tenons are those of all seams, the lengthwise ones of split arches too.
func tenons(c *layout.Ceiling, made *shop.Shop) (Line, bool) {
	t, species, n := c.Seam.Tenon, c.Rib.Species.Get(), made.Count.Get().Tenons
	mass := t.Thickness.Get() * t.Width.Get() * t.Length.Get() * timber.Density(species.SG12, c.Climate.Shop.Get())
	return Line{
		Name: layout.LooseTenon.String(), Material: species.Name, Count: n,
		Length: t.Length.Get(), Width: t.Width.Get(), Depth: t.Thickness.Get(), Mass: mass * float64(n),
	}, n > 0
}

// boards is the lumber of ribs and rails, of one species together; tenons come out of
// what is left over.
func boards(c *layout.Ceiling, made *shop.Shop) []Boards {
	finished := map[bool]float64{} // whether of a rib
	for _, p := range c.VaultPieces() {
		switch p.Kind {
		case layout.Rib, layout.HalfRib:
			finished[true] += p.Volume * float64(p.Count)
		case layout.Rail, layout.HalfRail:
			finished[false] += p.Volume * float64(p.Count)
		}
	}
	ribs, rails := made.RibLumber.Get(), made.RailLumber.Get()
	out := []Boards{{Species: ribs.Species, Volume: finished[true], BoardFeet: ribs.BoardFeet, Missing: ribs.Missing}}
	rail := Boards{Species: rails.Species, Volume: finished[false], BoardFeet: rails.BoardFeet, Missing: rails.Missing}
	if rail.Species == out[0].Species {
		out[0].Volume += rail.Volume
		out[0].BoardFeet += rail.BoardFeet
		out[0].Missing = out[0].Missing || rail.Missing
	} else {
		out = append(out, rail)
	}
	for i, b := range out {
		if !b.Missing {
			out[i].Waste = b.BoardFeet*timber.BoardFoot/b.Volume - 1
		}
	}
	return out
}

// alike is how near two sizes are to be one line: a tenth of a millimetre.
const alike = 1e-4

// merge adds a line to an equal one, or at the end.
func merge(list []Line, l Line) []Line {
	for i, had := range list {
		if had.same(l) {
			list[i].Count += l.Count
			list[i].Mass += l.Mass
			return list
		}
	}
	return append(list, l)
}

func mergeHardware(list []Hardware) []Hardware {
	var out []Hardware
next:
	for _, h := range list {
		for i, had := range out {
			if had.Name == h.Name && near(had.Length, h.Length) {
				out[i].Count += h.Count
				out[i].Mass += h.Mass
				continue next
			}
		}
		out = append(out, h)
	}
	return out
}

func near(a, b float64) bool { return math.Abs(a-b) < alike }

// others is the hardware that is not a piece of a panel: screws at both ends of
// the straps, and the moulding around the ceiling.
func others(c *layout.Ceiling) []Hardware {
	var out []Hardware
	if st := c.Strap; st.Screws.Given() {
		straps := 2 * c.Panel.Along.Get() * len(st.Stations.Get())
		out = append(out, Hardware{Name: "screw", Count: 2 * straps * st.Screws.Count.Get()})
	}
	return append(out, Hardware{Name: "moulding", Count: 1, Length: 2 * (c.Vault.Length.Get() + c.Vault.Arc.Get())})
}

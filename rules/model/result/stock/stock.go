// Package stock is the takeoff: the pieces of the whole vault, the stock to buy
// for them, the hardware, and the weights.
package stock

import (
	"cmp"
	"math"
	"slices"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
)

// Takeoff is what a shop buys and makes. Lengths are in m, masses in kg.
type Takeoff struct {
	Pieces    []Line
	Boards    []Boards
	Sheets    []Sheets
	Hardware  []Hardware
	PanelMass float64 // of the heaviest panel
	Panels    int
	Mass      float64 // of all pieces
}

// Line is a kind of piece, all of one size.
type Line struct {
	Name, Material       string
	Count                int
	Length, Width, Depth float64 // finished; of a curved piece along its intrados
	From                 string  // what it is made of: "10 strips of 6mm", "one sheet"
	Strips               float64 // of a laminated piece; not whole where they do not make up its depth
	StripThickness       float64
	Mass                 float64 // of all of them
}

// Boards is the lumber of one species.
type Boards struct {
	Species   string
	Volume    float64 // finished, m3
	BoardFeet float64 // to buy, waste included
}

// Sheets is the stock sheets of one material.
type Sheets struct {
	Material       string
	Straight, Bent float64
	Thickness      float64
	Count          int // to buy
	Pieces         int // each skin is cut into
}

// Hardware is bought by the piece, or by its length.
type Hardware struct {
	Name   string
	Count  int
	Length float64 // of one strap; of moulding, all of it
	Mass   float64 // of all; 0 where it is not worked out
	// Measured says that it is cut to the room as measured.
	Measured bool
}

// Waste is the share of finished volume that planing, saw kerfs, ends and
// defects add to the lumber that is bought. Common practice: a third to a half
// for clear hardwood; ripping thin strips takes the more.
const Waste = 0.40

// Of works out the takeoff of a ceiling. The straps are those that were measured,
// their lengths by panel and station, or as drawn where none are given.
func Of(c *layout.Ceiling, measured [][]float64) Takeoff {
	t := Takeoff{PanelMass: c.Panel.Mass.Get(), Panels: c.Panel.Count.Get()}
	for _, f := range c.Fitting.Get() {
		if f.Mass.Given() {
			t.Mass += f.Mass.Get()
		}
	}
	volumes := map[string]float64{}
	var species []string
	var hangers []layout.Piece
	for _, p := range c.VaultPieces() {
		if p.Kind == layout.Hanger {
			hangers = append(hangers, p)
			continue
		}
		t.Mass += p.Mass * float64(p.Count)
		switch p.Kind {
		case layout.SkinSheet:
		default:
			if _, seen := volumes[p.Material]; !seen {
				species = append(species, p.Material)
			}
			volumes[p.Material] += p.Volume * float64(p.Count)
		}
		t.Pieces = merge(t.Pieces, line(c, p))
	}
	for _, s := range species {
		t.Boards = append(t.Boards, Boards{
			Species: s, Volume: volumes[s], BoardFeet: volumes[s] * (1 + Waste) / timber.BoardFoot,
		})
	}
	sh := c.SkinSheets()
	t.Sheets = []Sheets{{
		Material: c.Skin.Material.Get().Name, Straight: c.Skin.Sheet.Straight.Get(), Bent: c.Skin.Sheet.Bent.Get(),
		Thickness: c.Skin.Thickness.Get(), Count: sh.PanelCount * c.Panel.Count.Get(), Pieces: sh.Around * sh.Along,
	}}
	t.Hardware = straps(hangers, measured)
	for _, h := range t.Hardware {
		t.Mass += h.Mass
	}
	t.Hardware = append(t.Hardware, others(c)...)
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
		l.Strips, l.StripThickness = c.Laminations(), c.Rib.Lamination.Get()
	}
	return l
}

// alike is how near two sizes are to be one line: a tenth of a millimetre.
const alike = 1e-4

// merge adds a line to an equal one, or at the end.
func merge(list []Line, l Line) []Line {
	for i, had := range list {
		if had.Name == l.Name && had.Material == l.Material && near(had.Length, l.Length) && near(had.Width, l.Width) && near(had.Depth, l.Depth) {
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

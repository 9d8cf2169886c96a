package shop

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"dryfit/rules/model/layout"
)

// SkinPiece is a piece of the skin as it is cut from a sheet.
type SkinPiece struct {
	Mark          string  // "P2-S1"
	Panel         int     // from 1, in the order of raising
	Piece, Layer  int     // of the arch, from the left; of the skin, from the room
	Around, Along float64 // its size
}

// Placed is a piece on a sheet: its corner next to the sheet's own.
type Placed struct {
	SkinPiece
	Sheet int     // from 1
	X, Y  float64 // around and along
}

// Nest is how all pieces of the skin lie on sheets. Pieces are never turned: the sheet's
// bent edge goes around.
type Nest struct {
	Bent, Straight float64 // sides of a sheet
	Pieces         []Placed
	Count          int
	Least          int   // a lower bound: by area, and by pieces that can't lie beside each other
	TooLarge       int   // pieces that no sheet has room for
	Fits           bool  // none is too large
	Err            error // why none is laid
}

// mostLaid are the pieces that are laid on sheets: the time that it takes grows with
// their square.
const mostLaid = 2000

// cutAround are the lengths around that the skin is cut into, by piece of the arch
// and layer.
func cutAround(c *layout.Ceiling) [][][]float64 {
	out := make([][][]float64, c.Panel.Around.Get())
	for k := range out {
		for layer := range c.Skin.Layers.Get() {
			out[k] = append(out[k], develop(c, k, layer).pieces())
		}
	}
	return out
}

// SkinCount is how many pieces the skin is cut into, and the largest each way.
type SkinCount struct {
	Pieces        int
	Around, Along float64 // of the largest, each for itself
}

// skinCount counts them without a list of them.
func skinCount(c *layout.Ceiling, around [][][]float64) (n SkinCount) {
	arch, bays := 0, 0
	for _, layers := range around {
		for _, pieces := range layers {
			arch += len(pieces)
			n.Around = max(n.Around, slices.Max(pieces))
		}
	}
	for along := range c.Panel.Along.Get() {
		lengths := Panel{Along: along}.bays(c)
		bays += len(lengths)
		n.Along = max(n.Along, slices.Max(lengths))
	}
	n.Pieces = arch * bays
	return n
}

// skinPieces are those of the whole vault, panel by panel in the order of raising.
func skinPieces(c *layout.Ceiling, around [][][]float64) []SkinPiece {
	var out []SkinPiece
	for _, p := range Panels(c) {
		n := 0
		for layer, pieces := range around[p.Piece-1] {
			for _, length := range pieces {
				for _, along := range p.bays(c) {
					n++
					out = append(out, SkinPiece{fmt.Sprintf("P%d-S%d", p.Number, n), p.Number, p.Piece, layer + 1, length, along})
				}
			}
		}
	}
	return out
}

// bays are what the skin of a panel is cut into along the vault: each bay by itself
// between the ribs; behind them as many whole modules as the sheet's straight edge
// takes.
func (p Panel) bays(c *layout.Ceiling) []float64 {
	n := max(1, int(math.Round(c.Panel.Modules.Get())))
	lengths := make([]float64, n)
	for i := range lengths {
		lengths[i] = c.Clear()
		if !c.Skin.Between.Get() {
			lengths[i] = c.Panel.Length.Get() / float64(n)
		}
	}
	if c.Skin.Between.Get() {
		return lengths
	}
	if !c.Grid.HalfEnds.Get() {
		half := c.Rib.Width.Get() / 2
		if p.Along == 0 {
			lengths[0] += half
		}
		if p.Along == c.Panel.Along.Get()-1 {
			lengths[n-1] += half
		}
	}
	return grouped(lengths, c.Skin.Sheet.Straight.Get())
}

// sheets are the nest, or why there is none.
func (s *Shop) sheets(c *layout.Ceiling) Nest {
	n, sheet := s.SkinCount.Get(), c.Skin.Sheet
	if n.Pieces <= mostLaid {
		return nest(c, s.SkinPieces.Get())
	}
	return Nest{
		Bent: sheet.Bent.Get(), Straight: sheet.Straight.Get(),
		Fits: n.Around <= sheet.Bent.Get()+onSheet && n.Along <= sheet.Straight.Get()+onSheet,
		Err:  fmt.Errorf("not computed: there are %d pieces of skin; the maximum is %d", n.Pieces, mostLaid),
	}
}

// nest lays the pieces on sheets: the best of several orders and ways to choose a
// place, until as few sheets are taken as can be.
func nest(c *layout.Ceiling, pieces []SkinPiece) Nest {
	sheet, kerf := c.Skin.Sheet, c.Bench().Kerf
	out := Nest{Bent: sheet.Bent.Get(), Straight: sheet.Straight.Get(), Fits: true}
	var fit []SkinPiece
	for _, p := range pieces {
		if p.Around > out.Bent+onSheet || p.Along > out.Straight+onSheet {
			out.TooLarge++
			continue
		}
		// Pieces that round-off alone tells apart are alike, on every processor.
		p.Around, p.Along = nanometres(p.Around), nanometres(p.Along)
		fit = append(fit, p)
	}
	out.Fits = out.TooLarge == 0
	out.Least = least(fit, out.Bent+kerf, out.Straight+kerf, kerf)
	for _, order := range nestOrders {
		for _, choose := range nestChoices {
			sorted := slices.Clone(fit)
			slices.SortStableFunc(sorted, order)
			placed, count := packed(sorted, out.Bent+kerf, out.Straight+kerf, kerf, choose)
			if out.Pieces == nil || count < out.Count {
				out.Pieces, out.Count = placed, count
			}
			if out.Count == out.Least {
				return out
			}
		}
	}
	return out
}

func nanometres(m float64) float64 { return math.Round(m*1e9) / 1e9 }

// nestOrders are the orders that are tried: the largest pieces first, by several
// measures.
var nestOrders = []func(a, b SkinPiece) int{
	func(a, b SkinPiece) int {
		return cmp.Or(cmp.Compare(b.Along, a.Along), cmp.Compare(b.Around, a.Around))
	},
	func(a, b SkinPiece) int {
		return cmp.Or(cmp.Compare(b.Around, a.Around), cmp.Compare(b.Along, a.Along))
	},
	func(a, b SkinPiece) int { return cmp.Compare(b.Around*b.Along, a.Around*a.Along) },
	func(a, b SkinPiece) int { return cmp.Compare(max(b.Around, b.Along), max(a.Around, a.Along)) },
}

// free is a rectangle of a sheet that nothing lies in; those of one sheet overlap,
// and none lies in another.
type free struct{ x, y, w, h float64 }

// nestChoices rate a free rectangle for a piece, the least first.
var nestChoices = []func(f free, w, h float64) float64{
	func(f free, w, h float64) float64 { return min(f.w-w, f.h-h) }, // the shorter side left over
	func(f free, w, h float64) float64 { return f.w*f.h - w*h },     // the area left over
	func(f free, _, _ float64) float64 { return f.x + f.y },         // the corner
}

// packed lays pieces in their order, each grown by a kerf, on sheets that are grown
// by one: on the first sheet that has room, in the best of its free rectangles.
func packed(pieces []SkinPiece, wide, high, kerf float64, choose func(f free, w, h float64) float64) (out []Placed, count int) {
	var sheets [][]free
	for _, p := range pieces {
		w, h := p.Around+kerf, p.Along+kerf
		at, best := -1, free{}
		for i, list := range sheets {
			if f, ok := bestOf(list, w, h, choose); ok {
				at, best = i, f
				break
			}
		}
		if at < 0 {
			at, best = len(sheets), free{0, 0, wide, high}
			sheets = append(sheets, []free{best})
		}
		used := free{best.x, best.y, w, h}
		sheets[at] = without(sheets[at], used)
		out = append(out, Placed{p, at + 1, used.x, used.y})
	}
	return out, len(sheets)
}

func bestOf(list []free, w, h float64, choose func(f free, w, h float64) float64) (best free, ok bool) {
	least := math.Inf(1)
	for _, f := range list {
		if f.w < w-onSheet || f.h < h-onSheet {
			continue
		}
		if r := choose(f, w, h); r < least {
			least, best, ok = r, f, true
		}
	}
	return best, ok
}

// without is what is left free of rectangles beside one that is taken.
func without(list []free, used free) []free {
	var out []free
	for _, f := range list {
		if used.x >= f.x+f.w-onSheet || used.x+used.w <= f.x+onSheet || used.y >= f.y+f.h-onSheet || used.y+used.h <= f.y+onSheet {
			out = append(out, f)
			continue
		}
		for _, part := range []free{
			{f.x, f.y, used.x - f.x, f.h},
			{used.x + used.w, f.y, f.x + f.w - used.x - used.w, f.h},
			{f.x, f.y, f.w, used.y - f.y},
			{f.x, used.y + used.h, f.w, f.y + f.h - used.y - used.h},
		} {
			if part.w > onSheet && part.h > onSheet {
				out = append(out, part)
			}
		}
	}
	return maximal(out)
}

// maximal leaves out what lies in another, and of two that are alike the second.
func maximal(list []free) []free {
	in := func(a, b free) bool {
		return a.x >= b.x-onSheet && a.y >= b.y-onSheet && a.x+a.w <= b.x+b.w+onSheet && a.y+a.h <= b.y+b.h+onSheet
	}
	var out []free
next:
	for i, f := range list {
		for j, g := range list {
			if i != j && in(f, g) && (!in(g, f) || j < i) {
				continue next
			}
		}
		out = append(out, f)
	}
	return out
}

// least is a lower bound of the sheets that pieces take, all grown by a kerf: by
// their area; and of those over half of a sheet one way, of which no two lie beside
// each other, by their lengths the other way.
func least(pieces []SkinPiece, wide, high, kerf float64) int {
	area := 0.0
	var around, along []float64
	for _, p := range pieces {
		w, h := p.Around+kerf, p.Along+kerf
		area += w * h
		if h > high/2+onSheet {
			around = append(around, w)
		}
		if w > wide/2+onSheet {
			along = append(along, h)
		}
	}
	return max(rounded(area/(wide*high)), inRow(around, wide), inRow(along, high))
}

func rounded(sheets float64) int { return int(math.Ceil(sheets - onSheet)) }

// inRow is a lower bound of the rows of a length that parts take. For any measure up
// to half of it those that leave less beside them stand alone; those over half stand
// apart; and what of the measure and more is left over has only the room beside the
// latter.
func inRow(parts []float64, length float64) int {
	bound := 0
	for _, measure := range append([]float64{0}, parts...) {
		if measure > length/2+onSheet {
			continue
		}
		alone, apart, room, rest := 0, 0, 0.0, 0.0
		for _, p := range parts {
			switch {
			case p > length-measure+onSheet:
				alone++
			case p > length/2+onSheet:
				apart++
				room += length - p
			case p >= measure-onSheet:
				rest += p
			}
		}
		bound = max(bound, alone+apart+max(0, rounded((rest-room)/length)))
	}
	return bound
}

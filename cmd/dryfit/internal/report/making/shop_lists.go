package making

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

// ShopList is a list of a package: rows of texts, counts and lengths.
type ShopList struct {
	Name  string
	Holes bool // it has places of straps
	head  []string
	rows  [][]any // lengths are of this type; a nil is an empty cell
	err   error   // why it has no rows
}

// long is a length in m.
type long float64

// listStep is what lengths of lists are rounded to, in their own unit.
var listStep = map[quantity.System]struct {
	size     float64 // of the unit, m
	decimals int
	name     string
}{
	quantity.Metric: {0.001, 2, "mm"}, quantity.Imperial: {quantity.Inch, 4, "in"},
}

// ShopLists are the lists of a package, in the order of its work.
func (s Shop) ShopLists(patterns []shop.Pattern) []ShopList {
	return []ShopList{
		s.strips(), s.cutList(), s.boring(), s.stations(patterns), s.sheets(), s.marks(), s.blocks(),
	}
}

// Write writes the list as CSV: the unit of lengths stands in the head, and what the
// package warns of in columns of its own.
func (l ShopList) Write(w io.Writer, s Shop) error {
	units := s.Assessment.Ceiling.Units
	c := csv.NewWriter(w)
	c.UseCRLF = true
	warnings := s.Warnings(l.Holes)
	if l.err != nil {
		warnings = append(warnings, l.err.Error())
	}
	head := make([]string, 0, len(l.head)+len(warnings))
	for i, name := range l.head {
		if l.isLong(i) {
			name += "_" + listStep[units].name
		}
		head = append(head, name)
	}
	if err := c.Write(append(head, warnings...)); err != nil {
		return err
	}
	for _, row := range l.rows {
		cells := make([]string, 0, len(row)+len(warnings))
		for _, cell := range row {
			cells = append(cells, listCell(units, cell))
		}
		for range warnings {
			cells = append(cells, "x")
		}
		if err := c.Write(cells); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// isLong reports whether a column is of lengths, which its name says.
func (l ShopList) isLong(column int) bool {
	name := l.head[column]
	return longColumns[name] || strings.HasPrefix(name, "scarf_")
}

var longColumns = map[string]bool{
	"length": true, "width": true, "thickness": true, "depth": true, "apart": true, "at": true, "step": true,
	"x": true, "y": true, "around": true, "along": true, "along_back": true, "down": true, "from": true, "to": true,
}

func listCell(units quantity.System, cell any) string {
	switch x := cell.(type) {
	case nil:
		return ""
	case string:
		return show.PlainCell(show.Safe(x))
	case int:
		return strconv.Itoa(x)
	case long:
		if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
			return ""
		}
		step := listStep[units]
		return strconv.FormatFloat(rounded(units, float64(x))/math.Pow10(step.decimals), 'f', step.decimals, 64)
	default:
		return fmt.Sprint(x)
	}
}

// rounded is a length in whole steps of a list's last decimal.
func rounded(units quantity.System, m float64) float64 {
	step := listStep[units]
	return math.Round(quantity.Steady(m/step.size) * math.Pow10(step.decimals))
}

// strips lists those of each piece of an arch; a strip's scarfs are from one end.
func (s Shop) strips() ShopList {
	l := ShopList{Name: "strips", head: []string{
		"piece", "ribs", "strips_per_rib", "count", "length", "thickness", "width", "plank", "way",
		"scarfs", "scarf_length", "apart",
	}}
	list, cuts := s.Shop.Strips.Get(), s.Shop.Cuts.Get().Strips
	most := 1
	for _, one := range list {
		most = max(most, len(one.Scarfs))
	}
	for i := range most {
		l.head = append(l.head, fmt.Sprintf("scarf_%d", i+1))
	}
	for i, one := range list {
		kinds := len(cuts) / len(list) // of half ribs, of whole ones
		for _, cut := range cuts[i*kinds : (i+1)*kinds] {
			row := []any{
				one.Piece, cut.Count / one.PerRib, one.PerRib, cut.Count, long(cut.Length), long(cut.Thickness), long(cut.Width),
				plankName(cut.Stock), cut.Way, len(one.Scarfs),
			}
			row = append(row, make([]any, 2+most)...)
			if len(one.Scarfs) > 0 {
				row[10], row[11] = long(one.Scarf), long(one.Apart)
			}
			for k, at := range one.Scarfs {
				row[12+k] = long(at)
			}
			l.rows = append(l.rows, row)
		}
	}
	return l
}

// cutList lists what ribs and rails are cut to, before they are planed and trimmed.
func (s Shop) cutList() ShopList {
	l := ShopList{Name: "cut-list", head: []string{"what", "count", "length", "width", "thickness", "plank", "way"}}
	cuts := s.Shop.Cuts.Get()
	for _, kind := range []struct {
		name string
		list []shop.CutSize
	}{{"strip", cuts.Strips}, {"rib", cuts.Planks}, {"rail", cuts.Rails}} {
		if kind.name == "rib" && len(s.Shop.Sawn.Get()) > 0 {
			kind.name = "segment"
		}
		for _, c := range kind.list {
			l.rows = append(l.rows, []any{kind.name, c.Count, long(c.Length), long(c.Width), long(c.Thickness), plankName(c.Stock), c.Way})
		}
	}
	return l
}

// boring lists the holes of one edge rib of each piece of an arch.
func (s Shop) boring() ShopList {
	l := ShopList{Name: "boring", Holes: true, head: []string{"pattern", "strap", "screw", "along_back", "down", "depth"}}
	for _, r := range s.Shop.Ribs.Get() {
		for _, h := range r.Holes {
			l.rows = append(l.rows, []any{r.Name, h.Strap, h.Screw, long(h.Back), long(h.Down), long(h.Depth)})
		}
	}
	return l
}

// stations lists all running dimensions: each step is the difference of the places
// as they are printed, so that the steps add up.
func (s Shop) stations(patterns []shop.Pattern) ShopList {
	l := ShopList{Name: "stations", Holes: true, head: []string{"pattern", "run", "station", "at", "step"}}
	units := s.Assessment.Ceiling.Units
	step := listStep[units]
	unit := step.size / math.Pow10(step.decimals)
	for _, p := range patterns {
		for _, run := range p.Runs {
			before := 0.0
			for _, stop := range append(append([]shop.Stop{}, run.Stations...), shop.Stop{Name: "right end", At: run.Length}) {
				at := rounded(units, stop.At)
				l.rows = append(l.rows, []any{p.Name, run.Name, stop.Name, long(at * unit), long((at - before) * unit)})
				before = at
			}
		}
	}
	return l
}

// sheets lists where each piece of the skin lies on its sheet.
func (s Shop) sheets() ShopList {
	l := ShopList{Name: "sheets", head: []string{"sheet", "x", "y", "around", "along", "mark", "layer"}}
	n := s.Shop.Sheets.Get()
	l.err = n.Err
	for _, p := range n.Pieces {
		l.rows = append(l.rows, []any{p.Sheet, long(p.X), long(p.Y), long(p.Around), long(p.Along), p.Mark, p.Layer})
	}
	return l
}

// marks lists all pieces, panel by panel in the order of raising.
func (s Shop) marks() ShopList {
	l := ShopList{Name: "marks", head: []string{"mark", "what", "panel", "piece", "length", "width", "depth"}}
	all := s.Shop.Marks.Get()
	l.err = all.Err
	for _, m := range all.List {
		l.rows = append(l.rows, []any{m.Mark, kindNames[m.Kind], m.Panel, m.Piece, long(m.Length), long(m.Width), long(m.Depth)})
	}
	return l
}

var kindNames = map[layout.PieceKind]string{
	layout.Rib: "rib", layout.HalfRib: "half rib", layout.Rail: "rail", layout.HalfRail: "half rail", layout.SkinSheet: "skin",
}

// blocks lists those between the framing, for straps that meet no member.
func (s Shop) blocks() ShopList {
	l := ShopList{Name: "blocks", Holes: true, head: []string{"station", "straps", "from", "to", "length"}}
	for _, b := range shop.Blocks(s.Assessment.Ceiling) {
		l.rows = append(l.rows, []any{b.Station, b.Straps, long(b.From), long(b.To), long(b.Length)})
	}
	return l
}

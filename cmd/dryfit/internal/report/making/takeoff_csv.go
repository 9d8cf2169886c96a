package making

import (
	"encoding/csv"
	"io"
	"strconv"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/spec/quantity"
)

// takeoffColumn is a column of the table: of text, or of numbers in one unit.
type takeoffColumn struct {
	key, name string
	unit      quantity.Unit // zero: text
}

var takeoffColumns = []takeoffColumn{
	{"group", "group", 0},
	{"mark", "mark", 0},
	{"name", "name", 0},
	{"material", "material", 0},
	{"count", "count", quantity.One},
	{"length", "length", quantity.Metre},
	{"width", "width", quantity.Metre},
	{"depth", "depth", quantity.Metre},
	{"strips", "strips in each", quantity.One},
	{"strip", "strip thickness", quantity.Metre},
	{"pieces", "pieces in all skins", quantity.One},
	{"volume", "finished volume", quantity.CubicMetre},
	{"waste", "waste", quantity.Fraction},
	{"boards", "board measure (bd.ft)", quantity.One},
	{"mass", "mass", quantity.Kilogram},
}

// takeoffLine is one line: texts, and numbers in SI, of which nought stands for
// none.
type takeoffLine struct {
	group, mark, name, material string
	numbers                     map[string]float64
}

func (t Takeoff) lines() []takeoffLine {
	var out []takeoffLine
	for _, p := range t.Pieces {
		n := map[string]float64{"count": float64(p.Count), "length": p.Length, "width": p.Width, "depth": p.Depth, "mass": p.Mass}
		if p.Strips > 0 {
			n["strips"], n["strip"] = p.Strips, p.StripThickness
		}
		out = append(out, takeoffLine{"piece", p.Mark, p.Name, p.Material, n})
	}
	for _, b := range t.Boards {
		out = append(out, takeoffLine{"lumber", "", "board measure", b.Species, map[string]float64{
			"volume": b.Volume, "waste": b.Waste, "boards": b.BoardFeet,
		}})
	}
	for _, s := range t.Sheets {
		name := "stock sheet"
		if s.Err != nil {
			name += ", " + s.Err.Error()
		}
		out = append(out, takeoffLine{"sheet", "", name, s.Material, map[string]float64{
			"count": float64(s.Count), "length": s.Bent, "width": s.Straight, "depth": s.Thickness, "pieces": float64(s.Pieces),
		}})
	}
	for _, h := range t.Hardware {
		out = append(out, takeoffLine{"hardware", h.Mark, h.Name, "", map[string]float64{"count": float64(h.Count), "length": h.Length, "mass": h.Mass}})
	}
	return append(out,
		takeoffLine{"weight", "", "heaviest panel", "", map[string]float64{"count": 1, "mass": t.PanelMass}},
		takeoffLine{"weight", "", "all panels", "", map[string]float64{"count": float64(t.Panels), "mass": t.Mass}},
	)
}

// TakeoffCSV writes the takeoff as a table for a spreadsheet: numbers in the unit
// that the head names, and no text that begins a formula.
func TakeoffCSV(w io.Writer, t Takeoff) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	cells := make([]string, len(takeoffColumns))
	for i, column := range takeoffColumns {
		cells[i] = column.name + show.CSVUnitOf(t.Ceiling.Units, column.unit).Head()
	}
	if err := c.Write(cells); err != nil {
		return err
	}
	for _, l := range t.lines() {
		texts := map[string]string{"group": l.group, "mark": l.mark, "name": l.name, "material": l.material}
		for i, column := range takeoffColumns {
			switch x := l.numbers[column.key]; {
			case column.unit == 0:
				cells[i] = show.PlainCell(show.Safe(texts[column.key]))
			case x == 0:
				cells[i] = ""
			case column.unit == quantity.One && x == float64(int(x)):
				cells[i] = strconv.Itoa(int(x))
			default:
				cells[i] = show.CSVUnitOf(t.Ceiling.Units, column.unit).Number(x)
			}
		}
		if err := c.Write(cells); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

package making

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/stock"
	"dryfit/spec/quantity"
)

// Takeoff is the takeoff of one spec.
type Takeoff struct {
	Path    string
	Ceiling *layout.Ceiling
	stock.Takeoff
}

// row is one line of the takeoff, as it is printed.
type row struct {
	Group, mark, name, material, count, length, width, depth, from, mass string
}

// Cells are the texts of a line, from the group to the mass.
func (r row) Cells() []string {
	return []string{r.Group, r.mark, r.name, r.material, r.count, r.length, r.width, r.depth, r.from, r.mass}
}

// Rows are the lines of the takeoff, in the ceiling's units.
func (t Takeoff) Rows() []row {
	u := t.Ceiling.Units
	length := func(m float64) string {
		if m == 0 {
			return ""
		}
		return u.Format(quantity.Length(m).Value())
	}
	mass := func(kg float64) string {
		if kg == 0 {
			return ""
		}
		return u.Format(quantity.Mass(kg).Value())
	}
	var out []row
	for _, p := range t.Pieces {
		from := ""
		if p.Strips > 0 {
			from = fmt.Sprintf("%.4g strips of %s", p.Strips, length(p.StripThickness))
			if p.Halves > 1 {
				from = fmt.Sprintf("%d halves, mitred at the crown, each of %s", p.Halves, from)
			}
		}
		out = append(out, row{"piece", p.Mark, p.Name, p.Material, fmt.Sprint(p.Count), length(p.Length), length(p.Width), length(p.Depth), from, mass(p.Mass)})
	}
	for _, b := range t.Boards {
		out = append(out, row{
			Group: "lumber", name: "board measure", material: b.Species, count: fmt.Sprintf("%.0fbd.ft", b.BoardFeet),
			from: bought(u, b),
		})
	}
	for _, s := range t.Sheets {
		count, from := fmt.Sprint(s.Count), fmt.Sprintf("for %d pieces of the skin", s.Pieces)
		if s.Err != nil {
			count, from = "", s.Err.Error()
		}
		out = append(out, row{
			Group: "sheet", name: "stock sheet", material: s.Material, count: count,
			length: length(s.Bent), width: length(s.Straight), depth: length(s.Thickness), from: from,
		})
	}
	for i, h := range t.Hardware {
		from := ""
		if h.Measured && i == 0 { // all that are stand first
			from = "as measured, cut to " + u.CutStep()
		}
		out = append(out, row{Group: "hardware", mark: h.Mark, name: h.Name, count: fmt.Sprint(h.Count), length: length(h.Length), from: from, mass: mass(h.Mass)})
	}
	return append(out,
		row{Group: "weight", name: "heaviest panel", count: "1", mass: mass(t.PanelMass)},
		row{Group: "weight", name: "all pieces", count: fmt.Sprintf("%d panels", t.Panels), mass: mass(t.Mass)},
	)
}

// bought says what lumber is bought over what is finished, or that some is missing.
func bought(u quantity.System, b stock.Boards) string {
	finished := u.Format(quantity.Value{SI: b.Volume, Unit: quantity.CubicMetre}) + " finished"
	if b.Missing {
		return finished + "; some pieces can't be cut from any plank and are not included"
	}
	return fmt.Sprintf("%s, and %.0f%% for kerfs, planing, trim and defects", finished, 100*b.Waste)
}

// nameWide and markWide are the columns of a name and of the mark before it, in characters.
const (
	nameWide = 16
	markWide = 4
)

// named is the name of a line after its mark, in the groups that have marks.
func (r row) named() string {
	if r.Group != "piece" && r.Group != "hardware" {
		return r.name
	}
	return show.Pad(r.mark, markWide) + r.name
}

// TakeoffText writes the takeoff as a schedule.
func TakeoffText(w io.Writer, t Takeoff) error {
	x := show.NewTexter(w, false)
	p := t.Ceiling.Project
	x.Line(show.Shown(t.Path))
	for _, l := range show.Wrap("takeoff: "+show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), show.TextWidth) {
		x.Line(l)
	}
	widths := []int{nameWide, 20, 10, 11, 10, 10}
	group := ""
	for _, r := range t.Rows() {
		if r.Group != group {
			group = r.Group
			x.Line("")
			x.Line(map[string]string{
				"piece": "pieces: mark, count, finished length, width, depth, mass of all", "lumber": "lumber to buy",
				"sheet": "sheets to buy: count, bent edge, straight edge, thickness", "hardware": "hardware", "weight": "weight",
			}[group])
			x.Rule("─")
		}
		var b strings.Builder
		for i, cell := range []string{r.named(), r.material, r.count, r.length, r.width, r.depth} {
			b.WriteString(show.Pad(show.Shown(cell), widths[i]))
		}
		x.Line(strings.TrimRight(b.String(), " ") + strings.Repeat(" ", max(1, show.TextWidth-len([]rune(strings.TrimRight(b.String(), " ")))-len([]rune(r.mass)))) + r.mass)
		if r.from != "" {
			x.Line(strings.Repeat(" ", nameWide) + r.from)
		}
	}
	return x.Flush()
}

// mitredHalves are those of a rib that is glued in two; 0 of another.
func mitredHalves(p stock.Line) int {
	if p.Halves > 1 {
		return p.Halves
	}
	return 0
}

// TakeoffJSON writes the takeoff as one document, in SI.
func TakeoffJSON(w io.Writer, t Takeoff) error {
	type piece struct {
		Mark           string          `json:"mark"`
		Name           string          `json:"name"`
		Material       string          `json:"material"`
		Count          int             `json:"count"`
		Length         show.JSONNumber `json:"length"`
		Width          show.JSONNumber `json:"width"`
		Depth          show.JSONNumber `json:"depth"`
		Strips         show.JSONNumber `json:"strips,omitempty"`
		Halves         int             `json:"halves,omitempty"`
		StripThickness show.JSONNumber `json:"strip_thickness,omitempty"`
		Mass           show.JSONNumber `json:"mass"`
	}
	type boards struct {
		Species   string          `json:"species"`
		Volume    show.JSONNumber `json:"volume"`
		BoardFeet show.JSONNumber `json:"board_feet"`
		Waste     show.JSONNumber `json:"waste"`
		Missing   bool            `json:"missing,omitempty"`
	}
	type sheets struct {
		Material  string          `json:"material"`
		Straight  show.JSONNumber `json:"straight"`
		Bent      show.JSONNumber `json:"bent"`
		Thickness show.JSONNumber `json:"thickness"`
		Count     *int            `json:"count,omitempty"` // none where it is not computed
		Pieces    int             `json:"pieces"`
		Why       string          `json:"why,omitempty"`
	}
	type hardware struct {
		Mark   string          `json:"mark,omitempty"`
		Name   string          `json:"name"`
		Count  int             `json:"count"`
		Length show.JSONNumber `json:"length,omitempty"`
		Mass   show.JSONNumber `json:"mass,omitempty"`
		// Measured says that it is cut to the room as measured.
		Measured bool `json:"measured,omitempty"`
	}
	out := struct {
		Path      string          `json:"path"`
		Pieces    []piece         `json:"pieces"`
		Lumber    []boards        `json:"lumber"`
		Sheets    []sheets        `json:"sheets"`
		Hardware  []hardware      `json:"hardware"`
		PanelMass show.JSONNumber `json:"panel_mass"`
		Panels    int             `json:"panels"`
		Mass      show.JSONNumber `json:"mass"`
	}{Path: t.Path, Pieces: []piece{}, Lumber: []boards{}, Sheets: []sheets{}, Hardware: []hardware{}, PanelMass: show.JSONNumber(t.PanelMass), Panels: t.Panels, Mass: show.JSONNumber(t.Mass)}
	for _, p := range t.Pieces {
		out.Pieces = append(out.Pieces, piece{
			p.Mark, p.Name, p.Material, p.Count, show.JSONNumber(p.Length), show.JSONNumber(p.Width), show.JSONNumber(p.Depth),
			show.JSONNumber(p.Strips), mitredHalves(p), show.JSONNumber(p.StripThickness), show.JSONNumber(p.Mass),
		})
	}
	for _, b := range t.Boards {
		out.Lumber = append(out.Lumber, boards{b.Species, show.JSONNumber(b.Volume), show.JSONNumber(b.BoardFeet), show.JSONNumber(b.Waste), b.Missing})
	}
	for _, s := range t.Sheets {
		one := sheets{Material: s.Material, Straight: show.JSONNumber(s.Straight), Bent: show.JSONNumber(s.Bent), Thickness: show.JSONNumber(s.Thickness), Count: &s.Count, Pieces: s.Pieces}
		if s.Err != nil {
			one.Count, one.Why = nil, s.Err.Error()
		}
		out.Sheets = append(out.Sheets, one)
	}
	for _, h := range t.Hardware {
		out.Hardware = append(out.Hardware, hardware{h.Mark, h.Name, h.Count, show.JSONNumber(h.Length), show.JSONNumber(h.Mass), h.Measured})
	}
	return show.WriteJSON(w, out)
}

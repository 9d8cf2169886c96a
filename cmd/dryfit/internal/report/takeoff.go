package report

import (
	"fmt"
	"io"
	"strings"

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
	group, name, material, count, length, width, depth, from, mass string
}

func (r row) cells() []string {
	return []string{r.group, r.name, r.material, r.count, r.length, r.width, r.depth, r.from, r.mass}
}

func (t Takeoff) rows() []row {
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
		out = append(out, row{"piece", p.Name, p.Material, fmt.Sprint(p.Count), length(p.Length), length(p.Width), length(p.Depth), from, mass(p.Mass)})
	}
	for _, b := range t.Boards {
		out = append(out, row{
			group: "lumber", name: "board measure", material: b.Species, count: fmt.Sprintf("%.0fbd.ft", b.BoardFeet),
			from: bought(u, b),
		})
	}
	for _, s := range t.Sheets {
		count, from := fmt.Sprint(s.Count), fmt.Sprintf("for %d pieces of the skin", s.Pieces)
		if s.Err != nil {
			count, from = "", s.Err.Error()
		}
		out = append(out, row{
			group: "sheet", name: "stock sheet", material: s.Material, count: count,
			length: length(s.Bent), width: length(s.Straight), depth: length(s.Thickness), from: from,
		})
	}
	for i, h := range t.Hardware {
		from := ""
		if h.Measured && i == 0 { // all that are stand first
			from = "as measured, cut to " + u.CutStep()
		}
		out = append(out, row{group: "hardware", name: h.Name, count: fmt.Sprint(h.Count), length: length(h.Length), from: from, mass: mass(h.Mass)})
	}
	return append(out,
		row{group: "weight", name: "heaviest panel", count: "1", mass: mass(t.PanelMass)},
		row{group: "weight", name: "all pieces", count: fmt.Sprintf("%d panels", t.Panels), mass: mass(t.Mass)},
	)
}

// bought says what lumber is bought over what is finished, or that some is missing.
func bought(u quantity.System, b stock.Boards) string {
	finished := u.Format(quantity.Value{SI: b.Volume, Unit: quantity.CubicMetre}) + " finished"
	if b.Missing {
		return finished + "; some pieces come out of no plank, and are not in it"
	}
	return fmt.Sprintf("%s, and %.0f%% for kerfs, planing, trim and defects", finished, 100*b.Waste)
}

// TakeoffText writes the takeoff as a schedule.
func TakeoffText(w io.Writer, t Takeoff) error {
	x := newTexter(w, false)
	p := t.Ceiling.Project
	x.line(Shown(t.Path))
	for _, l := range wrap("takeoff: "+title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), textWidth) {
		x.line(l)
	}
	widths := []int{16, 20, 10, 11, 10, 10}
	group := ""
	for _, r := range t.rows() {
		if r.group != group {
			group = r.group
			x.line("")
			x.line(map[string]string{
				"piece": "pieces: count, finished length, width, depth, mass of all", "lumber": "lumber to buy",
				"sheet": "sheets to buy: count, bent edge, straight edge, thickness", "hardware": "hardware", "weight": "weight",
			}[group])
			x.rule("─")
		}
		var b strings.Builder
		for i, cell := range []string{r.name, r.material, r.count, r.length, r.width, r.depth} {
			b.WriteString(pad(Shown(cell), widths[i]))
		}
		x.line(strings.TrimRight(b.String(), " ") + strings.Repeat(" ", max(1, textWidth-len([]rune(strings.TrimRight(b.String(), " ")))-len([]rune(r.mass)))) + r.mass)
		if r.from != "" {
			x.line(strings.Repeat(" ", widths[0]) + r.from)
		}
	}
	return x.flush()
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
		Name           string     `json:"name"`
		Material       string     `json:"material"`
		Count          int        `json:"count"`
		Length         jsonNumber `json:"length"`
		Width          jsonNumber `json:"width"`
		Depth          jsonNumber `json:"depth"`
		Strips         jsonNumber `json:"strips,omitempty"`
		Halves         int        `json:"halves,omitempty"`
		StripThickness jsonNumber `json:"strip_thickness,omitempty"`
		Mass           jsonNumber `json:"mass"`
	}
	type boards struct {
		Species   string     `json:"species"`
		Volume    jsonNumber `json:"volume"`
		BoardFeet jsonNumber `json:"board_feet"`
		Waste     jsonNumber `json:"waste"`
		Missing   bool       `json:"missing,omitempty"`
	}
	type sheets struct {
		Material  string     `json:"material"`
		Straight  jsonNumber `json:"straight"`
		Bent      jsonNumber `json:"bent"`
		Thickness jsonNumber `json:"thickness"`
		Count     *int       `json:"count,omitempty"` // none where it is not computed
		Pieces    int        `json:"pieces"`
		Why       string     `json:"why,omitempty"`
	}
	type hardware struct {
		Name   string     `json:"name"`
		Count  int        `json:"count"`
		Length jsonNumber `json:"length,omitempty"`
		Mass   jsonNumber `json:"mass,omitempty"`
		// Measured says that it is cut to the room as measured.
		Measured bool `json:"measured,omitempty"`
	}
	out := struct {
		Path      string     `json:"path"`
		Pieces    []piece    `json:"pieces"`
		Lumber    []boards   `json:"lumber"`
		Sheets    []sheets   `json:"sheets"`
		Hardware  []hardware `json:"hardware"`
		PanelMass jsonNumber `json:"panel_mass"`
		Panels    int        `json:"panels"`
		Mass      jsonNumber `json:"mass"`
	}{Path: t.Path, Pieces: []piece{}, Lumber: []boards{}, Sheets: []sheets{}, Hardware: []hardware{}, PanelMass: jsonNumber(t.PanelMass), Panels: t.Panels, Mass: jsonNumber(t.Mass)}
	for _, p := range t.Pieces {
		out.Pieces = append(out.Pieces, piece{
			p.Name, p.Material, p.Count, jsonNumber(p.Length), jsonNumber(p.Width), jsonNumber(p.Depth),
			jsonNumber(p.Strips), mitredHalves(p), jsonNumber(p.StripThickness), jsonNumber(p.Mass),
		})
	}
	for _, b := range t.Boards {
		out.Lumber = append(out.Lumber, boards{b.Species, jsonNumber(b.Volume), jsonNumber(b.BoardFeet), jsonNumber(b.Waste), b.Missing})
	}
	for _, s := range t.Sheets {
		one := sheets{Material: s.Material, Straight: jsonNumber(s.Straight), Bent: jsonNumber(s.Bent), Thickness: jsonNumber(s.Thickness), Count: &s.Count, Pieces: s.Pieces}
		if s.Err != nil {
			one.Count, one.Why = nil, s.Err.Error()
		}
		out.Sheets = append(out.Sheets, one)
	}
	for _, h := range t.Hardware {
		out.Hardware = append(out.Hardware, hardware{h.Name, h.Count, jsonNumber(h.Length), jsonNumber(h.Mass), h.Measured})
	}
	return writeJSON(w, out)
}

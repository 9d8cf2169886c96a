package panel

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
)

// Running dimensions: from one origin, which a circle marks, along one line, by ISO 129-1
// (from memory). In mm.
const (
	runningOff   = 6   // of the line from the panel
	runningApart = 4.6 // the least between two figures
	originSize   = 1
)

// station is one running dimension: an arc length from the datum, and what lies there.
type station struct {
	at   float64
	name string
}

// running draws the stations along a line at one side of the panel. Where figures would
// meet, one is written farther on, and a line leads to it.
func (d *panelOf) running(side float64, stations []station) {
	slices.SortStableFunc(stations, func(a, b station) int { return cmp.Compare(a.at, b.at) })
	edge, anchor := d.at(0, 0).X-d.v.Size(d.c.Seam.Tenon.Length.Get()/2), paper.End
	if side > 0 {
		edge, anchor = d.at(d.long, 0).X, paper.Start
	}
	x := edge + side*runningOff
	origin := d.at(0, 0).Y
	d.b.Arc(paper.Circle(paper.Point{X: x, Y: origin}, originSize, pen.Hair))
	end := d.at(0, stations[len(stations)-1].at).Y
	d.b.Line(paper.Point{X: x, Y: origin + originSize}, paper.Point{X: x, Y: end}, pen.Hair)
	last := origin - runningApart
	for _, s := range stations {
		y := d.at(0, s.at).Y
		text := max(y, last+runningApart)
		last = text
		d.b.Line(paper.Point{X: edge + side*1.5, Y: y}, paper.Point{X: x + side*1.2, Y: y}, pen.Hair)
		if y-origin > originSize {
			d.arrowDown(paper.Point{X: x, Y: y})
		}
		at := paper.Point{X: x + side*3.4, Y: text}
		if text > y {
			d.b.Line(paper.Point{X: x + side*1.2, Y: y}, paper.Point{X: at.X - side*0.7, Y: text}, pen.Hair)
		}
		says := d.Dim(s.at)
		if s.name != "" {
			says += " " + s.name
		}
		d.b.Write(paper.Text{At: paper.Point{X: at.X, Y: at.Y + draft.Ordinary/2}, Height: draft.Ordinary, Anchor: anchor, Text: says})
	}
}

// arrowDown is the head of an arrow at a station, away from the origin.
func (d *panelOf) arrowDown(tip paper.Point) {
	d.b.Poly(paper.Poly{Points: []paper.Point{tip, {X: tip.X - 0.4, Y: tip.Y - 1.6}, {X: tip.X + 0.4, Y: tip.Y - 1.6}}, Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
}

// roomFor reports whether so many figures have room along the panel.
func (d *panelOf) roomFor(n int) bool { return float64(n)*runningApart <= d.v.Size(d.arc) }

// tenonStations are those of the seam: all, or the first two and the last.
func (d *panelOf) tenonStations() (out []station) {
	all := d.c.TenonStations(d.arc)
	if !d.roomFor(len(all)) || len(all) > 1 && d.v.Size(all[1]-all[0]) < runningApart {
		all = slices.Compact([]float64{all[0], all[min(1, len(all)-1)], all[len(all)-1]})
	}
	for _, s := range all {
		out = append(out, station{s, ""})
	}
	return out
}

// stations are the straps, the lifts, the crown and, where they have room, the rails.
func (d *panelOf) stations() []station {
	c := d.c
	out := []station{{d.arc, "arc"}}
	out = append(out, d.strapsAt()...)
	for i, share := range c.Lift.Stations.Get() {
		out = append(out, station{float64(share) * d.arc, fmt.Sprintf("lift %d", i+1)})
	}
	if crown := c.Vault.Arc.Get()/2 - d.from; crown > d.arc/100 && crown < d.arc*0.99 && d.roomFor(len(out)+1) {
		out = append(out, station{crown, "crown"})
	}
	var rails []station
	for _, s := range d.railsAt() {
		if s < roundOff || s > d.arc-roundOff {
			continue // the edges have their own
		}
		rails = append(rails, station{s, "rail " + draft.Letters(int(math.Round((d.from+s)/c.Grid.ModuleAround.Get())))})
	}
	if d.roomFor(len(out) + len(rails) + 1) {
		out = append(out, rails...)
	}
	return out
}

// strapsAt are the straps on the piece, from its upper edge: one over a seam is on the
// piece after it, as the shop bores them.
func (d *panelOf) strapsAt() (out []station) {
	if !d.c.Strap.Given() {
		return nil
	}
	from, to := d.c.Piece(d.piece)
	for i, share := range d.c.Strap.Stations.Get() {
		if s := float64(share) * d.c.Vault.Arc.Get(); d.c.Holds(from, to, s) {
			name := fmt.Sprintf("strap %d", i+1)
			if mark := d.strapMark(share); mark != "" {
				name += ", " + mark
			}
			out = append(out, station{s - from, name})
		}
	}
	return out
}

// ends names the sides of the panel, and what its upper and its lower edge are.
func (d *panelOf) ends() {
	top := d.at(0, 0)
	const over = 1.6
	near := "near end"
	if d.seams() {
		near += ", tenons"
	}
	d.b.Write(paper.Text{At: paper.Point{X: top.X - 2, Y: top.Y - over - 3}, Height: draft.Ordinary, Anchor: paper.End, Text: near})
	d.b.Write(paper.Text{At: paper.Point{X: d.at(d.long, 0).X + 2, Y: top.Y - over - 3}, Height: draft.Ordinary, Text: "far end"})
	if n := d.c.Panel.Around.Get(); n > 1 {
		d.b.Write(paper.Text{At: paper.Point{X: top.X + d.v.Size(d.long)/2, Y: top.Y - 16}, Height: draft.Large, Anchor: paper.Middle, Text: fmt.Sprintf("piece %d of %d", d.piece+1, n)})
	}
	d.b.Label(draft.Label{Text: d.upperEdge(), Of: d.at(d.long/2, 0), Prefer: []draft.Side{draft.Above}})
	d.b.Label(draft.Label{Text: d.lowerEdge(), Of: d.at(d.long/2, d.arc), Prefer: []draft.Side{draft.Below}})
}

// upperEdge is what the panel begins on.
func (d *panelOf) upperEdge() string {
	if d.piece == 0 {
		return "left springing"
	}
	return d.seamTo(d.piece - 1)
}

// lowerEdge is what it ends on.
func (d *panelOf) lowerEdge() string {
	if d.piece == d.c.Panel.Around.Get()-1 {
		return "right springing"
	}
	return d.seamTo(d.piece + 1)
}

func (d *panelOf) seamTo(piece int) string {
	if d.c.Panel.Around.Get() == 2 {
		return "crown seam"
	}
	return fmt.Sprintf("seam to piece %d", piece+1)
}

// edgeTenons draws the loose tenons of the seam to the next piece of the arch, and the
// mortises for those of the piece before.
func (d *panelOf) edgeTenons() {
	t := d.c.Seam.Tenon
	for _, x := range d.edgeStations() {
		if d.piece > 0 {
			d.b.Poly(paper.Poly{Points: d.box(x-t.Width.Get()/2, 0, x+t.Width.Get()/2, t.Length.Get()/2), Closed: true, Stroke: pen.Hidden})
		}
		if d.piece == d.c.Panel.Around.Get()-1 {
			continue
		}
		d.fill(paper.Paper+5, pen.Fine, x-t.Width.Get()/2, d.arc-t.Length.Get()/2, x+t.Width.Get()/2, d.arc+t.Length.Get()/2)
	}
}

// edgeStations are the tenons of a seam between two pieces of the arch, from the near end.
func (d *panelOf) edgeStations() []float64 {
	all := d.c.TenonStations(d.c.Panel.Length.Get())
	for i := range all {
		all[i] += d.near
	}
	return all
}

// pieceNote says how the drawing is read, and of a split arch how the others differ.
func (d *panelOf) pieceNote() paper.Note {
	c := d.c
	lines := []string{
		"Unrolled on the intrados and reflected, like the plan: the near end is on the left, the left springing at the top.",
		"Running dimensions are along the arc from the piece's upper edge. Straps and lifts have their numbers from the left, rails the letters of the plan.",
		fmt.Sprintf("Rails: %d × %s.", d.modules(), d.Length(c.Grid.ModuleAround.Get())),
		"The skin is behind the frame. Dashed: where its sheets meet.",
	}
	if n := len(d.tenons()); n > 0 {
		lines[len(lines)-1] += fmt.Sprintf(" %d tenons stand in the near seam, %s apart.", n, d.tenonsApart())
	}
	if n := c.Panel.Around.Get(); n > 1 {
		lines = append(lines, fmt.Sprintf("Each seam between two pieces has %d tenons, from the near end: %s. Pieces of the same chord and rise share one true arc.",
			c.Seam.TenonsInEdge.Get(), d.lengths(d.edgeStations())))
		if n > mostPieces {
			lines = append(lines, fmt.Sprintf("Pieces 3 to %d are not drawn: their edges are as in piece 2; their straps are on the sheet of straps.", n-1))
		}
	}
	return paper.Note{Title: "How it is drawn", Lines: lines}
}

func (d *panelOf) tenonsApart() string {
	all := d.c.TenonStations(d.arc)
	if len(all) < 2 {
		return "none"
	}
	return d.Length(all[1] - all[0])
}

// lengths lists some.
func (d *panelOf) lengths(all []float64) string {
	out := ""
	for i, l := range all {
		if i > 0 {
			out += ", "
		}
		out += d.Length(l)
	}
	return out
}

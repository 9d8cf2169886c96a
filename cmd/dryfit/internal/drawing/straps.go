package drawing

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

// strapsOf keeps what the strap diagram is drawn from.
type strapsOf struct {
	sheet.Input
	c      *layout.Ceiling
	h      *hanging.Hanging
	first  hanging.First
	shape  []hanging.Station // as first hung
	cases  []strapCase
	most   float64 // greatest force drawn, N
	b      *draft.Board
	places map[int]paper.Point
}

// strapCase is a row of forces, one a strap: of one case, or the worst of
// several.
type strapCase struct {
	name   string
	forces []float64
}

// What the diagrams take on paper, in mm.
const (
	tallestBar  = 34
	momentShown = 13
	moveShown   = 9
	between     = 46 // one figure and the next
	legendWide  = 48 // of an entry of the legend
	legendRow   = 3  // entries in a row
)

// straps is the strap diagram of one edge rib: forces, moments, movement.
func straps(in sheet.Input) (*sheet.Subject, error) {
	h := in.Assessment.Results.Hanging()
	err := h.Err()
	var needs *hanging.NeedsError
	switch {
	case errors.As(err, &needs):
		return nil, &sheet.NeedsError{Sheet: "straps", Key: needs.Key}
	case err != nil:
		return nil, &sheet.NeedsError{Sheet: "straps", Key: "a frame that can be solved: " + err.Error()}
	}
	c := in.Ceiling()
	d := &strapsOf{Input: in, c: c, h: h, first: h.First.Get().Is, cases: strapCases(h)}
	d.shape = d.first.Shape()
	for _, row := range d.cases {
		for _, f := range row.forces {
			d.most = max(d.most, f)
		}
	}
	return &sheet.Subject{
		Name: "straps", Title: "Straps of one edge rib",
		About: fmt.Sprintf("The force on each strap by case, at most %s, the bending moment and the movement of the rib as first hung.", in.Format(quantity.Force(d.most).Value())),
		Wide:  c.Vault.Width.Get(), High: 3 * c.Vault.Rise.Get(),
		Left: 22, Right: 34, Above: tallestBar + 26 + 2*between, Below: 18, Best: 20, LeastWide: legendRow * legendWide,
		Shows: []string{"strap", "rib.sag", "room.above", "room.framing"},
		Notes: []paper.Note{{Title: "Forces by case, straps from the left", Lines: d.table()}, cutStraps(in), {Title: "How it was computed", Lines: d.remarks()}},
		Draw:  d.draw,
	}, nil
}

// strapCases are the cases of the envelope and, apart from it, the worst of one
// strap lost.
func strapCases(h *hanging.Hanging) []strapCase {
	var out []strapCase
	one := func(name string, c *hanging.Case) {
		if c != nil && len(c.Straps) > 0 {
			out = append(out, strapCase{name, c.Straps})
		}
	}
	worst := func(name string, list []hanging.Case) {
		var most []float64
		for _, c := range list {
			for i, f := range c.Straps {
				if i >= len(most) {
					most = append(most, 0)
				}
				most[i] = max(most[i], f)
			}
		}
		if most != nil {
			out = append(out, strapCase{name, most})
		}
	}
	first := h.First.Get().Is.Case
	one("first hung", &first)
	one("each piece alone", h.Alone.Get().Is)
	packed := h.Seated.Get().Is
	if p := h.Packed.Get().Is; p != nil {
		packed = append([]hanging.Case{*p}, packed...)
	}
	worst("ledgers packed", packed)
	worst("one set long or short", h.Set.Get().Is.Cases)
	worst("framing moved", h.Moved.Get().Is)
	worst(inDry, inSeason(h, "dry"))
	worst(inWet, inSeason(h, "wet"))
	worst("lifts going down", h.Lowered.Get().Is)
	worst("one strap lost", h.Lost.Get().Is)
	return out
}

// The rows of the seasons.
const (
	inDry = "in the dry season"
	inWet = "in the wet season"
)

// inSeason are the cases of one of them, in whichever state the rib was hung.
func inSeason(h *hanging.Hanging, season string) (out []hanging.Case) {
	for _, c := range h.Seasonal.Get().Is {
		if c.Season == season {
			out = append(out, c)
		}
	}
	return out
}

// said is what stands over the bars of a strap: its number, its worst force, and the
// worst of each season.
func (d *strapsOf) said(strap int, worst float64) string {
	text := fmt.Sprintf("strap %d\n%s", strap+1, d.Format(quantity.Force(worst).Value()))
	for _, row := range d.cases {
		short := map[string]string{inDry: "dry", inWet: "wet"}[row.name]
		if short != "" {
			text += fmt.Sprintf("\n%s %s", short, d.Format(quantity.Force(row.forces[strap]).Value()))
		}
	}
	return text
}

// table lists the forces, and what goes slack.
func (d *strapsOf) table() []string {
	var out []string
	for i, row := range d.cases {
		text := fmt.Sprintf("%c %s:", 'a'+i, row.name)
		for _, f := range row.forces {
			text += " " + d.Format(quantity.Force(f).Value())
		}
		out = append(out, text)
	}
	return out
}

func (d *strapsOf) remarks() []string {
	out := []string{
		fmt.Sprintf("One edge rib carries %s; the two of a panel carry %s.", d.Format(quantity.Force(d.h.Weight.Get()).Value()), d.Format(quantity.Force(2*d.h.Weight.Get()).Value())),
		"Straps carry tension only. The computation holds the rib sideways at its crown, but nothing in the spec does.",
		"A row of several cases shows the worst force of each strap; a season includes each strap set long and short. Moments are drawn on the tension side.",
	}
	if a := d.c.Strap.Allowable; a.Given() {
		out = append(out, fmt.Sprintf("Allowable %s, by %s: beside the bars of each strap a line ends at it, or an arrow points up to it.", d.Format(quantity.Force(a.Load.Get()).Value()), a.Source.Get()))
	}
	return out
}

func (d *strapsOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	// From the top: forces, moments, movement.
	rise := d.c.Vault.Rise.Get()
	over := (d.c.Vault.Width.Get() - d.c.Vault.Span.Get()) / 2
	figure := func(k int) draft.View {
		o := v.At(over, rise*float64(2-k))
		o.Y -= float64(2-k) * between
		return draft.View{Origin: o, Scale: v.Scale}
	}
	b.In("forces", func() { d.forces(figure(0)) })
	b.In("moments", func() { d.moments(figure(1)) })
	b.In("movement", func() { d.movement(figure(2)) })
	return d.places
}

// axis draws the rib's centre line.
func (d *strapsOf) axis(v draft.View, s paper.Stroke) {
	var points []paper.Point
	for _, n := range d.shape {
		points = append(points, v.At(n.Y, n.Z))
	}
	d.b.Poly(paper.Poly{Points: points, Stroke: s})
}

// node is the station of the rib nearest to an arc length.
func (d *strapsOf) node(s float64) hanging.Station {
	best := d.shape[0]
	for _, n := range d.shape {
		if math.Abs(n.At-s) < math.Abs(best.At-s) {
			best = n
		}
	}
	return best
}

// forces draws a bar for each case over each strap.
func (d *strapsOf) forces(v draft.View) {
	d.axis(v, pen.Bold)
	stations := d.c.Strap.Stations.Get()
	scale := tallestBar / max(d.most, 1e-9) // mm for a newton
	apart := math.Inf(1)
	for i := range stations {
		if i > 0 {
			a, b := d.node(float64(stations[i-1])*d.c.Vault.Arc.Get()), d.node(float64(stations[i])*d.c.Vault.Arc.Get())
			apart = min(apart, v.Size(b.Y-a.Y))
		}
	}
	bar := min(2.4, 0.8*apart/float64(len(d.cases)))
	for i, share := range stations {
		n := d.node(float64(share) * d.c.Vault.Arc.Get())
		foot := v.At(n.Y, n.Z)
		worst := 0.0
		for k, row := range d.cases {
			x := foot.X + bar*(float64(k)-float64(len(d.cases))/2)
			h := row.forces[i] * scale
			d.b.Poly(paper.Poly{
				Points: []paper.Point{{X: x, Y: foot.Y - 1}, {X: x + bar, Y: foot.Y - 1}, {X: x + bar, Y: foot.Y - 1 - h}, {X: x, Y: foot.Y - 1 - h}},
				Closed: true, Tone: paper.Paper + paper.Tone(1+k), Stroke: pen.Hair,
			})
			worst = max(worst, row.forces[i])
		}
		top := paper.Point{X: foot.X, Y: foot.Y - 1 - worst*scale}
		d.allowable(paper.Point{X: foot.X - bar*float64(len(d.cases))/2 - 1.4, Y: foot.Y - 1}, scale, worst)
		d.b.Label(draft.Label{Text: d.said(i, worst), Of: top, Prefer: []draft.Side{draft.Above}})
		d.AtStation(d.places, foot, d.c.Strap.Stations.Place(i))
	}
	d.legend(v, bar, scale)
	d.At(d.places, v.At(d.node(float64(stations[0])*d.c.Vault.Arc.Get()).Y, d.node(float64(stations[0])*d.c.Vault.Arc.Get()).Z), "strap")
	d.At(d.places, v.At(d.node(d.c.Vault.Arc.Get()/2).Y, d.node(d.c.Vault.Arc.Get()/2).Z), "rib.sag", "room")
}

// allowable draws beside the bars of a strap how far up its allowable lies: a line, or
// where that is far over the bars an arrow that points to it.
func (d *strapsOf) allowable(foot paper.Point, scale, worst float64) {
	a := d.c.Strap.Allowable
	if !a.Given() {
		return
	}
	up := a.Load.Get() * scale
	if most := worst*scale + 3; up > most {
		tip := paper.Point{X: foot.X, Y: foot.Y - most}
		d.b.Line(foot, tip, pen.Hair)
		d.b.Poly(paper.Poly{Points: []paper.Point{tip, {X: tip.X - 0.6, Y: tip.Y + 2}, {X: tip.X + 0.6, Y: tip.Y + 2}}, Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
		return
	}
	d.b.Line(foot, paper.Point{X: foot.X, Y: foot.Y - up}, pen.Hair)
	d.b.Line(paper.Point{X: foot.X - 1, Y: foot.Y - up}, paper.Point{X: foot.X + 1, Y: foot.Y - up}, pen.Cut)
}

// legend says under the figure which tone is which case, and the scale of the
// bars.
func (d *strapsOf) legend(v draft.View, bar, scale float64) {
	x, y := v.At(0, 0).X, v.At(0, 0).Y+9
	force := draft.Round(d.most)
	d.b.Write(paper.Text{At: paper.Point{X: x, Y: y}, Height: draft.Ordinary, Text: fmt.Sprintf("force on each strap; %s is", d.Format(quantity.Force(force).Value()))})
	length := force * scale
	from := x + paper.TextWidth(fmt.Sprintf("force on each strap; %s is", d.Format(quantity.Force(force).Value())), draft.Ordinary) + 2
	d.b.Line(paper.Point{X: from, Y: y - 1}, paper.Point{X: from + length, Y: y - 1}, pen.Bold)
	for k := range d.cases {
		at, row := x+float64(k%legendRow)*legendWide, y+6+draft.Leading(draft.Ordinary)*float64(k/legendRow)
		d.b.Poly(paper.Poly{
			Points: []paper.Point{{X: at, Y: row - 2.4}, {X: at + 2.4, Y: row - 2.4}, {X: at + 2.4, Y: row}, {X: at, Y: row}},
			Closed: true, Tone: paper.Paper + paper.Tone(1+k), Stroke: pen.Hair,
		})
		d.b.Write(paper.Text{At: paper.Point{X: at + 3.6, Y: row}, Height: draft.Ordinary, Text: fmt.Sprintf("%c %s", 'a'+k, d.cases[k].name)})
	}
}

// normal is the direction away from the room at a station, on paper.
func (d *strapsOf) normal(n hanging.Station) (x, y float64) {
	in, out := d.c.Vault.Intrados.Get().Tangents(n.At)
	x, y = -in.Z-out.Z, -in.Y-out.Y
	long := math.Hypot(x, y)
	return x / long, y / long
}

// moments draws the bending moment as first hung, on the side that it
// stretches.
func (d *strapsOf) moments(v draft.View) {
	most := 0.0
	worst := d.shape[0]
	for _, n := range d.shape {
		if m := math.Abs(n.Moment); m > most*(1+hanging.Alike) {
			most, worst = m, n
		}
	}
	d.axis(v, pen.Bold)
	if most == 0 {
		return
	}
	scale := momentShown / most
	place := func(n hanging.Station) paper.Point {
		p := v.At(n.Y, n.Z)
		x, y := d.normal(n)
		return paper.Point{X: p.X - x*n.Moment*scale, Y: p.Y - y*n.Moment*scale}
	}
	points := []paper.Point{v.At(d.shape[0].Y, d.shape[0].Z)}
	for _, n := range d.shape {
		points = append(points, place(n))
	}
	last := d.shape[len(d.shape)-1]
	points = append(points, v.At(last.Y, last.Z))
	d.b.Poly(paper.Poly{Points: points, Stroke: pen.Edge})
	d.b.Label(draft.Label{
		Text: fmt.Sprintf("greatest moment %s", d.Format(quantity.Value{SI: most, Unit: quantity.NewtonMetre})),
		Of:   place(worst), Prefer: []draft.Side{draft.Above, draft.Below},
	})
	d.caption(v, "bending moment as first hung")
}

// movement draws the rib as it was and as it hangs, its movement multiplied.
func (d *strapsOf) movement(v draft.View) {
	most := 0.0
	for _, n := range d.shape {
		most = max(most, math.Hypot(n.MoveY, n.MoveZ))
	}
	d.axis(v, pen.Hidden)
	if most == 0 {
		return
	}
	factor := draft.Round(moveShown / v.Size(most))
	var points []paper.Point
	for _, n := range d.shape {
		points = append(points, v.At(n.Y+factor*n.MoveY, n.Z+factor*n.MoveZ))
	}
	d.b.Poly(paper.Poly{Points: points, Stroke: pen.Bold})
	d.caption(v, fmt.Sprintf("movement as first hung, drawn %g times; sag %s in the long term on a run of %s",
		factor, d.Length(d.first.Sag.Drop), d.Length(d.first.Sag.Run)))
}

// caption names a figure under its left foot.
func (d *strapsOf) caption(v draft.View, text string) {
	p := v.At(0, 0)
	d.b.Label(draft.Label{Text: text, Of: paper.Point{X: p.X + v.Size(d.c.Vault.Span.Get())/2, Y: p.Y + 10}, Inside: true})
}

// strapsParts is the diagram with its legend under the right margin too.
func strapsParts(in sheet.Input, _ draft.Size) ([]*sheet.Subject, error) {
	s, err := straps(in)
	if err == nil {
		s.LeastWide -= s.Right
	}
	return []*sheet.Subject{s}, err
}

// cutStraps is the note of what the straps of each panel are cut to.
func cutStraps(in sheet.Input) paper.Note {
	n := paper.Note{Title: "Straps to cut, as measured"}
	v := in.Assessment.Results.Survey()
	for i, of := range v.Cuts() {
		if i == 0 {
			n.Lines = append(n.Lines, fmt.Sprintf("From the left, two of each, with the lap at both ends, rounded to %s (common practice).", in.Ceiling().Units.CutStep()))
		}
		var lengths []string
		for _, length := range of {
			lengths = append(lengths, in.Length(length))
		}
		n.Lines = append(n.Lines, v.Name(i)+": "+strings.Join(lengths, ", "))
	}
	return n
}

package panel

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/stock"
)

// panelOf keeps what a developed panel is drawn from.
type panelOf struct {
	sheet.Input
	c      *layout.Ceiling
	b      *draft.Board
	v      draft.View
	bays   int
	long   float64 // along the axis
	near   float64 // by how much the rib at the near end is wider than a half
	far    float64 // and that at the far end
	arc    float64
	piece  int     // of a split arch, from nought at the left springing
	from   float64 // along the whole arch, where the piece begins
	shape  trueArc
	beside bool // it is drawn beside the panel
	wood   stock.Takeoff
	places map[int]paper.Point
}

// at is a place of the panel: along the axis, and around from its left end,
// which is at the top.
func (d *panelOf) at(x, s float64) paper.Point { return d.v.At(x, d.arc-s) }

func (d *panelOf) box(x0, s0, x1, s1 float64) []paper.Point {
	return []paper.Point{d.at(x0, s0), d.at(x1, s0), d.at(x1, s1), d.at(x0, s1)}
}

func (d *panelOf) fill(t paper.Tone, s paper.Stroke, x0, s0, x1, s1 float64) {
	d.b.Poly(paper.Poly{Points: d.box(x0, s0, x1, s1), Closed: true, Tone: t, Stroke: s})
}

func (d *panelOf) draw(b *draft.Board, v draft.View) {
	d.b, d.v = b, v
	if d.beside {
		d.besidePanel()
		b.Figure()
	}
	b.In("rails", d.rails)
	b.In("ribs", d.ribs)
	b.In("sheets", d.sheets)
	b.In("joints", d.joints)
	b.In("lifts", d.lifts)
	b.In("running", func() {
		if d.seams() {
			d.running(-1, d.tenonStations())
		}
		d.running(1, d.stations())
	})
	d.dims()
	d.ends()
	d.marks()
	if d.piece == 0 {
		d.bite()
	}
}

// modules is how many coffers the panel has around.
func (d *panelOf) modules() int { return max(1, int(math.Round(d.arc/d.c.Grid.ModuleAround.Get()))) }

// railsAt are the middles of the rails around, from the piece's upper edge; at an edge
// that is on the grid lies a half, and at one that is not none.
func (d *panelOf) railsAt() (out []float64) {
	for _, p := range d.c.Rails(d.from, d.from+d.arc, 1) {
		if at := p.At - d.from; len(out) == 0 || at > out[len(out)-1]+roundOff {
			out = append(out, at)
		}
	}
	return out
}

// bay is from where to where a bay lies clear between two ribs.
func (d *panelOf) bay(i int) (x0, x1 float64) {
	w := d.c.Rib.Width.Get() / 2
	return d.ribAt(i) + w, d.ribAt(i+1) - w
}

// ribAt is the middle of a rib, which at the edge of a half is its cut face.
func (d *panelOf) ribAt(i int) float64 {
	return d.near + (d.long-d.near-d.far)*float64(i)/float64(d.bays)
}

// seams reports whether the panel meets another one along the axis.
func (d *panelOf) seams() bool { return d.c.Panel.Along.Get() > 1 }

func (d *panelOf) rails() {
	for i := range d.bays {
		x0, x1 := d.bay(i)
		for _, s := range d.railsAt() {
			half := d.c.Rail.Width.Get() / 2
			d.fill(paper.Paper+1, pen.Edge, x0, max(0, s-half), x1, min(d.arc, s+half))
		}
	}
}

func (d *panelOf) ribs() {
	for i := range d.bays + 1 {
		x := d.ribAt(i)
		x0, x1 := max(0, x-d.c.Rib.Width.Get()/2), min(d.long, x+d.c.Rib.Width.Get()/2)
		d.fill(paper.Paper+2, pen.Bold, x0, 0, x1, d.arc)
	}
	if r := d.c.Grid.Reveal; r.Given() && r.At.Get() == "seam" && d.v.Size(r.Width.Get()) > 0.8 {
		for _, x := range []float64{r.Width.Get() / 2, d.long - r.Width.Get()/2} {
			d.b.Line(d.at(x, 0), d.at(x, d.arc), pen.Hair)
		}
	}
}

// sheets draws where the skin's pieces meet, behind the frame.
func (d *panelOf) sheets() {
	if !d.c.SkinSheets().FitsAround {
		return // which a finding says
	}
	for _, at := range d.c.SheetsAround(d.piece).Joints {
		d.b.Line(d.at(0, at), d.at(d.long, at), pen.Hidden)
	}
	along := d.c.SkinSheets().Along
	for i := 1; i < along; i++ {
		x := d.long * float64(i) / float64(along)
		d.b.Line(d.at(x, 0), d.at(x, d.arc), pen.Hidden)
	}
}

// tenons are the stations of the loose tenons of the seam with the next panel, none
// without one.
func (d *panelOf) tenons() []float64 {
	if !d.seams() {
		return nil
	}
	return d.c.TenonStations(d.arc)
}

// joints draws the tenons of one side, which project, the mortises of the
// other, and the straps.
func (d *panelOf) joints() {
	c := d.c
	t := c.Seam.Tenon
	for _, s := range d.tenons() {
		d.fill(paper.Paper+5, pen.Fine, -t.Length.Get()/2, s-t.Width.Get()/2, t.Length.Get()/2, s+t.Width.Get()/2)
		d.b.Poly(paper.Poly{Points: d.box(d.long-t.Length.Get()/2, s-t.Width.Get()/2, d.long, s+t.Width.Get()/2), Closed: true, Stroke: pen.Hidden})
	}
	d.edgeTenons()
	if !c.Strap.Given() {
		return
	}
	width := 0.03
	if w := c.Strap.Width; w.Given() {
		width = w.Get()
	}
	for _, strap := range d.strapsAt() {
		s := strap.at
		near, _ := d.bay(0)
		_, far := d.bay(d.bays - 1)
		half := c.Rib.Width.Get() / 12 // of what is drawn of it
		for _, x := range []float64{near / 2, (d.long + far) / 2} {
			d.fill(paper.Ink, pen.Hair, x-half, s-width/2, x+half, s+width/2)
		}
	}
}

func (d *panelOf) lifts() {
	l := d.c.Lift
	if len(l.Stations.Get()) == 0 {
		return
	}
	for i, share := range l.Stations.Get() {
		s := float64(share) * d.arc
		d.b.Line(d.at(-0.02, s), d.at(d.long+0.02, s), pen.Centre)
		d.AtStation(d.places, d.at(d.long*0.6, s), l.Stations.Place(i))
	}
}

func (d *panelOf) dims() {
	c := d.c
	x0, x1 := d.bay(0)
	whole, each := c.Units.Chain(x0, x1-x0, d.long-x1)
	d.b.Dim(draft.Dim{From: d.at(x0, d.arc), To: d.at(x1, d.arc), Side: draft.Below, Text: "rails " + d.Bare(each[1])})
	d.b.Dim(draft.Dim{From: d.at(0, d.arc), To: d.at(x0, d.arc), Side: draft.Below, Text: d.Bare(each[0])})
	d.b.Dim(draft.Dim{From: d.at(0, d.arc), To: d.at(d.long, d.arc), Side: draft.Below, Text: "panel " + d.Bare(whole)})
	if joints := c.SheetsAround(d.piece).Joints; c.SkinSheets().FitsAround && len(joints) > 0 {
		d.b.Label(draft.Label{Text: "sheets meet on the rail", Of: d.at(x0+(x1-x0)*0.7, joints[0]), Prefer: []draft.Side{draft.Below, draft.Above}})
	}
}

func (d *panelOf) bite() {
	c := d.c
	m := c.Grid.ModuleAround.Get()
	in := d.Input
	in.At(d.places, d.at(0, c.TenonStations(d.arc)[0]), "seam")
	in.At(d.places, d.at(d.long*0.8, m*0.3), "skin") // off the middle, where labels are
	in.At(d.places, d.at(d.long*0.3, min(m, d.arc)), "rail")
	if l := c.Lift; len(l.Stations.Get()) > 0 {
		in.At(d.places, d.at(d.long*0.6, float64(l.Stations.Get()[0])*d.arc), "lift")
	}
	in.At(d.places, d.at(d.long*0.5, 0), "panels", "grid.reveal", "finish", "lift")
}

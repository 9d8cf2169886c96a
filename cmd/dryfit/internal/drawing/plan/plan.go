// Package plan draws the reflected plan, and the row of panels in the measured room.
package plan

import (
	"fmt"
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/framing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// planOf keeps what the reflected plan is drawn from.
type planOf struct {
	sheet.Input
	c      *layout.Ceiling
	b      *draft.Board
	v      draft.View
	near   float64 // from the near end wall to the vault
	side   float64 // from a side wall to the springing
	places map[int]paper.Point
	row    *rowOf // nil where the room was not measured
}

// planBelow is what the plan's dimensions take under it, in mm.
const planBelow = 42

// Reflected is the reflected plan: as the ceiling would show in a floor of mirrors,
// the near end at the left and the left springing at the top.
func Reflected(in sheet.Input) (*sheet.Subject, error) { return planWith(in, row(in)) }

// planWith is the plan with the row in the measured room under it, if there is one.
func planWith(in sheet.Input, row *rowOf) (*sheet.Subject, error) {
	c := in.Ceiling()
	if err := sheet.CheckCount("plan", c.Grid.Around.Get()*c.Grid.Along.Get(), "coffers"); err != nil {
		return nil, err
	}
	d := &planOf{Input: in, c: c, near: c.NearGap(), side: (c.Room.Width.Get() - c.Vault.Span.Get()) / 2}
	d.row = row
	return &sheet.Subject{
		Name: "plan", Title: "Reflected plan",
		About: fmt.Sprintf("The ceiling of %d by %d coffers in %d panels, reflected, in its room of %s by %s.",
			c.Grid.Around.Get(), c.Grid.Along.Get(), c.Panel.Count.Get(), in.Length(c.Room.Length.Get()), in.Length(c.Room.Width.Get())),
		Wide: max(c.Room.Length.Get(), c.BuiltLength(), d.row.long()), High: max(c.Room.Width.Get(), c.Vault.Width.Get()),
		Left: 40, Right: 40, Above: 40, Below: planBelow + d.row.high(), LeastWide: d.row.wide(), Best: 20,
		Shows: []string{"grid", "panels", "seam", "close", "fitting", "room.length", "room.framing", "room.access", "room.entry", "install", "project", "survey"},
		Notes: slices.Concat(d.row.notes(), []paper.Note{{Title: "How it is drawn", Lines: planNotes}}), Draw: d.draw,
	}, nil
}

// planNotes say how a plan is read.
var planNotes = []string{
	"Ribs are numbered from the near end, rails lettered from the left springing. Coffer 2, 3 is the second from the left springing and the third from the near end: between rails B and C, ribs 3 and 4.",
	"S: the plane of the cross section, seen toward the far end.",
	"Panels are raised in the order of their numbers, from the far end; the pieces of an arch, from the left springing. If panels are too narrow for their numbers, only those at both ends are numbered. Tenons point to the near end.",
}

// at is a place of the plan: x along the axis from the near end of the vault, y
// across from the left springing, which is drawn at the top.
func (d *planOf) at(x, y float64) paper.Point { return d.v.At(x, -y) }

func (d *planOf) box(x0, y0, x1, y1 float64) []paper.Point {
	return []paper.Point{d.at(x0, y0), d.at(x1, y0), d.at(x1, y1), d.at(x0, y1)}
}

func (d *planOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	origin := v.At(d.near, max(d.side, 0)+d.c.Vault.Span.Get())
	d.v = draft.View{Origin: origin, Scale: v.Scale}
	if d.row != nil { // first, so that the plan's dimensions keep to the plan
		d.row.draw(b, paper.Point{X: d.at(-d.near, 0).X, Y: d.at(0, d.c.Room.Width.Get()-d.side).Y + planBelow}, v.Scale, d.places)
		b.Figure()
	}
	b.In("north", d.north)
	b.Figure()
	b.In("members", d.members)
	b.In("seams", d.seams)
	d.panels()
	b.In("straps", d.straps)
	b.In("fittings", d.fittings)
	b.In("cut", d.cutMarks) // before the dimensions, which lie outside of the marks
	d.vaultDims()
	b.Figure()
	b.In("framing", d.framing)
	b.In("room", d.room)
	b.In("blocking", d.blocking)
	d.coffers()
	b.In("bubbles", d.bubbles)
	d.roomDims()
	d.bite()
	return d.places
}

// across is where on the plan an arc length lies.
func (d *planOf) across(s float64) float64 { return d.c.Vault.Intrados.Get().At(s).Y }

// members draws rails and ribs.
func (d *planOf) members() {
	c := d.c
	for i := range c.Grid.Along.Get() {
		x0, x1 := c.RibAt(i)+c.Rib.Width.Get()/2, c.RibAt(i+1)-c.Rib.Width.Get()/2
		for j := range c.Grid.Around.Get() + 1 {
			s := c.Vault.Arc.Get() * float64(j) / float64(c.Grid.Around.Get())
			from, to := d.across(max(0, s-c.Rail.Width.Get()/2)), d.across(min(c.Vault.Arc.Get(), s+c.Rail.Width.Get()/2))
			d.b.Poly(paper.Poly{Points: d.box(x0, from, x1, to), Closed: true, Tone: paper.Paper + 1, Stroke: pen.Fine})
		}
	}
	for i := range c.Grid.Along.Get() + 1 {
		x0, x1 := d.rib(i)
		d.b.Poly(paper.Poly{Points: d.box(x0, 0, x1, c.Vault.Span.Get()), Closed: true, Tone: paper.Paper + 2, Stroke: pen.Edge})
	}
}

// rib is from where to where a rib lies along the axis; the ribs at the ends of
// a vault may be halves.
func (d *planOf) rib(i int) (x0, x1 float64) {
	c := d.c
	x := c.RibAt(i)
	x0, x1 = x-c.Rib.Width.Get()/2, x+c.Rib.Width.Get()/2
	if c.Grid.HalfEnds.Get() && i == 0 {
		x0 = x
	}
	if c.Grid.HalfEnds.Get() && i == c.Grid.Along.Get() {
		x1 = x
	}
	return x0, x1
}

// seams draws where panels meet.
func (d *planOf) seams() {
	c := d.c
	for k := 1; k < c.Panel.Along.Get(); k++ {
		x := c.SeamLine(k)
		d.b.Line(d.at(x, 0), d.at(x, c.Vault.Span.Get()), pen.Cut)
	}
	for k := 1; k < c.Panel.Around.Get(); k++ {
		y := d.across(float64(k) * c.Panel.Arc.Get())
		d.b.Line(d.at(0, y), d.at(c.BuiltLength(), y), pen.Cut)
	}
}

// panels numbers the panels in the order of raising: the first goes to the far
// end.
func (d *planOf) panels() {
	c := d.c
	number := 0
	for p := c.Panel.Along.Get() - 1; p >= 0; p-- {
		x := (c.RibAt(d.firstRib(p)) + c.RibAt(d.firstRib(p+1))) / 2
		for k := range c.Panel.Around.Get() {
			number++
			if d.crowded() && p > 0 && p < c.Panel.Along.Get()-1 {
				continue // which the notes say
			}
			mid := c.Panel.Arc.Get() * (float64(k) + 0.5)
			d.b.Label(draft.Label{
				Text: fmt.Sprintf("panel %d", number), Of: d.at(x, d.coffer(mid)), Height: draft.Large, Inside: true,
			})
		}
	}
}

// crowded reports whether panels are too narrow for their numbers: only those at both
// ends have theirs.
func (d *planOf) crowded() bool {
	return d.v.Size(d.c.Panel.Length.Get()) < paper.TextWidth("panel 99", draft.Ordinary)
}

// firstRib is the rib that a panel begins at, counted from the near end.
func (d *planOf) firstRib(p int) int {
	return int(math.Round(float64(p) * float64(d.c.Grid.Along.Get()) / float64(d.c.Panel.Along.Get())))
}

// coffer is where across the coffer lies whose middle is nearest to an arc
// length.
func (d *planOf) coffer(s float64) float64 {
	m := d.c.Grid.ModuleAround.Get()
	return d.across((math.Floor(s/m-1e-9) + 0.5) * m)
}

// straps draws each on the edge ribs of the panels.
func (d *planOf) straps() {
	c := d.c
	if !c.Strap.Given() {
		return
	}
	width := 0.03
	if w := c.Strap.Width; w.Given() {
		width = w.Get()
	}
	for i := range c.Grid.Along.Get() + 1 {
		var xs []float64
		switch {
		case i == 0 || i == c.Grid.Along.Get():
			x0, x1 := d.rib(i)
			xs = []float64{(x0 + x1) / 2}
		case c.SeamAt(i):
			xs = []float64{c.RibAt(i) - c.Rib.Width.Get()/4, c.RibAt(i) + c.Rib.Width.Get()/4}
		default:
			continue
		}
		for _, share := range c.Strap.Stations.Get() {
			y := d.across(float64(share) * c.Vault.Arc.Get())
			for _, x := range xs {
				d.b.Poly(paper.Poly{Points: d.box(x-0.008, y-width/2, x+0.008, y+width/2), Closed: true, Tone: paper.Ink, Stroke: pen.Hair})
			}
		}
	}
}

func (d *planOf) fittings() {
	c := d.c
	for i, f := range c.Fitting.Get() {
		if f.Coffer.Get()[0] > c.Grid.Around.Get() || f.Coffer.Get()[1] > c.Grid.Along.Get() {
			continue // which a finding says
		}
		s, x := (float64(f.Coffer.Get()[0])-0.5)*c.Grid.ModuleAround.Get(), (c.RibAt(f.Coffer.Get()[1]-1)+c.RibAt(f.Coffer.Get()[1]))/2
		if f.At.Given() {
			s, x = s+f.At.Around.Get(), x+f.At.Along.Get()
		}
		at := d.at(x, d.across(s))
		if f.Diameter.Given() {
			d.b.Arc(paper.Circle(at, d.v.Size(f.Diameter.Get()/2), pen.Bold))
		} else {
			w, l := f.Width.Get()/2, f.Length.Get()/2
			d.b.Poly(paper.Poly{Points: d.box(x-l, d.across(s-w), x+l, d.across(s+w)), Closed: true, Stroke: pen.Bold})
		}
		d.b.Label(draft.Label{Text: f.Name.Get() + "\n" + d.fittingSaid(f), Of: at, Prefer: []draft.Side{draft.Right, draft.Below}})
		d.Input.At(d.places, at, spec.Key("fitting", i+1))
	}
}

// fittingSaid is a fitting's size and place.
func (d *planOf) fittingSaid(f layout.Fitting) string {
	size := d.Length(f.Diameter.Get()) + " across"
	if !f.Diameter.Given() {
		size = d.Length(f.Length.Get()) + " × " + d.Length(f.Width.Get())
	}
	text := fmt.Sprintf("%s,\ncoffer %d, %d", size, f.Coffer.Get()[0], f.Coffer.Get()[1])
	if f.At.Given() {
		text += fmt.Sprintf(",\noff its middle\n%s around,\n%s along", d.Length(f.At.Around.Get()), d.Length(f.At.Along.Get()))
	}
	return text
}

// framing draws the middle lines of the members that the straps are fixed to.
func (d *planOf) framing() {
	f, room := d.c.Room.Framing, d.c.Room
	if !f.Spacing.Given() {
		return
	}
	for _, at := range framing.Members(d.c) {
		if f.Runs.Get() == "along" {
			d.b.Line(d.at(-d.near, at-d.side), d.at(room.Length.Get()-d.near, at-d.side), pen.Above)
		} else {
			d.b.Line(d.at(at-d.near, -d.side), d.at(at-d.near, room.Width.Get()-d.side), pen.Above)
		}
	}
}

func (d *planOf) room() {
	room := d.c.Room
	x0, x1 := -d.near, room.Length.Get()-d.near
	y0, y1 := -d.side, room.Width.Get()-d.side
	d.b.Poly(paper.Poly{Points: d.box(x0, y0, x1, y1), Closed: true, Stroke: pen.Cut})
	d.entry(x0, x1, y0, y1)
	d.b.Label(draft.Label{Text: "left\nspringing", Of: d.at(x1, 0), Prefer: []draft.Side{draft.Right}})
	if f := room.Framing; f.Spacing.Given() {
		d.b.Label(draft.Label{Text: d.framingSaid(), Of: d.member(x0, x1, y0, y1), Prefer: []draft.Side{draft.Above, draft.Right}})
	}
}

// entry marks where one comes in: the middle of the door, where that is known.
func (d *planOf) entry(x0, x1, y0, y1 float64) {
	name, side := "entry", d.c.Room.Entry.Get() == "side"
	at, prefer := d.at(x0, d.c.Vault.Span.Get()*0.62), draft.Left
	if side {
		at, prefer = d.at(x0+(x1-x0)*0.62, y0), draft.Above
	}
	if door, ok := picture.DoorMiddle(d.c); ok {
		name = "door"
		at = d.at(x0, y1-door) // its wall's left end, seen from inside, is that of the right springing
		if side {
			at = d.at(x0+door, y0)
		}
	}
	d.entryArrow(at, side)
	d.b.Label(draft.Label{Text: name, Of: at, Prefer: []draft.Side{prefer}})
}

// member is a place on one of the framing's members, near the middle of its wall.
func (d *planOf) member(x0, x1, y0, y1 float64) paper.Point {
	f := d.c.Room.Framing
	offset := 0.0
	if f.Offset.Given() {
		offset = f.Offset.Get()
	}
	near := func(low, high float64) float64 {
		return low + offset + math.Max(0, math.Floor(((high-low)*0.55-offset)/f.Spacing.Get()))*f.Spacing.Get()
	}
	if f.Runs.Get() == "along" {
		return d.at(x1, near(y0, y1))
	}
	return d.at(near(x0, x1), y0)
}

// framingSaid says how the framing lies, and from which wall.
func (d *planOf) framingSaid() string {
	f := d.c.Room.Framing
	text := fmt.Sprintf("framing %s apart,\nruns %s", d.Length(f.Spacing.Get()), f.Runs.Get())
	if !f.Offset.Given() {
		return text
	}
	wall := "the near wall"
	if f.Runs.Get() == "along" {
		wall = "the left wall"
	}
	return text + ",\nthe first " + d.Length(f.Offset.Get()) + "\nfrom " + wall
}

func (d *planOf) vaultDims() {
	c := d.c
	bottom := c.Vault.Span.Get()
	ribs := c.Grid.Along.Get() // of the last module, for the first has the mark of the section
	d.b.Dim(draft.Dim{
		From: d.at(c.RibAt(ribs-1), bottom), To: d.at(c.RibAt(ribs), bottom), Side: draft.Below,
		Text: fmt.Sprintf("%d × %s", c.Grid.Along.Get(), d.Dim(c.Grid.ModuleAlong.Get())),
	})
	if c.Panel.Along.Get() > 1 && c.Panel.Along.Get() != c.Grid.Along.Get() {
		last := c.Panel.Along.Get() - 2
		d.b.Dim(draft.Dim{
			From: d.at(c.RibAt(d.firstRib(last)), bottom), To: d.at(c.RibAt(d.firstRib(last+1)), bottom), Side: draft.Below,
			Text: "panel " + d.Dim(c.Panel.Length.Get()),
		})
	}
	d.b.Dim(draft.Dim{From: d.at(0, bottom), To: d.at(c.BuiltLength(), bottom), Side: draft.Below, Text: "panels and seams " + d.alongRoom().built})
	d.b.Dim(draft.Dim{From: d.at(0, 0), To: d.at(0, bottom), Side: draft.Left, Text: "span " + d.Dim(c.Vault.Span.Get())})
}

func (d *planOf) roomDims() {
	room := d.c.Room
	x0, x1 := -d.near, room.Length.Get()-d.near
	y0, y1 := -d.side, room.Width.Get()-d.side
	along := d.alongRoom()
	d.b.Dim(draft.Dim{From: d.at(x0, y1), To: d.at(x1, y1), Side: draft.Below, Text: "room " + along.room})
	d.b.Dim(draft.Dim{From: d.at(x0, y0), To: d.at(x0, y1), Side: draft.Left, Text: "room " + d.Dim(room.Width.Get())})
	if d.c.Close.FirstGap.Given() {
		d.b.Dim(draft.Dim{From: d.at(x0, y1), To: d.at(0, y1), Side: draft.Below, Text: "last gap " + along.last + d.leastGap()})
		d.b.Dim(draft.Dim{From: d.at(d.c.BuiltLength(), y1), To: d.at(x1, y1), Side: draft.Below, Text: "first gap " + along.first})
	}
}

// leastGap says what is left of the last gap at the worst, where less than all is.
func (d *planOf) leastGap() string {
	ends, ok := d.Assessment.Results.Closing().Ends()
	if !ok || ends.Least.Get() <= 0 {
		return ""
	}
	return ", at least " + d.Dim(ends.Least.Get())
}

// alongRoom is the room's length and what makes it up, printed to add up. Where no
// first gap is given there are no gaps to print.
func (d *planOf) alongRoom() (text struct{ room, last, built, first string }) {
	c := d.c
	if !c.Close.FirstGap.Given() {
		text.room, text.built = d.Dim(c.Room.Length.Get()), d.Dim(c.BuiltLength())
		return text
	}
	whole, each := c.Units.Chain(d.near, c.BuiltLength(), c.Close.FirstGap.Get())
	text.room, text.last, text.built, text.first = d.Bare(whole), d.Bare(each[0]), d.Bare(each[1]), d.Bare(each[2])
	return text
}

func (d *planOf) bite() {
	c := d.c
	middle := d.across(c.Vault.Arc.Get() * 0.4)
	seam := d.at(c.RibAt(d.firstRib(max(0, c.Panel.Along.Get()-1))), middle)
	d.Input.At(d.places, seam, "seam", "panels.around")
	d.Input.At(d.places, d.at(c.RibAt(1), d.across(c.Vault.Arc.Get()*0.7)), "grid")
	d.Input.At(d.places, d.at(-d.near/2, d.across(c.Vault.Arc.Get()*0.3)), "close", "room.length")
	d.Input.At(d.places, d.at(c.RibAt(0), d.across(c.Vault.Arc.Get()*0.2)), "panels", "project", "room")
}

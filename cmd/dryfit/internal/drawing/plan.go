package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/layout"
	"dryfit/spec"
)

// planOf keeps what the reflected plan is drawn from.
type planOf struct {
	Input
	c      *layout.Ceiling
	b      *draft.Board
	v      draft.View
	near   float64 // from the near end wall to the vault
	side   float64 // from a side wall to the springing
	places map[int]paper.Point
}

// plan is the reflected plan: as the ceiling would show in a floor of mirrors,
// the near end at the left and the left springing at the top.
func plan(in Input) (*subject, error) {
	c := in.ceiling()
	if err := shows("plan", c.Grid.Around*c.Grid.Along, "coffers"); err != nil {
		return nil, err
	}
	d := &planOf{Input: in, c: c, near: c.NearGap(), side: (float64(c.Spec.Room.Width) - c.Vault.Span) / 2}
	return &subject{
		name: "plan", title: "Reflected plan",
		about: fmt.Sprintf("The ceiling of %d by %d coffers in %d panels, as it would show in a floor of mirrors, in its room of %s by %s.",
			c.Grid.Around, c.Grid.Along, c.Panel.Count, in.length(float64(c.Spec.Room.Length)), in.length(float64(c.Spec.Room.Width))),
		wide: max(float64(c.Spec.Room.Length), c.BuiltLength()), high: max(float64(c.Spec.Room.Width), c.Vault.Width),
		left: 34, right: 24, above: 26, below: 42, best: 20,
		shows: []string{"grid", "panels", "seam", "close", "fitting", "room.length", "room.framing", "room.access", "room.entry", "install", "project"},
		draw:  d.draw,
	}, nil
}

// at is a place of the plan: x along the axis from the near end of the vault, y
// across from the left springing, which is drawn at the top.
func (d *planOf) at(x, y float64) paper.Point { return d.v.At(x, -y) }

func (d *planOf) box(x0, y0, x1, y1 float64) []paper.Point {
	return []paper.Point{d.at(x0, y0), d.at(x1, y0), d.at(x1, y1), d.at(x0, y1)}
}

func (d *planOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	origin := v.At(d.near, max(d.side, 0)+d.c.Vault.Span)
	d.v = draft.View{Origin: origin, Scale: v.Scale}
	b.In("members", d.members)
	b.In("seams", d.seams)
	d.panels()
	b.In("straps", d.straps)
	b.In("fittings", d.fittings)
	d.vaultDims()
	b.Figure()
	b.In("framing", d.framing)
	b.In("room", d.room)
	d.roomDims()
	d.bite()
	return d.places
}

// across is where on the plan an arc length lies.
func (d *planOf) across(s float64) float64 { return d.c.Vault.Intrados.At(s).Y }

// members draws rails and ribs.
func (d *planOf) members() {
	c := d.c
	for i := range c.Grid.Along {
		x0, x1 := c.RibAt(i)+c.Rib.Width/2, c.RibAt(i+1)-c.Rib.Width/2
		for j := range c.Grid.Around + 1 {
			s := c.Vault.Arc * float64(j) / float64(c.Grid.Around)
			from, to := d.across(max(0, s-c.Rail.Width/2)), d.across(min(c.Vault.Arc, s+c.Rail.Width/2))
			d.b.Poly(paper.Poly{Points: d.box(x0, from, x1, to), Closed: true, Tone: paper.Paper + 1, Stroke: fine})
		}
	}
	for i := range c.Grid.Along + 1 {
		x0, x1 := d.rib(i)
		d.b.Poly(paper.Poly{Points: d.box(x0, 0, x1, c.Vault.Span), Closed: true, Tone: paper.Paper + 2, Stroke: edge})
	}
}

// rib is from where to where a rib lies along the axis; the ribs at the ends of
// a vault may be halves.
func (d *planOf) rib(i int) (x0, x1 float64) {
	c := d.c
	x := c.RibAt(i)
	x0, x1 = x-c.Rib.Width/2, x+c.Rib.Width/2
	if c.Grid.HalfEnds && i == 0 {
		x0 = x
	}
	if c.Grid.HalfEnds && i == c.Grid.Along {
		x1 = x
	}
	return x0, x1
}

// seams draws where panels meet.
func (d *planOf) seams() {
	c := d.c
	for k := 1; k < c.Panel.Along; k++ {
		x := c.SeamLine(k)
		d.b.Line(d.at(x, 0), d.at(x, c.Vault.Span), cut)
	}
	for k := 1; k < c.Panel.Around; k++ {
		y := d.across(float64(k) * c.Panel.Arc)
		d.b.Line(d.at(0, y), d.at(c.BuiltLength(), y), cut)
	}
}

// panels numbers the panels in the order of raising: the first goes to the far
// end.
func (d *planOf) panels() {
	c := d.c
	number := 0
	for p := c.Panel.Along - 1; p >= 0; p-- {
		x := (c.RibAt(d.firstRib(p)) + c.RibAt(d.firstRib(p+1))) / 2
		for k := range c.Panel.Around {
			number++
			mid := c.Panel.Arc * (float64(k) + 0.5)
			d.b.Label(draft.Label{
				Text: fmt.Sprintf("panel %d", number), Of: d.at(x, d.coffer(mid)), Height: 2.8, Inside: true,
			})
		}
	}
}

// firstRib is the rib that a panel begins at, counted from the near end.
func (d *planOf) firstRib(p int) int {
	return int(math.Round(float64(p) * float64(d.c.Grid.Along) / float64(d.c.Panel.Along)))
}

// coffer is where across the coffer lies whose middle is nearest to an arc
// length.
func (d *planOf) coffer(s float64) float64 {
	m := d.c.Grid.ModuleAround
	return d.across((math.Floor(s/m-1e-9) + 0.5) * m)
}

// straps draws each on the edge ribs of the panels.
func (d *planOf) straps() {
	c := d.c
	if c.Spec.Strap == nil {
		return
	}
	width := 0.03
	if w := c.Spec.Strap.Width; w != nil {
		width = float64(*w)
	}
	for i := range c.Grid.Along + 1 {
		var xs []float64
		switch {
		case i == 0 || i == c.Grid.Along:
			x0, x1 := d.rib(i)
			xs = []float64{(x0 + x1) / 2}
		case c.SeamAt(i):
			xs = []float64{c.RibAt(i) - c.Rib.Width/4, c.RibAt(i) + c.Rib.Width/4}
		default:
			continue
		}
		for _, share := range c.Spec.Strap.Stations {
			y := d.across(float64(share) * c.Vault.Arc)
			for _, x := range xs {
				d.b.Poly(paper.Poly{Points: d.box(x-0.008, y-width/2, x+0.008, y+width/2), Closed: true, Tone: paper.Ink, Stroke: hair})
			}
		}
	}
}

func (d *planOf) fittings() {
	c := d.c
	for i, f := range c.Spec.Fitting {
		if f.Coffer[0] > c.Grid.Around || f.Coffer[1] > c.Grid.Along {
			continue // which a finding says
		}
		s, x := (float64(f.Coffer[0])-0.5)*c.Grid.ModuleAround, (c.RibAt(f.Coffer[1]-1)+c.RibAt(f.Coffer[1]))/2
		if f.At != nil {
			s, x = s+float64(f.At.Around), x+float64(f.At.Along)
		}
		at := d.at(x, d.across(s))
		if f.Size.Diameter != nil {
			d.b.Arc(circle(at, d.v.Size(float64(*f.Size.Diameter)/2), bold))
		} else {
			w, l := float64(*f.Size.Width)/2, float64(*f.Size.Length)/2
			d.b.Poly(paper.Poly{Points: d.box(x-l, d.across(s-w), x+l, d.across(s+w)), Closed: true, Stroke: bold})
		}
		d.b.Label(draft.Label{Text: f.Name, Of: at, Prefer: []draft.Side{draft.Right, draft.Below}})
		d.Input.at(d.places, at, spec.Key("fitting", i+1))
	}
}

// framing draws the middle lines of the members that the straps are fixed to.
func (d *planOf) framing() {
	f, room := d.c.Spec.Room.Framing, d.c.Spec.Room
	if f == nil || f.Spacing == nil {
		return
	}
	offset, most := 0.0, float64(room.Length)
	if f.Offset != nil {
		offset = float64(*f.Offset)
	}
	if f.Runs == "along" {
		most = float64(room.Width)
	}
	const lines = 400
	for i := range lines {
		at := offset + float64(i)*float64(*f.Spacing)
		if at > most+onEdge {
			break
		}
		if f.Runs == "along" {
			d.b.Line(d.at(-d.near, at-d.side), d.at(float64(room.Length)-d.near, at-d.side), above)
		} else {
			d.b.Line(d.at(at-d.near, -d.side), d.at(at-d.near, float64(room.Width)-d.side), above)
		}
	}
}

func (d *planOf) room() {
	room := d.c.Spec.Room
	x0, x1 := -d.near, float64(room.Length)-d.near
	y0, y1 := -d.side, float64(room.Width)-d.side
	d.b.Poly(paper.Poly{Points: d.box(x0, y0, x1, y1), Closed: true, Stroke: cut})
	if door := room.Door; door != nil && room.Entry == "end" {
		d.b.Label(draft.Label{Text: "door", Of: d.at(x0, y0+float64(door.Offset)), Prefer: []draft.Side{draft.Left}})
	}
	entry, at, prefer := "entry", d.at(x0, d.c.Vault.Span*0.62), draft.Left
	if room.Entry == "side" {
		at, prefer = d.at(x0+(x1-x0)*0.62, y0), draft.Above
	}
	d.b.Label(draft.Label{Text: entry, Of: at, Prefer: []draft.Side{prefer}})
	d.b.Label(draft.Label{Text: "left\nspringing", Of: d.at(x1, 0), Prefer: []draft.Side{draft.Right}})
	d.b.Label(draft.Label{Text: "panels are raised in the order of their numbers, from the far end; tenons point to the near one", Of: d.at((x0+x1)/2, y0), Prefer: []draft.Side{draft.Above}})
	if f := room.Framing; f != nil && f.Spacing != nil {
		d.b.Label(draft.Label{Text: fmt.Sprintf("framing %s apart, runs %s", d.length(float64(*f.Spacing)), f.Runs), Of: d.at(x1, d.c.Vault.Span*0.5), Prefer: []draft.Side{draft.Right}})
	}
}

func (d *planOf) vaultDims() {
	c := d.c
	bottom := c.Vault.Span
	d.b.Dim(draft.Dim{
		From: d.at(c.RibAt(0), bottom), To: d.at(c.RibAt(1), bottom), Side: draft.Below,
		Text: fmt.Sprintf("%d × %s", c.Grid.Along, d.length(c.Grid.ModuleAlong)),
	})
	if c.Panel.Along > 1 && c.Panel.Along != c.Grid.Along {
		last := c.Panel.Along - 2
		d.b.Dim(draft.Dim{
			From: d.at(c.RibAt(d.firstRib(last)), bottom), To: d.at(c.RibAt(d.firstRib(last+1)), bottom), Side: draft.Below,
			Text: "panel " + d.length(c.Panel.Length),
		})
	}
	d.b.Dim(draft.Dim{From: d.at(0, bottom), To: d.at(c.BuiltLength(), bottom), Side: draft.Below, Text: "panels and seams " + d.length(c.BuiltLength())})
	d.b.Dim(draft.Dim{From: d.at(0, 0), To: d.at(0, bottom), Side: draft.Left, Text: "span " + d.length(c.Vault.Span)})
}

func (d *planOf) roomDims() {
	room := d.c.Spec.Room
	x0, x1 := -d.near, float64(room.Length)-d.near
	y0, y1 := -d.side, float64(room.Width)-d.side
	d.b.Dim(draft.Dim{From: d.at(x0, y1), To: d.at(x1, y1), Side: draft.Below, Text: "room " + d.length(float64(room.Length))})
	d.b.Dim(draft.Dim{From: d.at(x1, y0), To: d.at(x1, y1), Side: draft.Right, Text: "room " + d.length(float64(room.Width))})
	if d.c.Spec.Close.FirstGap != nil {
		d.b.Dim(draft.Dim{From: d.at(x0, y0), To: d.at(0, y0), Side: draft.Above, Text: "last gap " + d.length(d.near)})
		d.b.Dim(draft.Dim{From: d.at(d.c.BuiltLength(), y0), To: d.at(x1, y0), Side: draft.Above, Text: "first gap " + d.length(float64(*d.c.Spec.Close.FirstGap))})
	}
}

func (d *planOf) bite() {
	c := d.c
	middle := d.across(c.Vault.Arc * 0.4)
	seam := d.at(c.RibAt(d.firstRib(max(0, c.Panel.Along-1))), middle)
	d.Input.at(d.places, seam, "seam", "panels.around")
	d.Input.at(d.places, d.at(c.RibAt(1), d.across(c.Vault.Arc*0.7)), "grid")
	d.Input.at(d.places, d.at(-d.near/2, d.across(c.Vault.Arc*0.3)), "close", "room.length")
	d.Input.at(d.places, d.at(c.RibAt(0), d.across(c.Vault.Arc*0.2)), "panels", "project", "room")
}

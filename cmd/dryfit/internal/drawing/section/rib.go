package section

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
)

// ribOf keeps what the section of a rib is drawn from: x across the rib, 0 in
// its middle, and the depth from the intrados upward.
type ribOf struct {
	sheet.Input
	c      *layout.Ceiling
	b      *draft.Board
	v      draft.View
	places map[int]paper.Point
}

// railShown is how much of a rail and of the skin is drawn beside the rib, in m.
const railShown = 0.055

// RibName is the name of the sheet of the section of a rib.
const RibName = "rib"

// Rib is the section of a rib: at a seam, of its two halves; without seams, of
// a whole one.
func Rib(in sheet.Input) (*sheet.Subject, error) {
	c := in.Ceiling()
	d := &ribOf{Input: in, c: c}
	about := "A rib between two coffers"
	if d.seam() {
		about = "Two half ribs at a seam"
	}
	return &sheet.Subject{
		Name: RibName, Title: "Section of a rib",
		About: fmt.Sprintf("%s, %s wide and %s deep, of %s, with the rail and the skin beside it.", about, in.Length(c.Rib.Width.Get()), in.Length(c.Rib.Depth.Get()), c.Rib.Species.Get().Name),
		Wide:  c.Rib.Width.Get() + 2*railShown, High: c.Vault.Thickness.Get(),
		Left: 30, Right: 40, Above: 26, Below: 34, Best: 1,
		Shows: []string{"rib", "rail.depth", "rail.width", "skin.thickness", "skin.layers", "skin.material", "skin.setback", "seam.tenon", "seam.gap", "seam.mortise", "seam.tolerance", "grid.reveal", "climate"},
		Notes: []paper.Note{{Title: "How it is drawn", Lines: []string{"This section is R on the cross section."}}, pen.Legend},
		Draw:  d.draw,
	}, nil
}

func (d *ribOf) seam() bool { return d.c.Seam.Count.Get() > 0 }

// gap is half of that between the two halves.
func (d *ribOf) gap() float64 {
	if d.seam() {
		return d.c.Seam.Gap.Get() / 2
	}
	return 0
}

func (d *ribOf) fill(t paper.Tone, s paper.Stroke, x0, z0, x1, z1 float64) {
	d.b.Poly(paper.Poly{Points: d.v.Rectangle(x0, z0, x1, z1), Closed: true, Tone: t, Stroke: s})
}

func (d *ribOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	d.v = draft.View{Origin: v.At(railShown+d.c.Rib.Width.Get()/2, 0), Scale: v.Scale}
	b.In("rails", d.rails)
	b.In("rib", d.members)
	b.In("skin", d.skin)
	if d.seam() {
		b.In("tenon", d.tenon)
	}
	d.dims()
	d.labels()
	d.bite()
	return d.places
}

// rails are seen beyond, on both sides.
func (d *ribOf) rails() {
	w := d.c.Rib.Width.Get() / 2
	for _, side := range []float64{-1, 1} {
		d.fill(paper.Paper, pen.Fine, side*w, 0, side*(w+railShown), d.c.Rail.Depth.Get())
	}
}

// part is a piece of the rib's section: from where to where across, and from
// which depth to which.
type part struct{ x0, x1, from, to float64 }

// parts are the layers of the rib, or the whole of it, cut in two at a seam.
func (d *ribOf) parts() []part {
	total := 0.0
	for _, l := range d.c.RibLayers.Get() {
		total += l.Width
	}
	x := -total / 2
	var out []part
	for _, l := range d.c.RibLayers.Get() {
		p := part{x, x + l.Width, l.From, l.To}
		x += l.Width
		if g := d.gap(); d.seam() && p.x0 < -g && p.x1 > g {
			out = append(out, part{p.x0, -g, p.from, p.to}, part{g, p.x1, p.from, p.to})
			continue
		}
		out = append(out, p)
	}
	return out
}

func (d *ribOf) members() {
	for _, p := range d.parts() {
		d.b.Poly(paper.Poly{Points: d.outline(p), Closed: true, Tone: paper.Paper, Stroke: pen.Cut})
		g := pen.EndGrain
		if p.x0+p.x1 > 0 {
			g = pen.EndOther
		}
		d.b.Items(pen.Hatch(d.outline(p), g))
		if t := d.c.Rib.Lamination.Get(); t > 0 {
			for z := p.from + t; z < p.to-t/10; z += t {
				d.b.Line(d.v.At(p.x0, z), d.v.At(p.x1, z), pen.Hair)
			}
		}
	}
}

// outline is that of a part, less the groove of its reveal.
func (d *ribOf) outline(p part) []paper.Point {
	r := d.c.Grid.Reveal
	left, right := 0.0, 0.0
	switch {
	case !r.Given() || r.At.Get() == "layers":
	case r.At.Get() == "sides":
		if p.x0 <= -d.c.Rib.Width.Get()/2+1e-9 {
			left = r.Width.Get()
		}
		if p.x1 >= d.c.Rib.Width.Get()/2-1e-9 {
			right = r.Width.Get()
		}
	case d.seam():
		// Only the two layers beside the seam have a groove.
		switch at := d.gap() + 1e-9; {
		case p.x1 <= at && p.x1 >= -at:
			right = r.Width.Get() / 2
		case p.x0 <= at && p.x0 >= -at:
			left = r.Width.Get() / 2
		}
	}
	var out []paper.Point
	add := func(x, z float64) { out = append(out, d.v.At(x, z)) }
	if left > 0 {
		add(p.x0, p.from+r.Depth.Get())
		add(p.x0+left, p.from+r.Depth.Get())
		add(p.x0+left, p.from)
	} else {
		add(p.x0, p.from)
	}
	if right > 0 {
		add(p.x1-right, p.from)
		add(p.x1-right, p.from+r.Depth.Get())
		add(p.x1, p.from+r.Depth.Get())
	} else {
		add(p.x1, p.from)
	}
	add(p.x1, p.to)
	add(p.x0, p.to)
	return out
}

// skin is behind the ribs, or between them.
func (d *ribOf) skin() {
	s, w := d.c.Skin, d.c.Rib.Width.Get()/2
	for layer := range s.Layers.Get() {
		from := s.Setback.Get() + float64(layer)*s.Thickness.Get()
		for _, side := range []float64{-1, 1} {
			inner := d.gap()
			if s.Between.Get() {
				inner = w
			}
			d.fill(paper.Paper, pen.Edge, side*inner, from, side*(w+railShown), from+s.Thickness.Get())
			d.b.Items(pen.Hatch(d.v.Rectangle(side*inner, from, side*(w+railShown), from+s.Thickness.Get()), pen.Plies))
		}
	}
}

// tenon lies in the middle of the rib's depth, which the spec does not state.
func (d *ribOf) tenon() {
	t := d.c.Seam.Tenon
	mid := d.c.Rib.Depth.Get() / 2
	d.fill(paper.Paper, pen.Edge, -t.Length.Get()/2, mid-t.Thickness.Get()/2, t.Length.Get()/2, mid+t.Thickness.Get()/2)
	d.b.Items(pen.Hatch(d.v.Rectangle(-t.Length.Get()/2, mid-t.Thickness.Get()/2, t.Length.Get()/2, mid+t.Thickness.Get()/2), pen.LongGrain))
}

func (d *ribOf) dims() {
	c, w := d.c, d.c.Rib.Width.Get()/2
	out := w + railShown
	below, above := draft.Below, draft.Above
	d.b.Dim(draft.Dim{From: d.v.At(-w, 0), To: d.v.At(w, 0), Side: below, Text: "rib " + d.Dim(c.Rib.Width.Get())})
	if len(c.RibLayers.Get()) > 1 {
		x := -w
		for _, l := range c.RibLayers.Get() {
			d.b.Dim(draft.Dim{From: d.v.At(x, 0), To: d.v.At(x+l.Width, 0), Side: below, Text: d.Dim(l.Width)})
			x += l.Width
		}
	}
	d.b.Dim(draft.Dim{From: d.v.At(-out, 0), To: d.v.At(-out, c.Rib.Depth.Get()), Side: draft.Left, Text: "rib " + d.Dim(c.Rib.Depth.Get())})
	d.b.Dim(draft.Dim{From: d.v.At(out, 0), To: d.v.At(out, c.Rail.Depth.Get()), Side: draft.Right, Text: "rail " + d.Dim(c.Rail.Depth.Get())})
	d.b.Dim(draft.Dim{From: d.v.At(out, c.Skin.Setback.Get()), To: d.v.At(out, c.Skin.Setback.Get()+c.Skin.Total()), Side: draft.Right, Text: "skin " + d.Dim(c.Skin.Total())})
	d.b.Dim(draft.Dim{From: d.v.At(out, 0), To: d.v.At(out, c.Vault.Thickness.Get()), Side: draft.Right, Text: "total " + d.Dim(c.Vault.Thickness.Get())})
	if d.seam() {
		t := c.Seam.Tenon
		d.b.Dim(draft.Dim{From: d.v.At(-t.Length.Get()/2, c.Vault.Thickness.Get()), To: d.v.At(t.Length.Get()/2, c.Vault.Thickness.Get()), Side: above, Text: "tenon " + d.Dim(t.Length.Get())})
	}
}

func (d *ribOf) labels() {
	c, w := d.c, d.c.Rib.Width.Get()/2
	made := map[string]string{
		"laminated": fmt.Sprintf("%.4g strips of %s", c.Laminations(), d.Length(c.Rib.Lamination.Get())),
		"sawn":      fmt.Sprintf("sawn, %d layers", len(c.RibLayers.Get())),
		"solid":     "solid",
	}[c.Rib.Construction.Get()]
	d.b.Label(draft.Label{Text: c.Rib.Species.Get().Name + ", " + c.Rib.Sawn.Get() + " grain,\n" + made, Of: d.v.At(-w*0.8, 0.25*c.Rib.Depth.Get()), Prefer: []draft.Side{draft.Below, draft.Left}})
	d.b.Label(draft.Label{Text: "rail beyond,\n" + c.Rail.Species.Get().Name, Of: d.v.At(w+railShown*0.6, c.Rail.Depth.Get()/2), Inside: true})
	where := "behind the ribs"
	if c.Skin.Between.Get() {
		where = "between the ribs"
	}
	d.b.Label(draft.Label{Text: fmt.Sprintf("%d × %s, %s", c.Skin.Layers.Get(), c.Skin.Material.Get().Name, where), Of: d.v.At(-w-railShown*0.6, c.Skin.Setback.Get()+c.Skin.Total()), Prefer: []draft.Side{draft.Above}})
	if r := c.Grid.Reveal; r.Given() {
		x := map[string]float64{"seam": 0, "sides": w, "layers": 0}[r.At.Get()]
		d.b.Label(draft.Label{Text: fmt.Sprintf("reveal %s wide, %s deep, at the %s", d.Length(r.Width.Get()), d.Length(r.Depth.Get()), r.At.Get()), Of: d.v.At(x, r.Depth.Get()/2), Prefer: []draft.Side{draft.Below}})
	}
	if d.seam() {
		t := c.Seam.Tenon
		d.b.Label(draft.Label{
			Text: fmt.Sprintf("loose tenon, %s thick and %s wide, half of it in each rib;\nmortises %s; seam %s", d.Length(t.Thickness.Get()), d.Length(t.Width.Get()), c.Seam.Mortise.Get(), d.Length(c.Seam.Gap.Get())),
			Of:   d.v.At(t.Length.Get()*0.3, c.Rib.Depth.Get()/2), Prefer: []draft.Side{draft.Above, draft.Right},
		})
	}
	d.b.Label(draft.Label{Text: "intrados, toward the room", Of: d.v.At(w*0.9, 0), Prefer: []draft.Side{draft.Below}})
}

func (d *ribOf) bite() {
	c, w := d.c, d.c.Rib.Width.Get()/2
	d.At(d.places, d.v.At(-c.Seam.Tenon.Length.Get()/2, c.Rib.Depth.Get()/2), "seam.tenon")
	d.At(d.places, d.v.At(0, c.Rib.Depth.Get()*0.8), "seam")
	d.At(d.places, d.v.At(w+railShown*0.8, c.Skin.Setback.Get()+c.Skin.Total()/2), "skin")
	d.At(d.places, d.v.At(-w-railShown*0.5, c.Rail.Depth.Get()/2), "rail")
	d.At(d.places, d.v.At(0, 0), "grid.reveal")
	d.At(d.places, d.v.At(-w, c.Rib.Depth.Get()*0.7), "rib", "climate")
}

package section

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
)

// onEdge is how far from an edge, in m, a point lies that is on it but for round-off.
const onEdge = 1e-9

func (d *sectionOf) vaultDims() {
	c := d.c
	span, rise := c.Vault.Span.Get(), c.Vault.Rise.Get()
	d.widths()
	if rise > 0 {
		d.b.Dim(draft.Dim{From: d.v.At(span, 0), To: d.v.At(span/2, rise), Side: draft.Right, Text: "rise " + d.Dim(rise)})
	}
	if !math.IsNaN(d.framing) {
		d.b.Dim(draft.Dim{From: d.v.At(span/2, d.framing), To: d.v.At(span/2, c.Vault.Crown.Get()), Side: draft.Right, Text: d.Dim(c.Room.Above.Get()) + " clear"})
	}
}

// widths are the span and, in one chain, what the vault is wide over its feet and the
// gaps that it leaves at the walls: printed to add up to the room's width.
func (d *sectionOf) widths() {
	span, over := d.c.Vault.Span.Get(), d.over()
	below := func(from, to float64, text string) {
		d.b.Dim(draft.Dim{From: d.v.At(from, 0), To: d.v.At(to, 0), Side: draft.Below, Text: text})
	}
	name := "span "
	if over > onEdge {
		below(0, span, name+d.Dim(span))
		name = "over its feet "
	}
	gap := d.wall - over
	if gap < onEdge {
		below(-over, span+over, name+d.Dim(span+2*over))
		return
	}
	_, each := d.c.Units.Chain(gap, span+2*over, gap)
	below(-d.wall, -over, "gap "+d.Bare(each[0]))
	below(-over, span+over, name+d.Bare(each[1]))
	below(span+over, span+d.wall, "gap "+d.Bare(each[2]))
}

// over is how far the feet reach out over each springing, in m.
func (d *sectionOf) over() float64 { return (d.c.Vault.Width.Get() - d.c.Vault.Span.Get()) / 2 }

// saidOfAll says in the room under the vault what holds of all members, straps and
// framing: it has no leader, which would cross the room.
func (d *sectionOf) saidOfAll() {
	for i, text := range []string{d.membersSaid(), d.strapsSaid(), d.framingSaid()} {
		if text != "" {
			middle := d.v.At(d.c.Vault.Span.Get()/2, -d.floor*[]float64{0.3, 0.6, 0.85}[i])
			d.b.Label(draft.Label{Text: text, Of: middle, Inside: true, Free: true})
		}
	}
}

// membersSaid is the curve and what it is made of.
func (d *sectionOf) membersSaid() string {
	c, curve := d.c, ""
	if !math.IsInf(c.Vault.Radius.Get(), 1) {
		curve = "R " + d.Length(c.Vault.Radius.Get()) + " on the intrados,\n"
		if !c.Vault.Shape().OneArc {
			curve = "R " + d.Length(c.Vault.Radius.Get()) + " at the crown,\nthe tightest " + d.Length(c.Vault.TightestRadius.Get()) + ",\n"
		}
	}
	return curve + fmt.Sprintf("rib %s deep, rail %s,\nskin %s at %s from the intrados,\n%d coffers around, %s each",
		d.Length(c.Rib.Depth.Get()), d.Length(c.Rail.Depth.Get()), d.Length(c.Skin.Total()), d.Length(c.Skin.Setback.Get()), c.Grid.Around.Get(), d.Length(c.Grid.ModuleAround.Get()))
}

func (d *sectionOf) roomDims() {
	c, w := d.c, d.c.Room.Width.Get()
	d.b.Dim(draft.Dim{From: d.v.At(-d.wall, -d.floor), To: d.v.At(c.Vault.Span.Get()+d.wall, -d.floor), Side: draft.Below, Text: "room " + d.Dim(w)})
	d.tall("springing", 0)
	if rise := c.Vault.Rise.Get(); rise > 0 {
		d.tall("crown", rise)
	}
	if !math.IsNaN(d.framing) {
		d.tall("framing", d.framing)
	}
}

// tall is the dimension from the floor up to a height over the springing.
func (d *sectionOf) tall(to string, z float64) {
	d.b.Dim(draft.Dim{From: d.v.At(-d.wall, -d.floor), To: d.v.At(-d.wall, z), Side: draft.Left, Text: d.Dim(d.c.Room.Height.Get()+z) + " to the " + to})
}

// ribMark names the sheet that the section of a rib is on.
func (d *sectionOf) ribMark() {
	if text := d.ribSheet(); text != "" {
		around := float64(d.c.Grid.Around.Get())
		share := (math.Floor(0.75*around) + 0.5) / around // between two rails
		if around < 3 {
			share = 0.8
		}
		at := d.c.Vault.Behind(share*d.c.Vault.Arc.Get(), d.c.Rib.Depth.Get()/2)
		d.b.Label(draft.Label{Text: text, Bubble: "R", Of: d.v.At(at.Y, at.Z), Prefer: []draft.Side{draft.Below, draft.Left}})
	}
}

// ribSheet says where that is; nothing where it is not drawn.
func (d *sectionOf) ribSheet() string {
	number, drawn := d.NumberOf(RibName)
	if !drawn {
		return ""
	}
	text := "section of a rib"
	if number != "" {
		text += ",\nsheet " + number
	}
	return text
}

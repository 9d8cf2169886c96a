package shop

import (
	"math"

	"dryfit/rules/model/layout"
)

// Count is how many there are in the whole vault, the pieces of split arches each
// counted.
type Count struct {
	Panels, HalfRibs, Ribs, Rails, HalfRails int
	Tenons, Mortises                         int // of all seams; two mortises a tenon
	Straps, Holes                            int // holes of the straps' screws in ribs
	Blocks                                   int // between the framing, for straps that meet no member
	Pieces                                   int // ribs, rails and cut pieces of the skin
}

func count(c *layout.Ceiling, skin int) Count {
	n := Count{Panels: c.Panel.Count.Get(), Tenons: c.Seam.Tenons.Get(), Mortises: 2 * c.Seam.Tenons.Get()}
	for _, p := range c.VaultPieces() {
		switch p.Kind {
		case layout.Rib:
			n.Ribs += p.Count
		case layout.HalfRib:
			n.HalfRibs += p.Count
		case layout.Rail:
			n.Rails += p.Count
		case layout.HalfRail:
			n.HalfRails += p.Count
		}
	}
	n.Pieces = n.Ribs + n.HalfRibs + n.Rails + n.HalfRails + skin
	if c.Strap.Given() && c.Strap.Stations.Given() {
		n.Straps = 2 * c.Panel.Along.Get() * len(c.Strap.Stations.Get())
		n.Blocks = len(Blocks(c))
	}
	if s := c.Strap.Screws; s.Given() && s.Count.Given() {
		n.Holes = n.Straps * s.Count.Get()
	}
	return n
}

// meets is how far a strap on a member's side may stand off it and still be screwed
// to it: common practice.
const meets = 0.010

// Block is one between two members of the framing, where straps come up that meet
// neither.
type Block struct {
	Station  int     // of the straps, in the order of the spec
	Straps   int     // that it takes
	From, To float64 // the middles of its two members, or a wall, as room.framing.offset counts
	Length   float64 // between their faces
}

// Blocks are those of all stations. Where the framing runs across the span as the
// arch does, both straps of a seam may share a block; where it runs along, each strap
// has its own.
func Blocks(c *layout.Ceiling) (out []Block) {
	f := c.Room.Framing
	if !c.Strap.Given() || !c.Strap.Stations.Given() || !f.Given() || !f.Spacing.Given() || !f.Offset.Given() || !f.Member.Given() || !f.Runs.Given() {
		return nil
	}
	side := (c.Room.Width.Get() - c.Vault.Span.Get()) / 2
	for i, s := range c.Strap.Stations.Get() {
		lines, shared := []float64(nil), true
		for _, r := range c.EdgeRibs() {
			lines = append(lines, c.StrapLine(r))
		}
		if f.Runs.Get() == "along" {
			shared = false
			for k := range lines {
				lines[k] = side + c.StrapAcross(s)
			}
		}
		out = append(out, station(c, i+1, lines, shared)...)
	}
	return out
}

// station are the blocks of one station, whose straps come up on lines across the
// framing.
func station(c *layout.Ceiling, number int, lines []float64, shared bool) (out []Block) {
	f := c.Room.Framing
	for _, x := range lines {
		if framed(c, x) {
			continue
		}
		from := f.Offset.Get() + math.Floor((x-f.Offset.Get())/f.Spacing.Get())*f.Spacing.Get()
		if last := len(out) - 1; shared && last >= 0 && out[last].From == from {
			out[last].Straps++
			continue
		}
		out = append(out, Block{Station: number, Straps: 1, From: from})
	}
	room := c.Room.Length.Get()
	if f.Runs.Get() == "along" {
		room = c.Room.Width.Get()
	}
	for i := range out {
		out[i].span(f.Spacing.Get(), f.Member.Get(), room)
	}
	return out
}

// span sets where a block ends: at the next member, or at a wall before it.
func (b *Block) span(spacing, member, room float64) {
	low, high := b.From+member/2, b.From+spacing-member/2
	b.To = b.From + spacing
	if b.From < 0 {
		b.From, low = 0, 0
	}
	if b.To > room {
		b.To, high = room, room
	}
	b.Length = high - low
}

// framed reports whether a strap's line meets a member: its side, or its underside.
func framed(c *layout.Ceiling, x float64) bool {
	f := c.Room.Framing
	from := math.Abs(math.Mod(x-f.Offset.Get(), f.Spacing.Get()))
	off := min(from, f.Spacing.Get()-from)
	if c.Strap.Fixing.Top.Get() == "side" {
		return math.Abs(off-(f.Member.Get()+c.Strap.Thickness.Get())/2) <= meets
	}
	return off <= f.Member.Get()/2
}

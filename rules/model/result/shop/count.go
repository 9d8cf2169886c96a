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
		n.Blocks = blocks(c)
	}
	if s := c.Strap.Screws; s.Given() && s.Count.Given() {
		n.Holes = n.Straps * s.Count.Get()
	}
	return n
}

// meets is how far a strap on a member's side may stand off it and still be screwed
// to it: common practice.
const meets = 0.010

// blocks counts the bays between members at a station, where a strap comes up that
// meets none. Where the framing runs across the span as the arch does, both straps
// of a seam may share a block; where it runs along, each strap has its own.
func blocks(c *layout.Ceiling) int {
	f := c.Room.Framing
	if !f.Given() || !f.Spacing.Given() || !f.Offset.Given() || !f.Member.Given() || !f.Runs.Given() {
		return 0
	}
	stations := c.Strap.Stations.Get()
	if f.Runs.Get() == "along" {
		missing := 0
		side := (c.Room.Width.Get() - c.Vault.Span.Get()) / 2
		for _, s := range stations {
			if !framed(c, side+c.StrapAcross(s)) {
				missing++
			}
		}
		return 2 * c.Panel.Along.Get() * missing
	}
	bays := map[int]bool{}
	for _, r := range c.EdgeRibs() {
		if x := c.StrapLine(r); !framed(c, x) {
			bays[int(math.Floor((x-f.Offset.Get())/f.Spacing.Get()))] = true
		}
	}
	return len(bays) * len(stations)
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

package shop

import (
	"math"
	"slices"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// Lumber is what is bought for pieces of one kind.
type Lumber struct {
	Species   string
	BoardFeet float64
	Missing   bool // no plank of the shop's makes some of the pieces
}

// CutSize is what a piece is cut to before it is planed, jointed and trimmed, and the
// nominal plank that it is cut from; 0 where none of the shop's makes it.
type CutSize struct {
	Count                    int
	Length, Width, Thickness float64
	Stock                    int
	Plank                    float64 // what one takes of the plank, m3
	Way                      string  // how strips come out of the plank: "ripped", "resawn"
	Finished                 float64 // the thickness that has to be left of a surfaced plank, where strips are ripped; 0 of sawn layers
}

// Cuts are the cut sizes of what ribs and rails are made of.
type Cuts struct {
	Strips []CutSize // of each piece of an arch, of its half ribs and its whole ones
	Planks []CutSize // of sawn and solid ribs
	Rails  []CutSize // whole ones, then halves by their widths
}

func cuts(c *layout.Ceiling, strips []Strips, sawn []Sawn) Cuts {
	bench := c.Bench()
	out := Cuts{Rails: railCuts(c, bench)}
	ribs := ribsOf(c)
	for _, s := range strips {
		for _, r := range []struct {
			count int
			width float64
		}{{ribs.half, c.Rib.Width.Get() / 2}, {ribs.full, c.Rib.Width.Get()}} {
			if r.count*s.PerRib > 0 {
				out.Strips = append(out.Strips, stripCut(c, bench, s, r.width, r.count*s.PerRib))
			}
		}
	}
	for _, s := range sawn {
		for _, l := range s.Layers {
			out.Planks = append(out.Planks, segmentCuts(bench, l, ribs.half+2*ribs.full)...)
		}
	}
	if c.Rib.Construction.Get() == "solid" {
		out.Planks = solidCuts(c, bench, ribs)
	}
	return out
}

// Planks are what ribs and rails are cut from, in m, the ribs without their
// lengths: only what decides on the plank is read of them.
func Planks(c *layout.Ceiling) (ribs, rails []CutSize) {
	bench, n := c.Bench(), ribsOf(c)
	add := func(count int, width float64) {
		switch {
		case count == 0:
		case c.Rib.Construction.Get() == "solid":
			ribs = append(ribs, squared(bench, width, c.Rib.Depth.Get(), 0, count))
		case whole(c) > 0:
			ribs = append(ribs, stripCut(c, bench, Strips{}, width, count))
		}
	}
	if c.Rib.Construction.Get() != "sawn" {
		add(n.half, c.Rib.Width.Get()/2)
		add(n.full, c.Rib.Width.Get())
		return ribs, railCuts(c, bench)
	}
	if c.Rib.Layers.Get() == 0 {
		return nil, railCuts(c, bench)
	}
	for i, l := range halfLayers(c) {
		ribs = append(ribs, CutSize{Stock: c.LayerStock(i), Thickness: l.Width})
	}
	return ribs, railCuts(c, bench)
}

// stripCut is the less of ripping strips off a plank as thick as they are wide, and
// of resawing plank that lies flat, as thick as its name. Scarfs take their length
// twice.
func stripCut(c *layout.Ceiling, bench *standards.Shop, s Strips, width float64, count int) CutSize {
	cut := CutSize{
		Count: count, Length: s.Length, Finished: width, Thickness: c.Rib.Lamination.Get() + 2*bench.Plane, Width: width + bench.Joint,
	}
	long := s.Length + float64(max(s.Boards, 1)-1)*s.Scarf
	least := math.Inf(1)
	take := func(quarters int, section float64, way string) {
		if section < least*(1-onSheet) {
			least, cut.Stock, cut.Way = section, quarters, way
		}
	}
	if q, ok := nominal(bench, width); ok {
		take(q, timber.Rough(q)*(cut.Thickness+bench.Kerf), "ripped")
	}
	for _, q := range bench.Stock {
		if k := math.Floor((timber.Rough(q)+bench.Kerf)/(cut.Thickness+bench.Kerf) + 1e-9); k >= 1 {
			take(q, timber.Rough(q)/k*(cut.Width+bench.Kerf), "resawn")
		}
	}
	if cut.Stock > 0 {
		cut.Plank = least * long
	}
	return cut
}

// nominal is the least of the shop's planks that is still as thick, once surfaced.
func nominal(bench *standards.Shop, thickness float64) (quarters int, ok bool) {
	for _, q := range bench.Stock {
		if t, err := timber.Surfaced(q); err == nil && t >= thickness-onSheet {
			return q, true
		}
	}
	return 0, false
}

// railCuts are the cut sizes of rails, those that are alike once: the smaller side of
// the plank's surfaced thickness, the larger one ripped and jointed.
func railCuts(c *layout.Ceiling, bench *standards.Shop) []CutSize {
	var all []layout.Piece
	for k := range c.Panel.Around.Get() {
		s0, s1 := c.Piece(k)
		all = append(all, c.Rails(s0, s1, c.Grid.Along.Get())...)
	}
	var out []CutSize
	for _, kind := range []layout.PieceKind{layout.Rail, layout.HalfRail} {
		for _, p := range all {
			if p.Kind != kind {
				continue
			}
			cut := squared(bench, p.Width, p.Depth, p.Length+2*bench.Trim.Rail, p.Count)
			if n := len(out); n > 0 && math.Abs(out[n-1].Width-cut.Width) < 1e-6 && math.Abs(out[n-1].Thickness-cut.Thickness) < 1e-6 {
				out[n-1].Count += cut.Count
				continue
			}
			out = append(out, cut)
		}
	}
	return out
}

// squared is a piece of rectangular section out of a plank.
func squared(bench *standards.Shop, a, b, length float64, count int) CutSize {
	cut := CutSize{Count: count, Length: length, Width: max(a, b) + bench.Joint, Thickness: min(a, b), Finished: min(a, b)}
	if q, ok := nominal(bench, cut.Thickness); ok {
		cut.Stock, cut.Plank = q, timber.Rough(q)*(cut.Width+bench.Kerf)*length
	}
	return cut
}

// segmentCuts are those of the pieces of one layer of sawn ribs.
func segmentCuts(bench *standards.Shop, l SawnLayer, layers int) []CutSize {
	var out []CutSize
	for _, s := range l.Sizes {
		cut := CutSize{
			Count: layers, Length: s.Length + 2*bench.Trim.Segment, Width: s.Width + bench.Joint, Thickness: l.Thickness, Stock: l.Stock,
		}
		cut.Plank = timber.Rough(l.Stock) * (cut.Width + bench.Kerf) * cut.Length
		out = append(out, cut)
	}
	return out
}

// solidCuts are those of ribs of one piece each: straight, as long as the longer edge
// and the trim of a strip.
func solidCuts(c *layout.Ceiling, bench *standards.Shop, ribs counted) []CutSize {
	var out []CutSize
	for k := range c.Panel.Around.Get() {
		from, to, halves := bent(c, k)
		intrados, back := edges(c, from, to)
		length := math.Max(intrados, back) + 2*bench.Trim.Strip
		for _, r := range []struct {
			count int
			width float64
		}{{ribs.half, c.Rib.Width.Get() / 2}, {ribs.full, c.Rib.Width.Get()}} {
			if r.count > 0 {
				out = append(out, squared(bench, r.width, c.Rib.Depth.Get(), length, halves*r.count))
			}
		}
	}
	return out
}

// lumber sums up cut sizes of one species, and adds what defects take.
func lumber(bench *standards.Shop, species timber.Species, lists ...[]CutSize) Lumber {
	out := Lumber{Species: species.Name}
	volume := 0.0
	all := slices.Concat(lists...)
	out.Missing = len(all) == 0 // strips that do not make up a rib, layers that are not stated
	for _, cut := range all {
		volume += cut.Plank * float64(cut.Count)
		out.Missing = out.Missing || cut.Stock == 0
	}
	defect := bench.Defect.Hardwood
	if species.Group == timber.Softwood {
		defect = bench.Defect.Softwood
	}
	out.BoardFeet = volume * (1 + defect) / timber.BoardFoot
	return out
}

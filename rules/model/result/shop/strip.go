package shop

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// Strips are those that the ribs of one piece of an arch are glued of.
type Strips struct {
	Piece  int
	Halves int     // 2 of a rib that is mitred at a pointed crown, each half glued by itself
	PerRib int     // strips in one rib, both halves; 0 where whole ones do not make up its depth
	Length float64 // of one: the longer edge of the rib, or of a half of it, and the trim of both ends
	Boards int     // that one is scarfed of; 0 where a blank is no longer than its scarf
	Scarf  float64 // length of a scarf
	// Scarfs are their middles from one end of the strip. Every other strip is
	// turned end for end, so that neighbours' scarfs lie apart.
	Scarfs []float64
	Apart  float64 // left between the scarfs of neighbours; under nothing where they overlap
	Count  int     // in the whole vault
	Ribs   int     // in the whole vault: half ribs and whole ones
}

// bent is the intrados of a piece of an arch as far as it is bent in one go: to the
// mitre of a pointed crown within it. The other half mirrors it.
func bent(c *layout.Ceiling, k int) (from, to float64, halves int) {
	s0, s1 := c.Piece(k)
	crown := c.Vault.Arc.Get() / 2
	if s0 < crown && crown < s1 && c.Vault.Mitred(crown) {
		return s0, crown, 2
	}
	return s0, s1, 1
}

// Halves is 2 of a rib that holds a pointed crown within it, where two halves are
// mitred, by a place along the arc that is the rib's middle; else 1.
func Halves(c *layout.Ceiling, middle float64) int {
	for k := range c.Panel.Around.Get() {
		if s0, s1 := c.Piece(k); s0 <= middle && middle <= s1 {
			_, _, halves := bent(c, k)
			return halves
		}
	}
	return 1
}

// edges are the lengths of both edges of what is bent in one go, ends as cut.
func edges(c *layout.Ceiling, from, to float64) (intrados, back float64) {
	return c.Vault.Parallel(from, to, 0).Length(), c.Vault.Parallel(from, to, c.Rib.Depth.Get()).Length()
}

// whole is how many strips make up a rib's depth; 0 where whole ones do not, or the
// rib is not laminated.
func whole(c *layout.Ceiling) int {
	n := c.Laminations()
	if n != math.Trunc(n) {
		return 0
	}
	return int(n)
}

// strips are those of each piece of an arch; none of ribs that are not glued of
// strips.
func strips(c *layout.Ceiling) []Strips {
	if c.Laminations() == 0 {
		return nil
	}
	bench := c.Bench()
	out := make([]Strips, c.Panel.Around.Get())
	ribs := ribsOf(c)
	for k := range out {
		from, to, halves := bent(c, k)
		intrados, back := edges(c, from, to)
		s := Strips{
			Piece: k + 1, Halves: halves, PerRib: halves * whole(c), Ribs: ribs.half + ribs.full,
			Length: math.Max(intrados, back) + 2*bench.Trim.Strip, Scarf: bench.Scarf.Slope * c.Rib.Lamination.Get(),
		}
		s.Count = s.PerRib * s.Ribs
		s.scarf(bench)
		out[k] = s
	}
	return out
}

// scarf divides a strip into boards. A scarf may lie anywhere in a stretch as long
// as the boards reach further than the strip; it is put off the middle of that by
// half of what neighbours need, so that a strip turned end for end is its neighbour.
func (s *Strips) scarf(bench *standards.Shop) {
	blank := bench.Blank
	if blank <= s.Scarf {
		return
	}
	s.Boards = max(1, int(math.Ceil((s.Length-s.Scarf)/(blank-s.Scarf)-1e-9)))
	if s.Boards == 1 {
		s.Apart = math.Inf(1)
		return
	}
	slack := float64(s.Boards)*blank - float64(s.Boards-1)*s.Scarf - s.Length
	off := math.Min(slack, s.Scarf+bench.Scarf.Apart)
	s.Apart = off - s.Scarf
	for i := 1; i < s.Boards; i++ {
		s.Scarfs = append(s.Scarfs, float64(i)*(blank-s.Scarf)-slack/2-off/2+s.Scarf/2)
	}
}

// counted are the ribs of one piece of an arch in the whole vault.
type counted struct{ full, half int }

func ribsOf(c *layout.Ceiling) (n counted) {
	n.full, n.half = c.RibCount()
	return n
}

// oneRadius is the radius of a curve that has no other; 0 of another.
func oneRadius(c curve.Curve) float64 {
	const alike = 1e-9
	k := c.Curvature(0)
	for _, s := range c.Corners() {
		for _, at := range []float64{s, s - c.Length()/7} {
			if math.Abs(c.Curvature(at)-k) > alike*math.Abs(k) {
				return 0
			}
		}
	}
	if k == 0 {
		return 0
	}
	return 1 / k
}

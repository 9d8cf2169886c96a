package picture

import "dryfit/cmd/dryfit/internal/drawing/paper"

// stretch is a part of a member's width, from one side to the other, in m.
type stretch struct{ from, to float64 }

// members paints the undersides of rails and ribs, with their edges, the grooves in
// them, and the seams.
func (s *scene) members() {
	c := s.c
	for i := range c.Grid.Along.Get() {
		x := stretch{c.RibAt(i) + c.Rib.Width.Get()/2, c.RibAt(i+1) - c.Rib.Width.Get()/2}
		for j := range c.Grid.Around.Get() + 1 {
			s.rail(x, j)
		}
	}
	for i := range c.Grid.Along.Get() + 1 {
		x := stretch{c.RibAt(i) - c.Rib.Width.Get()/2, c.RibAt(i) + c.Rib.Width.Get()/2}
		if c.Grid.HalfEnds.Get() && i == 0 {
			x.from = c.RibAt(i)
		}
		if c.Grid.HalfEnds.Get() && i == c.Grid.Along.Get() {
			x.to = c.RibAt(i)
		}
		s.rib(x, i)
	}
}

// rail paints the underside of one between two ribs, with the grooves of its sides.
func (s *scene) rail(x stretch, j int) {
	c := s.c
	arc, at := c.Vault.Arc.Get(), float64(j)*c.Grid.ModuleAround.Get()
	whole := stretch{max(0, at-c.Rail.Width.Get()/2), min(arc, at+c.Rail.Width.Get()/2)}
	paint := func(a stretch, tone paper.Tone, pen paper.Pen) {
		s.add([]space{s.at(x.from, a.from, 0), s.at(x.to, a.from, 0), s.at(x.to, a.to, 0), s.at(x.from, a.to, 0)}, nil, tone, pen)
	}
	paint(whole, memberTone, paper.Hair)
	if r := c.Grid.Reveal; r.Cuts(c.Rail) && r.At.Get() == "sides" {
		for _, g := range sides(whole, r.Width.Get(), j > 0, j < c.Grid.Around.Get()) {
			paint(g, grooveTone, paper.None)
		}
	}
}

// sides are the grooves of those sides of a member that face a coffer.
func sides(of stretch, wide float64, low, high bool) (out []stretch) {
	if low {
		out = append(out, stretch{of.from, of.from + wide})
	}
	if high {
		out = append(out, stretch{of.to - wide, of.to})
	}
	return out
}

// rib paints the underside of one, from foot to foot.
func (s *scene) rib(x stretch, i int) {
	s.band(x, memberTone)
	for _, g := range s.grooves(x, i) {
		s.band(g, grooveTone)
	}
	lines := []float64{x.from, x.to}
	if s.c.SeamAt(i) {
		lines = append(lines, (x.from+x.to)/2)
	}
	n := s.steps * s.c.Grid.Around.Get()
	for _, x := range lines {
		for k := range n { // as thin figures, which are cut off and clipped as all are
			s.add([]space{s.step(x, k, n), s.step(x, k+1, n), s.step(x, k, n)}, nil, paper.Clear, paper.Hair)
		}
	}
}

// step is a point of the intrados at the end of the k-th of n equal parts of its arc.
func (s *scene) step(x float64, k, n int) space {
	return s.at(x, s.c.Vault.Arc.Get()*float64(k)/float64(n), 0)
}

// band paints a strip of the intrados from foot to foot.
func (s *scene) band(x stretch, tone paper.Tone) {
	n := s.steps * s.c.Grid.Around.Get()
	for k := range n {
		s.add([]space{s.step(x.from, k, n), s.step(x.to, k, n), s.step(x.to, k+1, n), s.step(x.from, k+1, n)}, nil, tone, paper.None)
	}
}

// grooves are the mouths of the reveals in the underside of a rib: at its seam, at the
// sides that face a coffer, or where a layer is set back.
func (s *scene) grooves(x stretch, i int) (out []stretch) {
	c := s.c
	r, middle := c.Grid.Reveal, c.RibAt(i)
	switch {
	case !r.At.Given():
	case r.At.Get() == "layers":
		at := middle - c.Rib.Width.Get()/2
		for _, l := range c.RibLayers.Get() {
			if g := (stretch{max(at, x.from), min(at+l.Width, x.to)}); l.From > 0 && g.to > g.from {
				out = append(out, g)
			}
			at += l.Width
		}
	case !r.Cuts(c.Rib.Member):
	case r.At.Get() == "sides":
		out = sides(x, r.Width.Get(), i > 0, i < c.Grid.Along.Get())
	case c.SeamAt(i):
		out = append(out, stretch{middle - r.Width.Get()/2, middle + r.Width.Get()/2})
	}
	return out
}

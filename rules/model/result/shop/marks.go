package shop

import (
	"fmt"
	"math"

	"dryfit/rules/model/layout"
)

// onRail is how near a rail, as a share of the arc, an end of a piece lies on it.
const onRail = 1e-9

// rails marks the rails of a piece, halves at its ends and at a pointed crown.
func (s *section) rails() {
	arc, around := s.c.Vault.Arc.Get(), s.c.Grid.Around.Get()
	slack, half := onRail*arc, s.c.Rail.Width.Get()/2
	s.railMark(s.From, false, true)
	for j := range around + 1 {
		at := arc * float64(j) / float64(around)
		if at < s.From-slack || at > s.To+slack {
			continue
		}
		s.Stick = append(s.Stick, Width{j, max(at-s.From-half, 0), min(at-s.From+half, s.Intrados)})
		if at < s.From+slack || at > s.To-slack {
			continue
		}
		s.railMark(at, true, true)
		s.Rails = append(s.Rails, s.station(j, at))
		s.Marks = append(s.Marks, label(s.raised(at, s.c.Rail.Depth.Get()/2), 0, fmt.Sprintf("rail %d", j)))
	}
	s.railMark(s.To, true, false)
}

// railMark is the section of a rail on the rib's side.
func (s *section) railMark(at float64, left, right bool) {
	region := s.c.Vault.RailSection(at, s.c.Rail, left, right)
	var o Outline
	for i, p := range region {
		o = append(o, straight(s.f.at(p), s.f.at(region[(i+1)%len(region)]))...)
	}
	if o != nil {
		s.Marks = append(s.Marks, line(Rail, o))
	}
}

// straps marks the straps of a piece and the holes of their screws.
func (s *section) straps() {
	st := s.c.Strap
	if !st.Given() || !st.Stations.Given() {
		return
	}
	for i, share := range st.Stations.Get() {
		at := share * s.c.Vault.Arc.Get()
		if !s.c.Holds(s.From, s.To, at) {
			continue
		}
		p := s.station(i+1, at)
		s.Straps = append(s.Straps, p)
		along := s.f.turned(s.inner.Tangent(at - s.From))
		s.Marks = append(s.Marks, line(Strap, straight(p.On, p.Behind)),
			label(s.raised(at, s.c.Rib.Depth.Get()*0.75), math.Atan2(along[1], along[0]), fmt.Sprintf("strap %d", i+1)))
		s.strapOutline(p)
		s.holes(p)
	}
}

// strapOutline is the strap as it lies on a side of the rib, from the back down, or
// its lap along the back.
func (s *section) strapOutline(p Station) {
	st := s.c.Strap
	if !st.Lap.Given() || !st.Width.Given() {
		return
	}
	along, down := st.Width.Get()/2, st.Lap.Get()
	if st.Fixing.Bottom.Get() == "back" {
		along, down = st.Lap.Get()/2, 0
	}
	a, b := s.beside(p, -along, 0), s.beside(p, along, 0)
	o := straight(a, b)
	if down > 0 {
		c, d := s.beside(p, along, down), s.beside(p, -along, down)
		o = append(append(append(o, straight(b, c)...), straight(c, d)...), straight(d, a)...)
	}
	s.Marks = append(s.Marks, line(Strap, o))
}

// beside is a place beside a station's own on the back: along the tangent there, and
// down from the back.
func (s *section) beside(p Station, along, down float64) PatternPoint {
	nx, ny := p.Behind[0]-p.On[0], p.Behind[1]-p.On[1]
	d := math.Hypot(nx, ny)
	nx, ny = nx/d, ny/d
	return PatternPoint{p.Behind[0] + along*ny - down*nx, p.Behind[1] - along*nx - down*ny}
}

// ScrewRow is the row of one strap's screws, in m: where the first lies from the
// lap's end, and how far apart they are. Without strap.screws.spacing they lie even
// over the lap. The first is below 0 where the row is longer than the lap; ok is
// false without screws, their count or the lap. Derived.
func ScrewRow(c *layout.Ceiling) (first, pitch float64, ok bool) {
	st := c.Strap
	if !st.Screws.Given() || !st.Screws.Count.Given() || !st.Lap.Given() {
		return 0, 0, false
	}
	n := st.Screws.Count.Get()
	pitch = st.Lap.Get() / float64(n)
	if st.Screws.Spacing.Given() {
		pitch = st.Screws.Spacing.Get()
	}
	return (st.Lap.Get() - float64(n-1)*pitch) / 2, pitch, true
}

// holes are those of the screws at the bottom of one strap: in the rib's back on
// both sides of the strap's own place, in its side below the back.
func (s *section) holes(p Station) {
	st := s.c.Strap
	first, pitch, ok := ScrewRow(s.c)
	if !ok {
		return
	}
	depth := math.NaN()
	if st.Screws.Penetration.Given() {
		depth = st.Screws.Penetration.Get()
	}
	n := st.Screws.Count.Get()
	for i := range n {
		h := Hole{Strap: p.Number, Screw: i + 1, Back: p.Back, Depth: depth}
		if st.Fixing.Bottom.Get() == "back" {
			off := (float64(i) - float64(n-1)/2) * pitch
			h.Back += off
			s.boreBack(p, off, depth)
		} else {
			h.Down = first + float64(i)*pitch
			s.Marks = append(s.Marks, Mark{Layer: Bore, Circle: &Circle{s.beside(p, 0, h.Down), s.bore() / 2}})
		}
		s.Holes = append(s.Holes, h)
	}
}

// bore is the diameter of a screw as it is marked; a pilot hole is the shop's to
// choose.
func (s *section) bore() float64 {
	if d := s.c.Strap.Screws.Diameter; d.Given() {
		return d.Get()
	}
	const mark = 0.004
	return mark
}

// boreBack marks a hole in the back, at a distance along it from a strap's place.
func (s *section) boreBack(p Station, off, depth float64) {
	if math.IsNaN(p.Back) {
		return
	}
	if math.IsNaN(depth) {
		depth = s.c.Rib.Depth.Get() / 2
	}
	at := min(max(p.Back+off, 0), s.Back)
	top, t := s.outer.At(at), s.outer.Tangent(at)
	n := PatternPoint{-t.Z, t.Y}
	end := top
	end.Y, end.Z = top.Y-depth*n[0], top.Z-depth*n[1]
	s.Marks = append(s.Marks, line(Bore, straight(s.f.at(top), s.f.at(end))))
}

// tenons marks the mortises of the seam beside the rib, in the middle of its depth.
func (s *section) tenons() {
	if s.c.Seam.Count.Get() == 0 {
		return
	}
	wide, thick, middle := s.c.Seam.Tenon.Width.Get()/2, s.c.Seam.Tenon.Thickness.Get()/2, s.c.Rib.Depth.Get()/2
	for i, along := range s.c.TenonStations(s.To - s.From) {
		p := s.station(i+1, s.From+along)
		s.Tenons = append(s.Tenons, p)
		a, b := s.beside(p, -wide, middle-thick), s.beside(p, wide, middle-thick)
		c, d := s.beside(p, wide, middle+thick), s.beside(p, -wide, middle+thick)
		s.Marks = append(s.Marks, line(Mortise, Outline{{From: a, To: b}, {From: b, To: c}, {From: c, To: d}, {From: d, To: a}}))
	}
	s.Notes = append(s.Notes, "Mortises are marked as wide as the tenon, in the middle of the rib's depth; the spec does not state their place. Their fit: "+s.c.Seam.Mortise.Get()+".")
}

// grooves marks how deep the reveal is, and where layers are set back.
func (s *section) grooves() {
	add := func(depth float64) {
		if depth > 0 {
			s.Marks = append(s.Marks, line(Reveal, s.f.chain(s.c.Vault.Parallel(s.From, s.To, depth))))
		}
	}
	if r := s.c.Grid.Reveal; r.Cuts(s.c.Rib.Member) {
		add(r.Depth.Get())
	}
	done := map[float64]bool{}
	for _, l := range s.c.RibLayers.Get() {
		if !done[l.From] {
			add(l.From)
		}
		done[l.From] = true
	}
}

// runs are the running dimensions of all that is marked, along both edges, and of
// their ends.
func (s *section) runs() {
	inner, outer := s.f.at(s.inner.At(s.Intrados)), s.f.at(s.outer.At(s.Back))
	s.Runs = append(s.Runs, closing("intrados", s.Intrados, inner), closing("back", s.Back, outer))
	for _, kind := range []struct {
		name  string
		stops []Station
	}{{"rail", s.Rails}, {"strap", s.Straps}, {"tenon", s.Tenons}} {
		inner, outer := Run{Name: kind.name + "s on the intrados", Length: s.Intrados}, Run{Name: kind.name + "s on the back", Length: s.Back}
		for _, p := range kind.stops {
			name := fmt.Sprintf("%s %d", kind.name, p.Number)
			inner.Stations = append(inner.Stations, Stop{name, p.Intrados, p.On})
			if !math.IsNaN(p.Back) {
				outer.Stations = append(outer.Stations, Stop{name, p.Back, p.Behind})
			}
		}
		for _, r := range []Run{inner, outer} {
			if len(r.Stations) > 0 {
				s.Runs = append(s.Runs, r)
			}
		}
	}
}

package shop

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
)

// Skin is one layer of the skin of one piece of an arch, developed: laid flat, at
// the middle of the layer's thickness.
type Skin struct {
	Pattern
	Piece, Layer  int
	From, To      float64 // along the arc of the whole intrados
	Length        float64 // around, ends as cut
	Width         float64 // along: between rib faces, or an inner panel's length
	Rails         []Station
	Joints        []float64 // around, between the pieces that it is cut into
	Fittings      []Opening
	PiecesAround  int
	LongestPiece  float64
	WithinOneRail bool // no piece is longer than the sheet's bent edge
}

// Opening is the cut-out of a fitting in one layer.
type Opening struct {
	Number                  int // of the fitting in the spec
	Name                    string
	Panel                   int     // along, from 0 at the near end
	Around, Along           float64 // of its centre, from the left end of its piece and the near edge of its bay, or panel
	Diameter, Width, Length float64 // width around, length along
}

// development is a layer while it is laid flat.
type development struct {
	c     *layout.Ceiling
	depth float64 // of the middle of the layer
	s0    float64
	s1    float64
	curve curve.Curve
}

// develop is one layer of one piece of an arch.
func develop(c *layout.Ceiling, k, layer int) development {
	d := development{c: c, depth: c.Skin.Setback.Get() + (float64(layer)+0.5)*c.Skin.Actual()}
	d.s0, d.s1 = c.Piece(k)
	d.curve = c.Vault.Parallel(d.s0, d.s1, d.depth)
	return d
}

// at is the developed place of a station of the whole arch.
func (d development) at(s float64) float64 {
	return alongCurve(d.curve, d.c.Vault.Behind(s, d.depth))
}

// skins are the layers of all pieces of an arch.
func skins(c *layout.Ceiling) []Skin {
	var out []Skin
	for k := range c.Panel.Around.Get() {
		for layer := range c.Skin.Layers.Get() {
			out = append(out, skin(c, k, layer))
		}
	}
	return out
}

func skin(c *layout.Ceiling, k, layer int) Skin {
	d := develop(c, k, layer)
	s := Skin{Piece: k + 1, Layer: layer + 1, From: d.s0, To: d.s1, Length: d.curve.Length(), Width: c.Panel.Length.Get()}
	if c.Skin.Between.Get() {
		s.Width = c.Clear()
	}
	s.Name = fmt.Sprintf("skin-%d-%d", k+1, layer+1)
	s.Title = fmt.Sprintf("Skin of piece %d of the arch, layer %d from the room, laid flat", k+1, layer+1)
	s.Outline = rectangle(0, 0, s.Length, s.Width)
	s.rails(d)
	s.ribs(c)
	s.joints(d)
	s.openings(d, k)
	return s
}

// rectangle is one from its low corner.
func rectangle(x, y, length, width float64) Outline {
	a, b, c, d := PatternPoint{x, y}, PatternPoint{x + length, y}, PatternPoint{x + length, y + width}, PatternPoint{x, y + width}
	return Outline{{From: a, To: b}, {From: b, To: c}, {From: c, To: d}, {From: d, To: a}}
}

// upright is a line over the whole width.
func (s *Skin) upright(l Layer, x float64) Mark {
	return line(l, straight(PatternPoint{x, 0}, PatternPoint{x, s.Width}))
}

// rails marks both edges of each rail on the skin, and dimensions its middle.
func (s *Skin) rails(d development) {
	c := d.c
	arc, around, half := c.Vault.Arc.Get(), c.Grid.Around.Get(), c.Rail.Width.Get()/2
	run := Run{Name: "rails around", Length: s.Length}
	for j := range around + 1 {
		at := arc * float64(j) / float64(around)
		if at < d.s0+onRail*arc || at > d.s1-onRail*arc {
			continue
		}
		x := d.at(at)
		s.Rails = append(s.Rails, Station{Number: j, Intrados: at - d.s0, Back: x, On: PatternPoint{x, 0}, Behind: PatternPoint{x, s.Width}})
		run.Stations = append(run.Stations, Stop{fmt.Sprintf("rail %d", j), x, PatternPoint{x, 0}})
		s.Marks = append(s.Marks, s.upright(Rail, x-half), s.upright(Rail, x+half), label(PatternPoint{x, s.Width / 2}, math.Pi/2, fmt.Sprintf("rail %d", j)))
	}
	s.Marks = append(s.Marks, s.upright(Rail, half), s.upright(Rail, s.Length-half))
	if len(run.Stations) > 0 {
		s.Runs = append(s.Runs, run)
	}
	s.Runs = append(s.Runs, closing("skin", s.Length, PatternPoint{s.Length, 0}))
}

// ribs marks the faces of the ribs of an inner panel that the skin lies behind.
func (s *Skin) ribs(c *layout.Ceiling) {
	if c.Skin.Between.Get() {
		return
	}
	half, module := c.Rib.Width.Get()/2, c.Grid.ModuleAlong.Get()
	for i := 0; float64(i)*module < s.Width+half; i++ {
		for _, y := range []float64{float64(i)*module - half, float64(i)*module + half} {
			if y > 0 && y < s.Width {
				s.Marks = append(s.Marks, line(RibFace, straight(PatternPoint{0, y}, PatternPoint{s.Length, y})))
			}
		}
	}
}

// pieces are the lengths around that the layer is cut into: each from the left over
// as many whole modules as the sheet's bent edge takes.
func (d development) pieces() []float64 {
	marks := d.c.RailsWithin(d.s0, d.s1)
	lengths := make([]float64, len(marks)-1)
	for i := range lengths {
		lengths[i] = d.c.Vault.Parallel(marks[i], marks[i+1], d.depth).Length()
	}
	return grouped(lengths, d.c.Skin.Sheet.Bent.Get())
}

// joints marks where the layer is divided around.
func (s *Skin) joints(d development) {
	pieces := d.pieces()
	x := 0.0
	for i, p := range pieces {
		if i > 0 {
			s.Joints = append(s.Joints, x)
			s.Marks = append(s.Marks, s.upright(Joint, x))
		}
		x += p
		s.LongestPiece = max(s.LongestPiece, p)
	}
	s.PiecesAround = len(pieces)
	s.WithinOneRail = s.LongestPiece <= d.c.Skin.Sheet.Bent.Get()+onSheet
}

// onSheet lets what is as long as the sheet, but for round-off, be cut of it.
const onSheet = 1e-9

// grouped joins lengths from the first on, as many as a limit takes and one at the
// least.
func grouped(lengths []float64, limit float64) []float64 {
	var out []float64
	for _, l := range lengths {
		if n := len(out); n > 0 && out[n-1]+l <= limit+onSheet {
			out[n-1] += l
		} else {
			out = append(out, l)
		}
	}
	return out
}

// openings marks the cut-outs of the fittings in the piece.
func (s *Skin) openings(d development, k int) {
	c := d.c
	for i, f := range c.Fitting.Get() {
		at := f.Coffer.Get()
		if at[0] > c.Grid.Around.Get() || at[1] > c.Grid.Along.Get() {
			continue // which its own rule says
		}
		station, panel, along := c.FittingPlace(f)
		if !c.Holds(d.s0, d.s1, station) {
			continue
		}
		o := Opening{Number: i + 1, Name: f.Name.Get(), Panel: panel, Around: d.at(station), Along: along}
		s.opening(&o, f)
		s.Fittings = append(s.Fittings, o)
	}
}

func (s *Skin) opening(o *Opening, f layout.Fitting) {
	centre := PatternPoint{o.Around, o.Along}
	switch {
	case f.Diameter.Given():
		o.Diameter = f.Diameter.Get()
		s.Marks = append(s.Marks, Mark{Layer: Fitting, Circle: &Circle{centre, o.Diameter / 2}})
	case f.Width.Given() && f.Length.Given():
		o.Width, o.Length = f.Width.Get(), f.Length.Get()
		s.Marks = append(s.Marks, line(Fitting, rectangle(o.Around-o.Width/2, o.Along-o.Length/2, o.Width, o.Length)))
	}
	const off = 0.003 // of the name, from what is cut out and over the middle
	beside := PatternPoint{centre[0] + max(o.Diameter, o.Width)/2 + off, centre[1] + off}
	s.Marks = append(s.Marks, label(beside, 0, fmt.Sprintf("%s, panel %d from the near end", o.Name, o.Panel+1)))
}

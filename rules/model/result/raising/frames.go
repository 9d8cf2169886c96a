package raising

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// Frames are those of one panel of the row, the second where there are two: six of a
// whole arch, of a split one two of each piece and the joining; none where there is no
// plan.
func Frames(c *layout.Ceiling, plan Plan, site Site) []Frame {
	if plan.Err != nil || len(plan.Pieces) == 0 {
		return nil
	}
	f := newFramer(c, site)
	if len(plan.Pieces) > 1 {
		return f.split(plan.Pieces)
	}
	f.piece = plan.Pieces[0]
	out := []Frame{f.arrives(), f.turns(), f.onForks(), f.up(), f.slides()}
	return append(out, f.straps())
}

// framer makes the frames of one panel.
type framer struct {
	c         *layout.Ceiling
	site      Site
	t         turned
	piece     Piece
	row       int            // of the panel, from the far end, from 0
	near, far float64        // of its place along the room
	outline   curve.Region   // of its section, from the springing
	low, high curve.Point    // of that
	stance    stance         // of what is turned
	one       float64        // mass that one person lifts
	hung      []curve.Region // of the piece before it, from the springing
	turnedAs  int            // the piece that is drawn turned in the same way, from 1; 0 is none
}

func newFramer(c *layout.Ceiling, site Site) *framer {
	f := &framer{c: c, site: site, t: turnedOf(c), row: min(1, c.Panel.Along.Get()-1), one: c.Limit(personLimit, PersonMass)}
	near, far := c.PanelAlong(c.Panel.Along.Get() - 1 - f.row)
	f.near, f.far = c.NearGap()+near, c.NearGap()+far
	f.take(0, c.Vault.Arc.Get())
	f.stance = stance{f.t.weight.Get(), curve.Point{Y: f.t.across.Get(), Z: f.t.up.Get()}, c.Vault.Width.Get(), f.tall(), "back at the crown", site.Turn(c.Panel.Width.Get(), c.Panel.Height.Get())}
	return f
}

// stance is what is turned down: its weight without straps, its mass centre from where
// its outline is measured, how wide it is, how far from its feet and where it is held on
// its way down, and what the room leaves for it.
type stance struct {
	weight float64
	centre curve.Point
	wide   float64
	reach  float64
	held   string
	turn   Turning
}

// take is the part of the arch between two places along it.
func (f *framer) take(from, to float64) {
	f.outline = f.c.Vault.Band(from, to, 0, f.c.Vault.Thickness.Get())
	f.low, f.high = f.outline.Bounds()
}

func (f *framer) frame(name string) Frame {
	piece := 0
	if f.piece.Staging != nil {
		piece = f.piece.Piece
	}
	panel := f.row*f.c.Panel.Around.Get() + max(1, piece)
	return Frame{
		Panel: panel, Of: fmt.Sprintf("panel %d", panel), Piece: piece, Name: name, Release: Released(f.c), Crew: f.c.Crew.People.Get(),
	}
}

// hands is how many people lift a force of the panel where it weighs the most it may.
func (f *framer) hands(force float64) int {
	return Lifters(force*f.c.Panel.Heavier()/quantity.Gravity, f.one)
}

// beside is the gap beside the feet where the panel is so wide.
func (f *framer) beside(wide float64) Gap {
	g := Gap{"on each side between the panel and the wall", (f.site.Between - wide) / 2}
	if l := f.c.Ledger; l.Given() && l.Fixed.Get() == "before" && l.Projection.Given() {
		g.What, g.Size = "on each side between the panel and the ledger", g.Size-l.Projection.Get()
	}
	return g
}

// least is the smaller one of gaps.
func least(gaps ...Gap) Gap {
	out := gaps[0]
	for _, g := range gaps[1:] {
		if g.Size < out.Size {
			out = g
		}
	}
	return out
}

// box is an upright rectangle.
func box(y0, z0, y1, z1 float64) curve.Region {
	return curve.Region{{Y: y0, Z: z0}, {Y: y1, Z: z0}, {Y: y1, Z: z1}, {Y: y0, Z: z1}}
}

// moved is a region elsewhere.
func moved(r curve.Region, y, z float64) curve.Region {
	out := make(curve.Region, len(r))
	for i, p := range r {
		out[i] = curve.Point{Y: p.Y + y, Z: p.Z + z}
	}
	return out
}

// long and tall are the panel's length along the axis and its height over its feet.
func (f *framer) long() float64 { return f.c.Panel.EndLength.Get() }
func (f *framer) tall() float64 { return f.high.Z - f.low.Z }

// turningAt is where the feet stand along the room while it is turned, in the middle of
// the room: the crown sweeps towards the near end, the upper edge towards the far one.
func (f *framer) turningAt() float64 {
	return f.c.Room.Length.Get()/2 + (f.tall()-f.long())/2
}

// tipped is the side of the panel's box, its axis at an angle from upright, turned
// about its feet: Y is along, Z above the floor.
func (f *framer) tipped(angle float64) curve.Region {
	at, sin, cos := f.turningAt(), math.Sin(angle), math.Cos(angle)
	var out curve.Region
	for _, p := range box(0, 0, -f.tall(), f.long()) {
		out = append(out, curve.Point{Y: at + p.Y*cos + p.Z*sin, Z: -p.Y*sin + p.Z*cos})
	}
	return out
}

// around are so many people in a line before the crown of a panel that is turned.
func (f *framer) around(n int, z float64) (out []curve.Point) {
	for i := range n {
		y := f.low.Y + (float64(i)+0.5)*(f.high.Y-f.low.Y)/float64(n)
		out = append(out, curve.Point{Y: y, Z: z})
	}
	return out
}

func numbered(what string, forces []float64, numbers []int) (out []Share) {
	for i, v := range forces {
		if v > 0 {
			n := i + 1
			if numbers != nil {
				n = numbers[i]
			}
			out = append(out, Share{fmt.Sprintf("%s %d", what, n), 2 * v})
		}
	}
	return out
}

// carried is what lifts and straps carry in a state.
func (f *framer) carried(s *State) []Share {
	if s.Falls {
		return nil
	}
	return append(numbered("lift", s.Lifts, nil), numbered("strap", s.Straps, f.piece.Straps)...)
}

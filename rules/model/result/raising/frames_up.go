package raising

import (
	"fmt"
	"math"
	"strings"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// lifted is a frame of the panel on its lifts, its springing so high over the floor and
// so far before its place along the axis.
func (f *framer) lifted(name string, springing, before float64) Frame {
	out := f.frame(name)
	near, far := f.near-before, f.far-before
	out.Elevation = []curve.Region{moved(f.outline, 0, springing)}
	out.Plan = []curve.Region{box(f.low.Y, near, f.high.Y, far)}
	out.Weight, out.With = 2*f.piece.Weight, withStraps
	out.Carried = f.carried(&f.piece.Steps[0].State)
	out.Centre = Centre{Across: f.piece.Centre, Along: (near + far) / 2, Up: springing + f.middle(), FromEnd: f.t.along.Get()}
	for _, p := range f.overForks() {
		out.Forks = append(out.Forks, Fork{p.Y, springing + p.Z, math.Abs(f.piece.Centre - p.Y)})
	}
	out.Top = springing + f.high.Z
	f.crank(&out, near)
	f.alreadyUp(&out)
	return out
}

// middle is how high the mass centre is over the springing: of the panel, or of a piece
// by moments of its ribs, skin, rails and fittings.
func (f *framer) middle() float64 {
	if f.piece.Piece == 0 {
		return f.c.Panel.Centre.Get().Z
	}
	part := f.c.Panel.Parts.Get()[f.piece.Piece-1]
	l := f.c.Stretch(part.From, part.To)
	mass, moment := l.Mass, l.Mass*l.Centre.Z
	for _, p := range part.Points {
		m := p.Mass * float64(p.Count)
		mass, moment = mass+m, moment+m*p.Centre.Z
	}
	return moment / mass
}

// overForks are the places of the underside over the lifts, from the springing.
func (f *framer) overForks() (out []curve.Point) {
	arc := f.c.Panel.Arc.Get()
	for _, s := range f.c.Lift.Stations.Get() {
		out = append(out, f.c.Vault.Intrados.Get().At((float64(max(0, f.piece.Piece-1))+s)*arc))
	}
	return out
}

// crank puts a person at each crank, on the side of the near end.
func (f *framer) crank(out *Frame, near float64) {
	away := cranksAway
	if b := f.c.Lift.Base; b.Given() {
		away += max(0, b.Heel.Get()-f.long()/2)
	}
	if away > near {
		away = max(0, near/2)
		out.Unknown = append(out.Unknown, "The space between this panel and the near end wall is smaller than the space assumed here for a person at a crank.")
	}
	p := People{Are: "at the cranks", Away: away}
	for _, fork := range out.Forks {
		p.At = append(p.At, curve.Point{Y: fork.Across, Z: near - away})
	}
	out.People = p
	out.Hands = []Hands{{"at the cranks, one each", len(out.Forks)}}
}

// alreadyUp draws the panel before this one, and the pieces of its arch that hang.
func (f *framer) alreadyUp(out *Frame) {
	height := f.c.Room.Height.Get()
	for _, r := range f.hung {
		low, high := r.Bounds()
		out.Hung = append(out.Hung, moved(r, 0, height))
		out.HungPlan = append(out.HungPlan, box(low.Y, f.near, high.Y, f.far))
	}
	if f.row > 0 {
		near, far := f.c.PanelAlong(f.c.Panel.Along.Get() - f.row)
		low, high := f.c.Vault.Figure.Get().Bounds()
		out.HungPlan = append(out.HungPlan, box(low.Y, f.c.NearGap()+near, high.Y, f.c.NearGap()+far))
	}
}

// onForks is the panel on its feet, or on blocks under them, with the forks just under it.
func (f *framer) onForks() Frame {
	high := 0.0
	stowed := f.c.Lift.Stowed
	if stowed.Given() {
		high = blocks(f.c).Get()
	}
	out := f.lifted("on the forks", high-f.low.Z, slide(f.c).Get())
	out.Gap = f.beside(f.c.Vault.Width.Get())
	switch {
	case !stowed.Given():
		out.Unknown = append(out.Unknown, "Whether the stowed forks go under it is not checked: needs lift.stowed.")
	case high > 0:
		out.Hands = append(out.Hands, Hands{"to lift it onto blocks under its feet", f.hands(out.Weight)})
	default:
		for _, fork := range out.Forks {
			out.Gap = least(out.Gap, Gap{"between a stowed fork and the underside, for the saddle", fork.Height - stowed.Get()})
		}
	}
	f.saddles(&out)
	out.Until = "every fork bears, the underside lies in its saddle and can't slide off, and the panel has been lifted clear of the floor and is level"
	return out
}

// saddles says what a fork's saddle is not known by.
func (f *framer) saddles(out *Frame) {
	if s := f.c.Lift.Saddle; s.Given() && s.Get() {
		out.Unknown = append(out.Unknown, "The spec does not state the thickness of a saddle: the forks must be lower by this thickness, and blocks higher.")
	}
}

// up is the panel at its height, before it slides.
func (f *framer) up() Frame {
	out := f.lifted("up, level", f.c.Room.Height.Get(), slide(f.c).Get())
	level := f.c.Limit(levelLimit, Level)
	out.Gap = f.beside(f.tilted(level))
	out.Gap.What += ", one end higher by " + f.length(level)
	out.Until = "its ends are level within " + f.length(level) + ", and only those at the cranks are inside the hatching"
	return out
}

// tilted is how wide the panel is with one end so far over the other: a piece with
// upright ends c wide and e high is c·cos α + e·sin α wide, as passage.Between has it.
func (f *framer) tilted(level float64) float64 {
	c, e := f.c.Vault.Width.Get(), 0.0
	if f.c.Vault.Cut.Get() == "plumb" {
		e = f.c.Vault.Thickness.Get() / math.Cos(f.c.Vault.HalfAngle.Get())
	}
	sin := min(1, level/c)
	return c*math.Sqrt(1-sin*sin) + e*sin
}

func (f *framer) length(m float64) string { return f.c.Units.Format(quantity.Length(m).Value()) }

// slides is the panel over its place, on its way home.
func (f *framer) slides() Frame {
	by := slide(f.c).Get()
	name := "over its place, slid home by " + f.length(by)
	if by == 0 {
		name = "over its place"
	}
	out := f.lifted(name, f.c.Room.Height.Get(), 0)
	out.Gap = f.beside(f.c.Vault.Width.Get())
	if by > 0 {
		out.GhostPlan = []curve.Region{box(f.low.Y, f.near-by, f.high.Y, f.far-by)}
		out.Gap = least(out.Gap, Gap{"between the tenons and the panel before it slides", by - f.c.Seam.Tenon.Length.Get()/2})
		out.Unknown = append(out.Unknown, "The force that slides it on its forks is not computed.")
	}
	out.Unknown = append(out.Unknown, fmt.Sprintf("Nobody lifts or holds by hand above %s: slide it from a platform or from above, not from the floor.", f.length(HandsBelow)))
	f.last(&out)
	f.bases(&out, by)
	out.Until = "each lift is braked"
	if by > 0 {
		out.Until += ", the tenons are home and the seam is closed"
	}
	return out
}

// last says how the last panel differs from the one that is drawn.
func (f *framer) last(out *Frame) {
	if n := f.c.Panel.Count.Get(); f.row > 0 && f.c.Close.Last.Get() == "drop" {
		out.Unknown = append(out.Unknown, fmt.Sprintf("Panel %d, the last, is dropped in and does not slide: its lowering is not drawn.", n))
	}
}

// bases compares the mass with the ends of the bases before and after the slide.
func (f *framer) bases(out *Frame, by float64) {
	b := f.c.Lift.Base
	if !b.Given() {
		out.Unknown = append(out.Unknown, "Whether the lifts' bases stay under the mass is not checked: needs lift.base.")
		return
	}
	mass := max(b.Heel.Get(), f.long()/2)
	out.Base = &Base{mass, mass + by, b.Along.Get()}
}

// withStraps says that the weight on the lifts is that of the hung panel.
const withStraps = "with its straps"

// stages are the steps of the order, the straps in one: fixed unloaded, they change
// nothing while the lifts stand.
func (f *framer) stages() (out []Stage) {
	tight := len(f.piece.Order)
	if tight > 0 {
		s := f.piece.Steps[tight]
		name := "straps tight on both ribs, in the order " + list(f.piece.Order)
		out = append(out, Stage{name, f.carried(&s.State)})
	}
	for _, s := range f.piece.Steps[tight+1:] {
		out = append(out, Stage{s.Name, f.carried(&s.State)})
	}
	return out
}

// lines are the straps between the panel's back and the framing; none where the spec
// does not say how high the framing is.
func (f *framer) lines() (out []Strap) {
	v, height := f.c.Vault, f.c.Room.Height.Get()
	if !f.c.Room.Above.Given() {
		return nil
	}
	for _, n := range f.piece.Order {
		back := v.Behind(f.c.Strap.Stations.Get()[n-1]*v.Arc.Get(), v.Thickness.Get())
		out = append(out, Strap{n, back.Y, height + back.Z, height + v.Crown.Get() + f.c.Room.Above.Get()})
	}
	return out
}

func list(numbers []int) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(numbers), " ", ", "), "[]")
}

// straps is the panel on its straps, step by step.
func (f *framer) straps() Frame {
	out := f.lifted("straps fixed, then the lifts down", f.c.Room.Height.Get(), 0)
	out.After, out.Straps = f.stages(), f.lines()
	out.Hands = append(out.Hands, Hands{"to fix straps, one at each edge rib", 2})
	out.Gap = f.beside(f.c.Vault.Width.Get())
	if above := f.c.Room.Above; above.Given() {
		out.Gap = least(out.Gap, Gap{"between its crown and the framing", above.Get()})
	}
	out.Until = "all straps are tight on both ribs, their screws are in, and the engineer's release is signed: only then is a lift lowered"
	return out
}

package layout

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// FaceMost is how far a strap that is fixed to the side of a framing member may stand
// off it, in m, where the standards set no other: common practice.
const FaceMost = 0.010

// FaceMost is how far it may in this ceiling, in m.
func (c *Ceiling) FaceMost() float64 { return c.Limit("strap.framing.face", FaceMost) }

// OffMember is how far a line along the framing's members lies from the middle of the
// nearest one, in m. The line is so far from the wall that the members are counted from:
// the near end wall, or the left wall where they run along. It needs room.framing.
func (c *Ceiling) OffMember(at float64) float64 {
	f := c.Room.Framing
	from := math.Abs(math.Mod(at-f.Offset.Get(), f.Spacing.Get()))
	return min(from, f.Spacing.Get()-from)
}

// LongestRun is the longest clear run of an arch's rib: between neighbouring
// straps, or twice the overhang past the last one. The name says which. It
// needs strap.stations.
func (c *Ceiling) LongestRun() (run float64, name string) {
	arc := c.Vault.Arc.Get()
	var stations []float64
	for _, s := range c.Strap.Stations.Get() {
		stations = append(stations, s*arc)
	}
	run, name = 2*stations[0], "twice the overhang past the first strap"
	for i := range stations[1:] {
		if r := stations[i+1] - stations[i]; r > run {
			run, name = r, fmt.Sprintf("the run from strap %d to strap %d", i+1, i+2)
		}
	}
	if r := 2 * (arc - stations[len(stations)-1]); r > run {
		run, name = r, "twice the overhang past the last strap"
	}
	return run, name
}

// EvenShare is the force on one strap, in N, if all that the arch hangs on carried
// alike: the weight of the arch by the straps of both of its edge ribs. It needs
// strap.stations. Derived; the frame gives what each really carries.
func (c *Ceiling) EvenShare() float64 {
	arch := c.Panel.Mass.Get() * float64(c.Panel.Around.Get())
	return arch * quantity.Gravity / float64(2*len(c.Strap.Stations.Get()))
}

// LedgerReach is how far a ledger reaches under the foot of a rib, inward from
// the outer edge of its sole: nothing or less of one that ends in the gap. It
// needs ledger.projection.
func (c *Ceiling) LedgerReach() float64 { return c.Ledger.Projection.Get() - c.WidestGap() }

// WidestGap is that between a wall and the outer edge of a rib's sole, with the
// room at its widest and the arch, at its narrowest, in its middle.
func (c *Ceiling) WidestGap() float64 {
	room := c.Room.Width.Get() + c.Room.Tolerance.Get()
	arch := c.Vault.Span.Get() - c.Panel.Tolerance.Get() - c.Panel.Form.Get()*c.Vault.Spread.Get()
	return (room-arch)/2 - c.Vault.sole(c.Rib.Depth.Get())
}

// sole is how far out of the springing the foot of a member of some depth
// stands: a plumb cut ends at the springing, a radial one runs out square to the
// intrados, a level one along the springing's own height.
func (v Vault) sole(depth float64) float64 {
	sin := math.Sin(v.HalfAngle.Get())
	switch v.Cut.Get() {
	case "radial":
		return depth * sin
	case "level":
		return depth / sin
	default:
		return 0
	}
}

// strapPieces are the straps of a number of panels, as far as the spec describes
// them.
func (c *Ceiling) strapPieces(s0, s1 float64, panels int) []Piece {
	st := c.Strap
	if !st.Width.Given() || !st.Thickness.Given() || !st.Lap.Given() || !c.Room.Above.Given() {
		return nil
	}
	var out []Piece
	arc, width, thickness := c.Vault.Arc.Get(), st.Width.Get(), st.Thickness.Get()
	for _, station := range st.Stations.Get() {
		s := station * arc
		if !c.Holds(s0, s1, s) {
			continue
		}
		l := c.StrapLength(station) + 2*st.Lap.Get()
		v := l * (width * thickness)
		out = append(out, Piece{
			Kind: Hanger, Count: 2 * panels, Material: st.Material.Get(), Centre: c.strapCentre(station),
			Length: l, Width: width, Depth: thickness, Volume: v, Mass: v * SteelDensity,
		})
	}
	return out
}

// strapCentre is the middle of a strap, which has the same lap at both ends.
func (c *Ceiling) strapCentre(station float64) curve.Point {
	return curve.Point{Y: c.StrapAcross(station), Z: c.ExtradosHeight(station) + c.StrapLength(station)/2}
}

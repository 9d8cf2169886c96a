package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// alignedWithin is how far the middle of a window may be off the line of a rib or
// of a coffer's middle and still seem to be on it, in m; common practice.
const alignedWithin = 0.025

// MemberShare is the share of the intrados, from 0 to 1, unrolled and without the
// gaps at the seams, that ribs and rails take.
func (c *Ceiling) MemberShare() float64 {
	open := c.Clear() * (c.Grid.ModuleAround.Get() - c.Rail.Width.Get())
	n := float64(c.Grid.Around.Get() * c.Grid.Along.Get())
	return 1 - n*open/(c.Vault.Arc.Get()*c.Vault.Length.Get())
}

// CrownRow is the height above the springing, on the intrados, of the middle of the
// row of coffers at the crown; of an even count of one beside it.
func (c *Ceiling) CrownRow() float64 {
	s := c.Vault.Arc.Get() / 2
	if c.Grid.Around.Get()%2 == 0 {
		s -= c.Grid.ModuleAround.Get() / 2
	}
	return c.Vault.Intrados.Get().At(s).Z
}

// firstRib is the far edge of the first rib, from the near end wall.
func (c *Ceiling) firstRib() float64 { return c.NearGap() + c.ribAtEnd() }

// ribAtEnd is how much of a rib's width is at an end of the vault.
func (c *Ceiling) ribAtEnd() float64 {
	if c.Grid.HalfEnds.Get() {
		return c.Rib.Width.Get() / 2
	}
	return c.Rib.Width.Get()
}

// EyeBelow reports whether an eye in the entry looks up at the springing, and the
// skin is behind the intrados: where not, there is no count of coffers that it sees
// into.
func (c *Ceiling) EyeBelow() bool {
	return c.Room.Eye.Get() < c.Room.Height.Get() && c.Skin.Setback.Get() > 0
}

// MetAlong is how many coffers of the row at the crown an eye at the near end wall
// sees the skin of: past the near rib a line of sight rises by the skin's setback
// before it comes to the far rib.
func (c *Ceiling) MetAlong() int {
	up := c.Room.Height.Get() + c.CrownRow() - c.Room.Eye.Get()
	last := c.Clear()*up/c.Skin.Setback.Get() - c.firstRib()
	return min(c.Grid.Along.Get(), max(0, int(math.Ceil(last/c.Grid.ModuleAlong.Get()))))
}

// MetAround is how many coffers of an arch an eye at the left springing, in its
// plane, sees the skin of: some of the skin lies, seen from there, between the edges
// of both rails.
func (c *Ceiling) MetAround() int {
	in, half := c.Vault.Intrados.Get(), c.Rail.Width.Get()/2
	eye := curve.Point{Z: c.Room.Eye.Get() - c.Room.Height.Get()}
	// The angle from straight up, clockwise.
	angle := func(p curve.Point) float64 { return math.Atan2(p.Y-eye.Y, p.Z-eye.Z) }
	n := 0
	for i := range c.Grid.Around.Get() {
		s0 := float64(i)*c.Grid.ModuleAround.Get() + half
		s1 := float64(i+1)*c.Grid.ModuleAround.Get() - half
		near := max(angle(in.At(s0)), angle(c.Vault.Behind(s0, c.Skin.Setback.Get())))
		far := min(angle(in.At(s1)), angle(c.Vault.Behind(s1, c.Skin.Setback.Get())))
		if far-near > 1e-9 {
			n++
		}
	}
	return n
}

// OffLine is how far a place along the wall, from the near end wall, is off the
// nearest line of a rib or of the middle of a coffer, in m.
func (c *Ceiling) OffLine(at float64) float64 {
	at -= c.NearGap()
	off := math.Inf(1)
	for i := range c.Grid.Along.Get() {
		rib, next := c.RibAt(i), c.RibAt(i+1)
		for _, line := range []float64{rib, (rib + next) / 2, next} {
			off = min(off, math.Abs(at-line))
		}
	}
	return off
}

// Met is how many of the windows and doors are met to within 25mm.
func (c *Ceiling) Met() (n int) {
	for _, a := range c.Align.Get() {
		if c.OffLine(a.At.Get()) <= alignedWithin+spacingSlack {
			n++
		}
	}
	return n
}

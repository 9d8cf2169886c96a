// Package framing tells where the members of the building's framing lie over a ceiling,
// and which straps miss them.
package framing

import (
	"math"

	"dryfit/rules/model/layout"
)

// Known reports whether the spec says enough to tell which straps miss the framing.
func Known(c *layout.Ceiling) bool {
	f, fixing := c.Room.Framing, c.Strap.Fixing
	return c.Strap.Given() && fixing.Top.Given() && fixing.Bottom.Given() && f.Spacing.Given() && f.Offset.Given() && f.Member.Given()
}

// roundedOff is how far past a wall, in m, a member lies that is on it but for round-off.
const roundedOff = 1e-9

// Members are the middles of the framing's members, in m from the wall that its
// offset is from, to the wall opposite: at most 400.
func Members(c *layout.Ceiling) (out []float64) {
	f, first, end := c.Room.Framing, 0.0, c.Room.Length.Get()
	if f.Offset.Given() {
		first = f.Offset.Get()
	}
	if f.Runs.Get() == "along" {
		end = c.Room.Width.Get()
	}
	for i := range 400 {
		at := first + float64(i)*f.Spacing.Get()
		if at > end+roundedOff {
			break
		}
		out = append(out, at)
	}
	return out
}

// Bay is the one between two members that a line lies in, and whether it misses both.
func Bay(c *layout.Ceiling, line float64) (n int, missed bool) {
	f, off := c.Room.Framing, c.OffMember(line)
	if c.Strap.Fixing.Top.Get() == "side" {
		missed = math.Abs(off-(f.Member.Get()+c.Strap.Thickness.Get())/2) > c.FaceMost()
	} else {
		missed = off > f.Member.Get()/2
	}
	return int(math.Floor((line - f.Offset.Get()) / f.Spacing.Get())), missed
}

// BlockingText names the blocking as the spec has it.
func BlockingText(c *layout.Ceiling) string {
	if f := c.Room.Framing; f.Blocking.Given() && f.Blocking.Get() {
		return "blocking where a strap\nmisses the framing"
	}
	return "a strap misses the framing here:\nno blocking is stated"
}

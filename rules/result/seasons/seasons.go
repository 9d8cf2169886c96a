// Package seasons is what the wood does between the shop, the dry season and
// the wet one: members that swell and shrink, reveals that open and close, a
// vault that grows, feet that move.
package seasons

import (
	"math"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/layout"
)

// Season is a state that the wood comes to in service.
type Season struct {
	Name     string  // "dry", "wet"
	Moisture float64 // fraction
	// Changes since the shop; growth is positive.
	RibWidth  Change // of a whole rib
	RailWidth Change
	RibDepth  Change // as a strain, of itself
	Angle     Change // of the slope at the springing, rad
	Along     Change // of the whole vault's length: all rib widths
	Foot      Change // of one foot, + outward
	// Reveal is the width of the reveal at a seam, as it then is; nothing where
	// SeamReveal says that there is none.
	Reveal Change
}

// Change is a figure, in m unless said otherwise, or why there is none.
type Change struct {
	Value float64
	Err   error
}

// Seasons is the dry season and the wet one.
type Seasons struct {
	Dry, Wet Season
}

// Of works out both seasons of a ceiling. A figure that can't be had honestly
// carries its error and hides no other.
func Of(c *layout.Ceiling) Seasons {
	return Seasons{Dry: season(c, "dry", c.Climate.Dry), Wet: season(c, "wet", c.Climate.Wet)}
}

func season(c *layout.Ceiling, name string, moisture float64) Season {
	s := Season{Name: name, Moisture: moisture}
	across := func(m layout.Member, size float64, d timber.Direction) Change {
		change, shrinkage := m.Species.Across(m.Cut, d)
		by, err := timber.Movement(size, change, shrinkage, c.Climate.Shop, moisture)
		return Change{by, err}
	}
	s.RibWidth = across(c.Rib, c.Rib.Width, WidthDirection(c))
	s.RailWidth = across(c.Rail, c.Rail.Width, timber.OverWidth)
	s.RibDepth = across(c.Rib, 1, DepthDirection(c))
	s.Along = Change{s.RibWidth.Value * Ribs(c), s.RibWidth.Err}
	s.Angle = angle(c, s.RibDepth)
	s.Foot = foot(c, s.RibDepth)
	if width, ok := SeamReveal(c); ok {
		s.Reveal = Change{width - s.RibWidth.Value, s.RibWidth.Err}
	}
	return s
}

// SeamReveal is the width of the groove between two panels, and whether there
// is one: a groove in the side of a member lies in one piece of wood, and no seam
// opens or closes it. What set-back layers leave is at the seam where those at
// the middle of the rib are set back.
func SeamReveal(c *layout.Ceiling) (width float64, ok bool) {
	r := c.Grid.Reveal
	if r == nil || c.Seam.Count == 0 || r.At == "sides" {
		return 0, false
	}
	if r.At == "layers" && c.RibLayers[len(c.RibLayers)/2].From == 0 {
		return 0, false
	}
	return r.Width, true
}

// DepthDirection is which size of a board the rib's depth is made of: a
// laminated rib's of strip thicknesses, another's of the board's width.
func DepthDirection(c *layout.Ceiling) timber.Direction {
	if c.Rib.Lamination > 0 {
		return timber.OverThickness
	}
	return timber.OverWidth
}

// WidthDirection is the other one: a laminated rib is as wide as its strips, a
// sawn or solid one as thick as its boards.
func WidthDirection(c *layout.Ceiling) timber.Direction {
	if c.Rib.Lamination > 0 {
		return timber.OverWidth
	}
	return timber.OverThickness
}

// Ribs is how many rib widths lie along the vault: with half ribs at its ends
// one for each module, with whole ones one more.
func Ribs(c *layout.Ceiling) float64 {
	n := float64(c.Grid.Along)
	if !c.Grid.HalfEnds {
		n++
	}
	return n
}

// angle is the change of the arch's slope at the springing when the rib's depth
// changes by a strain. A flat ceiling has no slope that could.
func angle(c *layout.Ceiling, strain Change) Change {
	if strain.Err != nil {
		return Change{Err: strain.Err}
	}
	after, _ := timber.Curved(c.Vault.HalfAngle, c.Vault.Radius, strain.Value)
	return Change{Value: after - c.Vault.HalfAngle}
}

// foot is how far one foot moves outward when the rib's depth changes by a
// strain e and its length along the grain does not: the angle of the arc
// becomes angle/(1 + e) and its radius R·(1 + e), so that the chord becomes
// 2R(1 + e)·sin(φ/(1 + e)) of a circular arc. For a curve of several radii each
// piece keeps its length and turns by that much less: the feet are followed
// along the tangents.
func foot(c *layout.Ceiling, strain Change) Change {
	if strain.Err != nil {
		return Change{Err: strain.Err}
	}
	v := c.Vault
	if math.IsInf(v.TightestRadius, 1) {
		return Change{}
	}
	// Two Gauss points in each step of half the arch.
	const steps, point = 128, 0.28867513459481288 // 1/√12
	ds := v.Arc / 2 / steps
	reach, moved := 0.0, 0.0
	for i := range 2 * steps {
		at := float64(i/2) + 0.5 + point*float64(2*(i%2)-1)
		t := v.Intrados.Tangent(v.Arc/2 - at*ds)
		slope := math.Atan2(t.Z, t.Y)
		reach += math.Cos(slope) * ds / 2
		moved += math.Cos(slope/(1+strain.Value)) * ds / 2
	}
	return Change{Value: moved - reach}
}

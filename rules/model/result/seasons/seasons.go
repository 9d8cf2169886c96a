// Package seasons is what the wood does between the shop, the dry season and
// the wet one: members that swell and shrink, reveals that open and close, a
// vault that grows, feet that move.
package seasons

import (
	"math"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/spec/record"
)

// Season is a state that the wood comes to in service.
type Season struct {
	Name     string        // "dry", "wet"
	Moisture layout.Number // fraction
	// Changes since the shop; growth is positive.
	RibWidth  Figure // of a whole rib
	RailWidth Figure
	RibDepth  Figure // as a strain, of itself
	Angle     Figure // of the slope at the springing, rad
	Along     Figure // of the whole vault's length: all rib widths
	Foot      Figure // of one foot, + outward
	// Reveal is the width of the reveal at a seam, as it then is; nothing where
	// SeamReveal says that there is none. Ribs that grow close it by no more than
	// the seam's gap.
	Reveal Figure
}

// Figure is a change with the keys that it comes from.
type Figure = record.Value[Change]

// Change is a figure, in m unless said otherwise, or why there is none.
type Change struct {
	Value float64
	Err   error
}

// by is a change of the same kind that is so many times as great.
func (c Change) by(n float64) Change { return Change{c.Value * n, c.Err} }

// Seasons is the dry season and the wet one, and the shop, since which nothing
// has changed yet.
type Seasons struct {
	Shop, Dry, Wet Season
}

// In is the wood in a state by its name: "shop", "dry", "wet".
func (s *Seasons) In(state string) Season {
	switch state {
	case "dry":
		return s.Dry
	case "wet":
		return s.Wet
	default:
		return s.Shop
	}
}

// Of is both seasons of a ceiling. A figure that can't be had honestly carries
// its error and hides no other.
func Of(c *layout.Ceiling) *Seasons {
	return &Seasons{Shop: season(c, "shop", c.Climate.Shop), Dry: season(c, "dry", c.Climate.Dry), Wet: season(c, "wet", c.Climate.Wet)}
}

func season(c *layout.Ceiling, name string, moisture layout.Number) Season {
	s := Season{Name: name, Moisture: moisture}
	of := func(f func() Change) Figure { return layout.Derive(c, f) }
	across := func(m layout.Member, size func() float64, direction func() timber.Direction) Figure {
		return of(func() Change {
			if fault := c.Climate.Fault(name); fault != nil {
				return Change{Err: fault}
			}
			change, shrinkage := m.Species.Get().Across(m.Cut.Get(), direction())
			by, err := timber.Movement(size(), change, shrinkage, c.Climate.Shop.Get(), moisture.Get())
			return Change{by, err}
		})
	}
	s.RibWidth = across(c.Rib.Member, c.Rib.Width.Get, func() timber.Direction { return WidthDirection(c) })
	s.RailWidth = across(c.Rail, c.Rail.Width.Get, func() timber.Direction { return timber.OverWidth })
	s.RibDepth = across(c.Rib.Member, func() float64 { return 1 }, func() timber.Direction { return DepthDirection(c) })
	s.Along = of(func() Change { return s.RibWidth.Get().by(Ribs(c)) })
	s.Angle = of(func() Change { return angle(c, s.RibDepth.Get()) })
	s.Foot = of(func() Change { return foot(c, s.RibDepth.Get()) })
	s.Reveal = of(func() Change { return reveal(c, s.RibWidth.Get()) })
	return s
}

// reveal is how wide the groove between panels stands, where there is one.
func reveal(c *layout.Ceiling, ribWidth Change) Change {
	width, ok := SeamReveal(c)
	if !ok {
		return Change{}
	}
	if ribWidth.Value > 0 { // panels whose edges meet close no further
		ribWidth.Value = math.Min(ribWidth.Value, c.Seam.Gap.Get())
	}
	return Change{width - ribWidth.Value, ribWidth.Err}
}

// SeamReveal is the width of the groove between two panels as designed, in m, and
// whether there is one: a groove in the side of a member lies in one piece of wood,
// and no seam opens or closes it. What set-back layers leave is at the seam where
// those at the middle of the rib are set back.
func SeamReveal(c *layout.Ceiling) (width float64, ok bool) {
	r := c.Grid.Reveal
	if !r.Given() || c.Seam.Count.Get() == 0 || r.At.Get() == "sides" {
		return 0, false
	}
	if r.At.Get() == "layers" {
		if layers := c.RibLayers.Get(); layers[len(layers)/2].From == 0 {
			return 0, false
		}
	}
	return r.Width.Get(), true
}

// DepthDirection is which size of a board the rib's depth is made of: a
// laminated rib's of strip thicknesses, another's of the board's width.
func DepthDirection(c *layout.Ceiling) timber.Direction {
	if c.Rib.Construction.Get() == "laminated" {
		return timber.OverThickness
	}
	return timber.OverWidth
}

// WidthDirection is the other one: a laminated rib is as wide as its strips, a
// sawn or solid one as thick as its boards.
func WidthDirection(c *layout.Ceiling) timber.Direction {
	if c.Rib.Construction.Get() == "laminated" {
		return timber.OverWidth
	}
	return timber.OverThickness
}

// Ribs is how many rib widths lie along the vault, from 1: with half ribs at its
// ends one for each module, with whole ones one more. The width of each changes
// with the seasons, so that the vault's length changes by their sum.
func Ribs(c *layout.Ceiling) float64 {
	n := float64(c.Grid.Along.Get())
	if !c.Grid.HalfEnds.Get() {
		n++
	}
	return n
}

// Slope is what slopes of the intrados, in rad, become when the rib's depth changes
// by a strain, above −1, and its length along the grain does not: an arc of angle a
// becomes one of a/(1 + e), and the mitre of a pointed crown, which runs tan κ of
// the depth along the grain, one of tan κ/(1 + e). Derived: [timber.Curved] and
// [timber.Mitred].
func Slope(v layout.Vault, strain float64) func(slope float64) float64 {
	kink, radius := v.Kink.Get(), v.Radius.Get()
	mitre := timber.Mitred(kink, strain)
	return func(slope float64) float64 {
		after, _ := timber.Curved(slope-kink, radius, strain)
		return mitre + after
	}
}

// angle is the change of the arch's slope at the springing when the rib's depth
// changes by a strain. A flat ceiling has no slope that could.
func angle(c *layout.Ceiling, strain Change) Change {
	if strain.Err != nil {
		return Change{Err: strain.Err}
	}
	slope := c.Vault.HalfAngle.Get()
	return Change{Value: Slope(c.Vault, strain.Value)(slope) - slope}
}

// foot is how far one foot moves outward, in m, when the rib's depth changes by a
// strain: of a circular arc, whose radius becomes R·(1 + e), the chord becomes 2R(1
// + e)·sin(φ/(1 + e)). For a curve of several radii each piece keeps its length and
// turns by that much less. 0 of a flat ceiling. Derived.
func foot(c *layout.Ceiling, strain Change) Change {
	if strain.Err != nil {
		return Change{Err: strain.Err}
	}
	if math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return Change{}
	}
	return Change{Value: -c.Vault.Moved(Slope(c.Vault, strain.Value)).Y}
}

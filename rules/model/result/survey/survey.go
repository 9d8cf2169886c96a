// Package survey is the row of panels in the room as measured: where it is set
// out, what is left beside each panel and at both ends, how its seats lie and how
// long its straps are. Lengths are in m; places along and across the room are those
// of the survey's baseline.
package survey

import (
	"math"

	"dryfit/rules/kernel/placement"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/closing"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/record"
)

// Survey is the row in the measured room.
type Survey struct {
	c *layout.Ceiling

	// Least is the greatest least gap on both sides that any place of the row has.
	Least record.Value[Best]
	// Panels are from the far end, which is the first one raised.
	Panels record.Value[[]Panel]
	First  record.Value[placement.Ends] // gaps between the far wall and the first panel's corners
	Last   record.Value[[2]Last]        // gaps between the last panel's corners and the near wall, left and right
	Tilt   layout.Number                // the steepest slope of the seats
	// Narrower is how much narrower the narrowest panel is than the widest, on each
	// side.
	Narrower layout.Number
	Closes   record.Value[[]Diagonal]
}

// Best is a least gap, or why it is not known.
type Best struct {
	Gap float64
	Err error
}

// Sides are two figures, one at each side wall.
type Sides struct{ Left, Right float64 }

// Panel is one panel in its place.
type Panel struct {
	Near, Far         float64            // its ends along the baseline
	AtNear, AtFar     Sides              // gaps to the walls at these ends
	Tightest, Loosest float64            // the least and the greatest gap beside it
	Width             float64            // least distance between the walls beside it
	Seat              layout.SeatsRaised // over the springing, at its middle
	Framing           float64            // its underside over the springing, at the panel's middle
	Lowest            float64            // the same where it is lowest over the panel
}

// Last is a gap at the near wall: as set out, at its least and at its most.
type Last struct {
	Nominal     float64
	Least, Most seasons.Change
}

// Diagonal is one that was measured, and what the other readings make of it.
type Diagonal struct{ Measured, Follows float64 }

// Of is the survey of a ceiling.
func Of(c *layout.Ceiling, s *seasons.Seasons, k *closing.Closing) *Survey {
	v := &Survey{c: c}
	v.Least = layout.Derive(c, func() Best {
		best, err := c.Survey.Room.Get().Roomiest(c.Survey.Row.Get())
		return Best{best.Least, err}
	})
	v.Panels = layout.Derive(c, v.panels)
	v.First = layout.Derive(c, func() placement.Ends {
		return c.Survey.Room.Get().FirstGaps(c.Survey.SetOut.Get().Placed, c.Survey.Row.Get())
	})
	v.Last = layout.Derive(c, func() [2]Last { return v.last(s, k) })
	v.Tilt = c.Number("survey.tilt", func() (steepest float64) {
		for _, seats := range c.Survey.Seats.Get() {
			for _, slope := range seats.Slopes() {
				steepest = math.Max(steepest, math.Abs(slope))
			}
		}
		return steepest
	})
	v.Narrower = layout.Derive(c, func() float64 {
		return c.Panel.Tolerance.Get() + c.Panel.Form.Get()*c.Vault.Spread.Get()
	})
	v.Closes = layout.Derive(c, v.closes)
	return v
}

// Given reports whether the room was measured.
func (v *Survey) Given() bool { return v.c.Survey.Given() }

// Placed is where the row stands; ok is whether there is such a place: the room
// was measured, the spec gives the first gap, and the place could be worked out.
func (v *Survey) Placed() (at placement.Placed, ok bool) {
	if !v.Given() || !v.c.Close.FirstGap.Given() {
		return placement.Placed{}, false
	}
	set := v.c.Survey.SetOut.Get()
	return set.Placed, set.Err == nil && v.Least.Get().Err == nil
}

// Seated reports whether the survey has what the seats are compared with, and
// Framed the same of the framing.
func (v *Survey) Seated() bool {
	return v.c.Survey.Seated()
}

// Framed reports whether the straps can be measured.
func (v *Survey) Framed() bool {
	return v.Given() && v.c.Survey.Springing.Given() && len(v.c.Survey.Framing.Get()) > 0
}

// Name names a panel of the row, the first being 0.
func (v *Survey) Name(i int) string { return v.c.RowName(i) }

func (v *Survey) panels() []Panel {
	c := v.c
	at, room, row := c.Survey.SetOut.Get().Placed, c.Survey.Room.Get(), c.Survey.Row.Get()
	seated, framed := v.Seated(), v.Framed()
	n := c.Panel.Along.Get()
	out := make([]Panel, n)
	for i := range out {
		near, far := c.PanelAlong(n - 1 - i)
		p := Panel{Near: at.Near + near, Far: at.Near + far}
		p.AtNear.Left, p.AtNear.Right = room.Gaps(at, row, p.Near)
		p.AtFar.Left, p.AtFar.Right = room.Gaps(at, row, p.Far)
		p.Tightest, p.Loosest = room.Between(at, row, p.Near, p.Far)
		p.Width = room.Width(p.Near, p.Far)
		if seated {
			p.Seat = c.Survey.Raised.Get()[i]
		}
		if framed {
			p.Framing, p.Lowest = v.framing(p.Near, p.Far)
		}
		out[i] = p
	}
	return out
}

// framing is the underside of the framing over the springing, halfway and where it
// is lowest.
func (v *Survey) framing(near, far float64) (middle, lowest float64) {
	underside, springing := v.c.Survey.Framing.Get(), v.c.Survey.Springing.Get()
	lowest = math.Inf(1)
	for _, p := range underside.Over(near, far) {
		lowest = math.Min(lowest, p.Y-springing)
	}
	return underside.At((near+far)/2) - springing, lowest
}

// Strap is the length of a panel's strap, in m, at a station of the arch, from its
// left end in m: from the extrados there to the framing over the middle of the
// panel, as measured. 0 or less where the framing is no higher.
func (v *Survey) Strap(p Panel, station float64) float64 {
	return p.Framing - v.c.ExtradosHeight(station)
}

// last are the gaps at the near wall: every length at the better or the worse end of
// its tolerance, the readings of both end walls by their accuracy. The ribs may have
// grown when the panels are hung, and shrink in the dry season.
func (v *Survey) last(s *seasons.Seasons, k *closing.Closing) [2]Last {
	c := v.c
	gaps := c.Survey.Room.Get().LastGaps(c.Survey.SetOut.Get().Placed, c.Survey.Row.Get())
	off := closing.Row(c, c.Panel.Along.Get()).Worst() + 2*c.Survey.Accuracy.Get()
	var grown seasons.Change
	if ends, ok := k.Ends(); ok {
		grown = ends.Growth.Get()
	}
	shrinks := s.Dry.Along.Get()
	var out [2]Last
	for i, gap := range []float64{gaps.Left, gaps.Right} {
		out[i] = Last{
			Nominal: gap, Least: seasons.Change{Value: gap - grown.Value - off, Err: grown.Err},
			Most: seasons.Change{Value: gap + off + math.Max(0, -shrinks.Value), Err: shrinks.Err},
		}
	}
	return out
}

// Beside is the room across a panel, in m: where it was measured, at the panel
// where it is least, the readings of both walls off by their accuracy; else as
// drawn, at its tightest, and no panel's.
func (v *Survey) Beside() (width float64, panel string) {
	c := v.c
	at, ok := v.Placed()
	if !ok {
		return c.Room.Width.Get() - c.Room.Tolerance.Get(), ""
	}
	width = math.Inf(1)
	n := c.Panel.Along.Get()
	for i := range n {
		near, far := c.PanelAlong(n - 1 - i)
		if w := c.Survey.Room.Get().Width(at.Near+near, at.Near+far); w < width {
			width, panel = w, v.Name(i)
		}
	}
	return width - 2*c.Survey.Accuracy.Get(), panel
}

// closes are the diagonals, from corner to corner of the other readings.
func (v *Survey) closes() []Diagonal {
	measured, room := v.c.Survey.Diagonals.Get(), v.c.Survey.Room.Get()
	if len(measured) < 2 {
		return nil
	}
	nearLeft, nearRight := room.Corners(room.Near)
	farLeft, farRight := room.Corners(room.Far)
	between := func(a, b placement.Reading) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }
	return []Diagonal{{measured[0], between(nearLeft, farRight)}, {measured[1], between(nearRight, farLeft)}}
}

package picture

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// Looks draws several ceilings so that one can be held against another: their plans
// from below at one scale, their views from the entry at one angle, with a person who
// stands equally far from the eye in each.
type Looks struct {
	units              quantity.System
	scale              float64 // of the plans
	planHigh, viewHigh float64 // mm
	away               float64 // of the person, from the eye, in m
	window             [4]flat
}

// picture is the width that the largest plan takes at most, and every view, in mm.
const picture = 80

// entryMark is the room beside a plan for the mark of the entry, in mm.
const entryMark = 4

// mostPictured is how many coffers a small picture shows.
const mostPictured = 1_000

// Pictured reports whether a ceiling has few enough coffers for a small picture.
func Pictured(c *layout.Ceiling) bool { return c.Grid.Around.Get()*c.Grid.Along.Get() <= mostPictured }

// lowest is how far below the horizon a view reaches at most, as a tangent: the feet of
// a person who is nearer than some 2.7m are cut off.
const lowest = -0.6

// NewLooks finds what the pictures of some ceilings have in common.
func NewLooks(list []*layout.Ceiling) Looks {
	if len(list) == 0 {
		return Looks{}
	}
	l := Looks{units: list[0].Units, away: personAway, window: window()}
	long, wide, eye := 0.0, 0.0, 0.0
	for _, c := range list {
		long, wide = max(long, c.BuiltLength()), max(wide, c.Vault.Span.Get())
		deep := c.BuiltLength()
		if c.Room.Entry.Get() == "side" {
			deep = c.Vault.Span.Get()
		}
		l.away = min(l.away, 0.8*deep)
		eye = max(eye, c.Room.Height.Get()+entryCamera(c).eye.z)
	}
	l.scale = contactScale(max(long, wide), l.units == quantity.Imperial)
	l.planHigh = draft.View{Scale: l.scale}.Size(wide) + entryMark
	// The picture reaches down to the person's feet.
	const under = 1.04
	l.window[0].y = max(lowest, min(l.window[0].y, -under*eye/l.away))
	l.window[1].y = l.window[0].y
	l.viewHigh = picture * (l.window[2].y - l.window[0].y) / (l.window[2].x - l.window[0].x)
	return l
}

// contactScale is the largest usual scale at which a length is no wider than a
// picture.
func contactScale(m float64, imperial bool) float64 {
	const room = picture - 2*entryMark
	for _, scale := range draft.UsualScales(imperial) {
		if m*1000/scale <= room {
			return scale
		}
	}
	return math.Ceil(m * 1000 / room)
}

// angle is how wide the views are, in degrees.
func (l Looks) angle() float64 {
	return math.Round(2 * math.Atan(l.window[1].x) * 180 / math.Pi)
}

// Said is what the pictures have in common.
func (l Looks) Said() string {
	if l.scale == 0 {
		return "no option can be drawn"
	}
	return fmt.Sprintf("plans %s, views %g° wide, with a person of %s who is %s from the eye",
		draft.ScaleText(l.scale, l.units == quantity.Imperial), l.angle(), l.length(personHigh), l.length(l.away))
}

func (l Looks) length(m float64) string { return l.units.Format(quantity.Length(m).Value()) }

// About says what the pictures of a ceiling show.
func (l Looks) About(c *layout.Ceiling) string {
	return fmt.Sprintf("%d by %d coffers in plan from below, and in perspective from the entry at %s", c.Grid.Around.Get(), c.Grid.Along.Get(), entryOf(c))
}

// Package picture draws ceilings as one sees them: in perspective from the room's
// entry, straight from below, and several beside one another on a contact sheet.
package picture

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// entryCamera stands in the entry: at the near end wall, or at the left side wall,
// in the middle of the room or where the door of that wall is.
func entryCamera(c *layout.Ceiling) camera {
	up := c.Room.Eye.Get() - c.Room.Height.Get()
	if up > -0.1 { // a springing below the eye: the eye stays in the room
		up = -0.1
	}
	const inside = 0.01 // of the wall
	within := func(at, wide float64) float64 { return min(max(at, 0.1), wide-0.1) }
	door, placed := DoorMiddle(c)
	if c.Room.Entry.Get() == "side" {
		x := c.BuiltLength() / 2
		if placed {
			x = within(door-c.NearGap(), c.BuiltLength())
		}
		return camera{eye: space{x, inside, up}, turns: true}
	}
	y := c.Vault.Span.Get() / 2
	if placed { // the left end of the near wall, seen from inside, is that of the right springing
		side := (c.Room.Width.Get() - c.Vault.Span.Get()) / 2
		y = within(c.Room.Width.Get()-door-side, c.Vault.Span.Get())
	}
	return camera{eye: space{inside, y, up}}
}

// entryOf says where one comes in.
func entryOf(c *layout.Ceiling) string {
	if c.Room.Entry.Get() == "side" {
		return "the left side"
	}
	return "the near end"
}

// usualDoor is how wide a room's door is taken to be where the route does not end at
// it, in m; common practice.
const usualDoor = 0.9

// DoorMiddle is the middle of the door in the entry's wall, from the left end of that
// wall as it is seen from inside.
func DoorMiddle(c *layout.Ceiling) (at float64, placed bool) {
	d := c.Room.Door
	if !d.Given() || d.Wall.Get() != "entry" {
		return 0, false
	}
	wide := usualDoor
	if legs := c.Route.Get(); len(legs) > 0 {
		if last := legs[len(legs)-1]; last.Kind.Get() == spec.Door && last.Width.Given() {
			wide = last.Width.Get()
		}
	}
	return d.Offset.Get() + wide/2, true
}

// Aspect is the picture's height by its width.
const Aspect = 0.62

// window is the part of the picture plane that is shown: as wide as one sees
// without turning the head, the horizon low, since one looks up.
func window() [4]flat {
	const half = 0.95 // tangent of half the angle of view, 44 degrees: common practice for interiors
	low := -0.32
	high := low + 2*half*Aspect
	return [4]flat{{-half, low}, {half, low}, {half, high}, {-half, high}}
}

// crownShare is how much of the depth lies between the eye and the place from which on
// the crown is in the picture of a sheet, crownOver how far the picture reaches over it.
const (
	crownShare  = 1.0 / 3
	crownOver   = 1.05
	mostUpright = 1.25 // a picture's height by its width; past it the picture is wider
)

// crowned is the window of a sheet: high enough for the crown.
func crowned(c *layout.Ceiling, eye camera) [4]flat {
	w := window()
	p := c.Vault.Behind(c.Vault.Arc.Get()/2, 0)
	crown := eye.see(space{c.BuiltLength() * crownShare, p.Y, p.Z})
	if eye.turns {
		crown = eye.see(space{eye.eye.x, p.Y, p.Z})
	}
	if crown.away < nearest {
		return w
	}
	high := max(w[2].y, crownOver*crown.up/crown.away)
	half := max(w[1].x, (high-w[0].y)/2/mostUpright)
	return [4]flat{{-half, w[0].y}, {half, w[0].y}, {half, high}, {-half, high}}
}

// View is the ceiling as one sees it from the room's entry, within a box of the
// paper.
func View(c *layout.Ceiling, low, high paper.Point) []paper.Item {
	return newScene(c, entryCamera(c)).painted(low, high, window())
}

// Entry is the view from the room's entry as a sheet shows it: its window is high enough
// for the crown, and the eye sees the fittings.
type Entry struct {
	Where  string  // one comes in: "the near end", "the left side"
	Aspect float64 // the picture's height by its width
	Angle  float64 // how wide one sees, in rad

	scene *scene
	shown [4]flat
}

// FromEntry is that view of a ceiling.
func FromEntry(c *layout.Ceiling) Entry {
	eye := entryCamera(c)
	eye.lit = true
	shown := crowned(c, eye)
	return Entry{
		Where: entryOf(c), Aspect: (shown[2].y - shown[0].y) / (shown[2].x - shown[0].x), Angle: 2 * math.Atan(shown[1].x),
		scene: newScene(c, eye), shown: shown,
	}
}

// Painted is the view within a box of the paper.
func (e Entry) Painted(low, high paper.Point) []paper.Item {
	return e.scene.painted(low, high, e.shown)
}

package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/spec"
	"dryfit/spec/quantity"
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
	door, placed := doorMiddle(c)
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

// doorMiddle is the middle of the door in the entry's wall, from the left end of that
// wall as it is seen from inside.
func doorMiddle(c *layout.Ceiling) (at float64, placed bool) {
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

// aspect is the picture's height by its width.
const aspect = 0.62

// window is the part of the picture plane that is shown: as wide as one sees
// without turning the head, the horizon low, since one looks up.
func window() [4]flat {
	const half = 0.95 // tangent of half the angle of view, 44 degrees: common practice for interiors
	low := -0.32
	high := low + 2*half*aspect
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

// underView is what the words under the view take, in mm.
const underView = 16

// markRoom is what the marks of findings take beside the words under the view, in mm.
const markRoom = 16

// view is the sheet of it.
func view(in Input) (*subject, error) {
	c := in.ceiling()
	if err := shows("view", c.Grid.Around.Get()*c.Grid.Along.Get(), "coffers"); err != nil {
		return nil, err
	}
	where, eye := entryOf(c), entryCamera(c)
	eye.lit = true
	shown := crowned(c, eye)
	aspect := (shown[2].y - shown[0].y) / (shown[2].x - shown[0].x)
	return &subject{
		name: "view", title: "View from the entry",
		about:  fmt.Sprintf("The ceiling of %d by %d coffers in perspective, from the entry at %s, the eye %s above the floor.", c.Grid.Around.Get(), c.Grid.Along.Get(), where, in.length(c.Room.Eye.Get())),
		aspect: aspect,
		left:   120, right: 120, above: 90, below: 90, best: 1, // the least paper is A3, or ARCH-B
		shows: []string{"grid", "vault.rise", "vault.profile"},
		draw: func(b *draft.Board, _ draft.View) map[int]paper.Point {
			low, high := b.Area()
			right := high.X - low.X
			wide := min(high.X-low.X, (high.Y-low.Y-underView)/aspect)
			mid := (low.X + high.X) / 2
			low, high = paper.Point{X: mid - wide/2, Y: (low.Y + high.Y - wide*aspect - underView) / 2}, paper.Point{X: mid + wide/2, Y: (low.Y + high.Y + wide*aspect - underView) / 2}
			b.In("view", func() { b.Items(newScene(c, eye).painted(low, high, shown)) })
			said := fmt.Sprintf("from the entry at %s, the eye %s above the floor, %.0f degrees wide; coffers of %s by %s, ratio %s",
				where, in.length(c.Room.Eye.Get()), quantity.Steady(2*math.Atan(shown[1].x)*180/math.Pi), in.length(c.Grid.ModuleAround.Get()), in.length(c.Grid.ModuleAlong.Get()), ratio(c))
			left := low.X
			for i, line := range paper.Wrap(said, right-2*markRoom, draft.Ordinary) {
				left = min(left, mid-paper.TextWidth(line, draft.Ordinary)/2-markRoom)
				b.Write(paper.Text{At: paper.Point{X: mid, Y: high.Y + 7 + leadingOf(draft.Ordinary)*float64(i)}, Height: draft.Ordinary, Anchor: paper.Middle, Text: line})
			}
			places := map[int]paper.Point{}
			in.at(places, paper.Point{X: left + 6, Y: high.Y + 6}, "grid", "vault")
			return places
		},
	}, nil
}

func ratio(c *layout.Ceiling) string { return fmt.Sprintf("%.2f", quantity.Steady(c.Grid.Ratio())) }

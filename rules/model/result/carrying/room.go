package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// InRoom is how the bare panel comes to its bearing in the room.
type InRoom struct {
	// Flat is what it takes across to turn level, and Across what there is.
	Flat, Across float64
	// Tipped is what its box takes upright when it is tipped down from its edge.
	Tipped float64
	Passes bool
	// Standing is how high the room has to be somewhere for the panel to come down
	// from its edge in any way, and Top how high it is: up to the framing.
	Standing, Top float64
	// Door is the leg by which it can come in only on edge, so that it never hangs, by
	// its key; "" where that is not proven.
	Door string

	poses func() (flat, tipped Pose)
}

// Poses are the panel where it takes most: turning level across the room, which is
// 0 ≤ y ≤ Across, and tipped down over the floor, its chord along y.
func (r InRoom) Poses() (flat, tipped Pose) { return r.poses() }

// standing is the cells that it may take to prove that a panel comes in only on edge.
const standing = 80000

// Room is how the panel comes to its bearing, lengths in m: turned level it takes
// the diagonal of its width and length, tipped down from its edge that of its
// length and height. What is behind the route's last leg is the room; only a door
// that is the last leg is an opening of which that is known. Derived: a box is as
// wide as its diagonal somewhere while it turns by a right angle.
func Room(c *layout.Ceiling, legs []Leg, search Search) InRoom {
	b := BoxIn(c, c.Panel.Width.Get(), c.Panel.Height.Get())
	r := InRoom{
		Flat: b.Flat, Tipped: b.Tipped, Passes: b.Level || b.Down,
		Across: min(c.Room.Width.Get(), c.Room.Length.Get()) - c.Room.Tolerance.Get(),
	}
	r.poses = func() (flat, tipped Pose) {
		p, _ := newPanel(c, search.Memory)
		return tightestInRoom(p)
	}
	if r.Passes || !c.Room.Above.Given() || len(legs) == 0 {
		return r
	}
	r.Top = c.Room.Height.Get() + c.Vault.Crown.Get() + c.Room.Above.Get()
	last := legs[len(legs)-1]
	if last.Own() || last.Kind.Get() != spec.Door || !last.Wall.Given() || last.Way.Get().Outcome == passage.Cannot {
		return r
	}
	p, known := newPanel(c, search.Memory)
	r.Standing = opening.Standing(p.body)
	if r.Standing <= r.Top {
		return r
	}
	door := opening.Door{Width: last.Width.Get(), Height: height(last.Height), Wall: last.Wall.Get(), Floor: true}
	left := search.budget()
	if left != nil {
		left.Cells *= standing / cells
	}
	key := entered{door, r.Top, whole(left).Cells}
	if known.all.enters(key, func() bool { proven, _ := opening.StandsUpright(p.body, door, r.Top, left); return proven }) {
		r.Door = last.Prefix
	}
	return r
}

// Box is what the panel's box takes in the room, in m: turned level the diagonal of its
// width and its length, tipped down from its edge that of its length and its height.
type Box struct {
	Flat, Tipped float64
	Level, Down  bool // the room has it: between the walls, and under the springing
}

// BoxIn is that of a panel so wide and so high, in m, both positive: of a whole arch as it
// hangs, of a piece of a split one with its chord level.
func BoxIn(c *layout.Ceiling, wide, high float64) Box {
	long, slack := c.Panel.EndLength.Get(), c.Room.Tolerance.Get()
	b := Box{Flat: math.Hypot(wide, long), Tipped: math.Hypot(long, high)}
	b.Level = b.Flat <= min(c.Room.Width.Get(), c.Room.Length.Get())-slack
	b.Down = b.Tipped <= c.Room.Height.Get() && wide <= c.Room.Width.Get()-slack
	return b
}

// tightestInRoom holds the diagonal of the panel's box across the room, and upright.
func tightestInRoom(p *panel) (flat, tipped Pose) {
	low, high := space.Point{X: math.Inf(1), Y: math.Inf(1)}, space.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range p.body.Section() {
		low, high = space.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, space.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	long, wide, rise := p.body.Length(), high.X-low.X, high.Y-low.Y
	s, c := math.Sincos(math.Atan2(long, wide))
	level := space.Turn{{X: c, Y: -s}, {X: s, Y: c}, {Z: 1}}
	flat = p.seen(Pose{Plane: Floor}, space.Pose{Turn: level, At: space.Vec{X: c*long/2 + s*wide/2, Y: s*long/2 + c*wide/2, Z: rise / 2}})
	s, c = math.Sincos(math.Atan2(long, rise))
	down := space.Turn{{X: c, Z: -s}, {Y: 1}, {X: s, Z: c}}
	tipped = p.seen(Pose{Plane: Floor}, space.Pose{Turn: down, At: space.Vec{X: c*long/2 + s*rise/2, Y: wide / 2, Z: s*long/2 + c*rise/2}})
	return flat, tipped
}

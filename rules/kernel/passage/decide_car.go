package passage

import "math"

// Car is a space with a door in its end wall: a vehicle, or an elevator. The
// world's axes: X goes in, the inside is 0 ≤ X ≤ Length, 0 ≤ Y ≤ Width and
// 0 ≤ Z ≤ Height; before X = 0 there is nothing but the wall with the door,
// which begins at Left and Sill. Lengths in m.
type Car struct {
	Length, Width, Height float64
	DoorWidth, DoorHeight float64
	Left, Sill            float64
}

// opening is the part of the door that is beside no wall of the inside.
func (c Car) opening() (y, z, w, h float64) {
	y, z = max(0, c.Left), max(0, c.Sill)
	return y, z, min(c.Width, c.Left+c.DoorWidth) - y, min(c.Height, c.Sill+c.DoorHeight) - z
}

// Into decides whether the body goes into a car by one motion from outside to
// rest.
func (b *Body) Into(c Car, budget *Budget) Decision {
	y, z, w, h := c.opening()
	ways := b.straight(w, h)
	for i := range ways {
		m := &ways[i]
		m.Margin = min(m.Margin, (c.Length-m.Depth)/2)
		poses := m.poses
		m.poses = func() []Pose { return b.parked(poses(), y, z, c.Length) }
	}
	plain := best(ways)
	if plain.Margin >= 0 {
		return passing(ways)
	}
	if b.Barred(c.DoorWidth, c.DoorHeight) {
		return Decision{Outcome: Cannot, Motion: plain, Bound: BarInside}
	}
	inside := b.within([3]float64{c.Length, c.Width, c.Height}, budget)
	if inside.margin < 0 && !inside.ranOut {
		return Decision{Outcome: Cannot, Motion: plain, Bound: WholeBody}
	}
	in := b.within([3]float64{c.Length, w, h}, budget)
	if in.margin >= 0 {
		m := Motion{Way: Free, Margin: in.margin, Tilted: true}
		m.poses = func() []Pose { return b.parked(b.push(in.turn, w, h, 0, 0), y, z, c.Length) }
		return Decision{Outcome: Passes, Motion: m}
	}
	if m, ok := b.turnIn(c, budget); ok {
		return Decision{Outcome: Passes, Motion: m}
	}
	return Decision{Outcome: Undecided, Motion: plain, RanOut: inside.ranOut || in.ranOut || budget.spent()}
}

// turnIn looks for a way in on which the body turns: first level on each of its
// sides, then tipping about each of its level directions.
func (b *Body) turnIn(c Car, budget *Budget) (Motion, bool) {
	y, z, w, h := c.opening()
	in := hole{
		y: [2]float64{y, y + w}, z: [2]float64{z, z + h}, inY: [2]float64{0, c.Width}, inZ: [2]float64{0, c.Height}, length: c.Length,
	}
	ups := []Vec{{X: 1}, {Z: 1}, {Y: 1}, {X: -1}}
	if b.own.angle != 0 {
		s, k := math.Sincos(b.own.angle)
		ups = append(ups, Vec{Y: s, Z: k}, Vec{Y: k, Z: -s})
	}
	for _, axis := range [2]int{2, 1} {
		for _, v := range ups {
			if m, ok := b.enter(in, axis, v, budget); ok {
				return m, true
			}
		}
	}
	return Motion{}, false
}

// parked moves a push through an opening to a place in a car, and ends it in the
// middle of its length.
func (b *Body) parked(poses []Pose, y, z, length float64) []Pose {
	last := &poses[len(poses)-1]
	last.At.X = length/2 - b.middleAlong(last.Turn[0])
	for i := range poses {
		poses[i].At.Y += y
		poses[i].At.Z += z
	}
	return poses
}

// Along decides a corridor: exactly, if it is endless.
func (b *Body) Along(c Corridor, budget *Budget) Decision {
	ways := b.straight(c.Width, c.Height)
	plain := best(ways)
	if plain.Margin >= 0 {
		return passing(ways)
	}
	w := b.within([3]float64{math.Inf(1), c.Width, c.Height}, budget)
	switch {
	case w.margin >= 0:
		m := Motion{Way: Free, Margin: w.margin, Tilted: true}
		m.poses = func() []Pose { return b.push(w.turn, c.Width, c.Height, 0, 0) }
		return Decision{Outcome: Passes, Motion: m}
	case w.ranOut:
		return Decision{Outcome: Undecided, Motion: plain, RanOut: true}
	case c.Length == 0 || c.Length >= 2*b.diameter:
		return Decision{Outcome: Cannot, Motion: plain, Bound: WholeBody}
	default:
		return b.Through(Door{Width: c.Width, Height: c.Height, Wall: c.Length, Floor: true}, budget)
	}
}

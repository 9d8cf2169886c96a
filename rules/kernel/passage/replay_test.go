package passage_test

import (
	"math"
	"math/rand/v2"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
)

// replay is a body followed through walls by nothing but its points: it knows
// only the outline, the length and the poses.
type replay struct {
	points []space.Vec
	// free is how far a point is from every wall, negative inside one.
	free func(p space.Vec) float64
}

// points lie on the whole surface: every corner of the outline at both ends,
// and random places of the sides and of the ends.
func points(r *rand.Rand, b *passage.Body, n int) []space.Vec {
	section := b.Section()
	var out []space.Vec
	for _, p := range section {
		for _, x := range []float64{-1, 1} {
			out = append(out, space.Vec{X: x * b.Length() / 2, Y: p.X, Z: p.Y})
		}
	}
	for range n {
		i := r.IntN(len(section))
		p, q := section[i], section[(i+1)%len(section)]
		f, x := r.Float64(), (r.Float64()-0.5)*b.Length()
		out = append(out, space.Vec{X: x, Y: p.X + f*(q.X-p.X), Z: p.Y + f*(q.Y-p.Y)})
	}
	return out
}

func world(p space.Pose, v space.Vec) space.Vec {
	dot := func(e space.Vec) float64 { return e.X*v.X + e.Y*v.Y + e.Z*v.Z }
	return space.Vec{X: p.At.X + dot(p.Turn[0]), Y: p.At.Y + dot(p.Turn[1]), Z: p.At.Z + dot(p.Turn[2])}
}

// least is the least distance of any point from a wall on the way, in steps of
// which none moves a point further than step.
func (w replay) least(poses []space.Pose, step float64) float64 {
	least := math.Inf(1)
	see := func(p space.Pose) {
		for _, v := range w.points {
			least = min(least, w.free(world(p, v)))
		}
	}
	var last space.Pose
	for i, p := range poses {
		if i == 0 {
			see(p)
			last = p
			continue
		}
		// Poses nearer than a step to the last one seen are passed over.
		moved := distance(last, p)
		if moved < step && i < len(poses)-1 {
			continue
		}
		from := poses[i-1]
		n := max(1, int(math.Ceil(distance(from, p)/step)))
		if n > 400 {
			n = 400
		}
		for k := range n {
			f := float64(k+1) / float64(n)
			see(space.Pose{Turn: from.Turn.Between(p.Turn, f), At: space.Vec{
				X: from.At.X + f*(p.At.X-from.At.X), Y: from.At.Y + f*(p.At.Y-from.At.Y), Z: from.At.Z + f*(p.At.Z-from.At.Z),
			}})
		}
		last = p
	}
	return least
}

// distance is about how far a point a metre from the origin moves.
func distance(p, q space.Pose) float64 {
	return math.Sqrt((p.At.X-q.At.X)*(p.At.X-q.At.X)+(p.At.Y-q.At.Y)*(p.At.Y-q.At.Y)+(p.At.Z-q.At.Z)*(p.At.Z-q.At.Z)) + p.Turn.Apart(q.Turn)
}

// beside is how far a place is from what is outside of an interval.
func beside(x, low, high float64) float64 { return min(x-low, high-x) }

// doorWalls is an endless wall with an opening.
func doorWalls(d opening.Door) func(space.Vec) float64 {
	return func(p space.Vec) float64 {
		in := min(beside(p.Y, 0, d.Width), beside(p.Z, 0, d.Height))
		off := max(-p.X, p.X-d.Wall)
		if d.Floor && p.Z < 0 {
			return p.Z
		}
		if d.Floor && off > 0 {
			return min(p.Z, doorWalls(opening.Door{Width: d.Width, Height: d.Height, Wall: d.Wall})(p))
		}
		switch {
		case off <= 0:
			return in
		case in <= 0:
			return off
		default:
			return math.Hypot(off, in)
		}
	}
}

// cornerWalls are two outer walls, the block inside the corner, floor, ceiling.
func cornerWalls(c corner.Corner) func(space.Vec) float64 {
	return func(p space.Vec) float64 {
		x, y := max(0, c.Width-p.X), max(0, c.Onward-p.Y)
		block := math.Hypot(x, y)
		if x == 0 && y == 0 {
			block = max(c.Width-p.X, c.Onward-p.Y)
		}
		return min(p.X, p.Y, p.Z, c.Height-p.Z, block)
	}
}

// carWalls are the inside of a car, and the wall with the door, which is thin.
func carWalls(c car.Car) func(space.Vec) float64 {
	return func(p space.Vec) float64 {
		door := min(beside(p.Y, c.Left, c.Left+c.DoorWidth), beside(p.Z, c.Sill, c.Sill+c.DoorHeight))
		if p.X < 0 {
			if door <= 0 {
				return -p.X
			}
			return math.Hypot(p.X, door)
		}
		in := min(beside(p.Y, 0, c.Width), beside(p.Z, 0, c.Height), c.Length-p.X)
		if door <= 0 {
			return min(in, p.X)
		}
		return min(in, math.Hypot(p.X, door))
	}
}

package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// ringPoses are those of alongRing: the section turns about the ring's centre,
// which stays in the middle plane of the wall.
func ringPoses(b *passage.Body, r ring, need, margin, angle, a, h, wall float64) []space.Pose {
	from, to := ringArc(b, r, margin, wall)
	n := int(math.Ceil((from - to) / passage.TurnStep))
	middle := r.outer + b.Wrap() + margin - need/2
	out := make([]space.Pose, 0, max(0, n+1))
	for i := range n + 1 {
		t, radial := ringTurn(b, from+(to-from)*float64(i)/float64(n), need, margin, angle, a < h)
		p := space.Vec{Y: r.centre.X, Z: r.centre.Y}.Add(radial.Times(middle))
		out = append(out, space.Pose{Turn: t, At: space.Vec{X: wall/2 - p.Dot(t[0]), Y: a/2 - p.Dot(t[1]), Z: h/2 - p.Dot(t[2])}})
	}
	return out
}

// ringArc is between which angles the section turns about the ring's centre.
func ringArc(b *passage.Body, r ring, margin, wall float64) (from, to float64) {
	wrap := b.Wrap() + max(0, margin)
	clear := math.Asin(min(1, (wall/2+wrap)/r.inner))
	return r.to + clear, r.from - clear
}

// ringTurn is the turn at one of these angles, with the ring's radius there.
func ringTurn(b *passage.Body, at, need, margin, angle float64, upright bool) (t space.Turn, radial space.Vec) {
	s, c := math.Sincos(at)
	radial, forward := space.Vec{Y: s, Z: c}, space.Vec{Y: c, Z: -s}
	long := space.Vec{X: 1}
	if need > 2*(b.Half()+b.Wrap()+margin) {
		long = radial
	}
	return inOpening(forward, long, angle, upright), radial
}

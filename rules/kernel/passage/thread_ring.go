package passage

import "math"

// ringPoses are those of alongRing: the section turns about the ring's centre,
// which stays in the middle plane of the wall.
func (b *Body) ringPoses(r ring, need, margin, angle, a, h, wall float64) []Pose {
	wrap := b.wrap + max(0, margin)
	clear := math.Asin(min(1, (wall/2+wrap)/r.inner))
	from, to := r.to+clear, r.from-clear
	n := int(math.Ceil((from - to) / turnStep))
	middle := r.outer + b.wrap + margin - need/2
	var out []Pose
	for i := range n + 1 {
		s, c := math.Sincos(from + (to-from)*float64(i)/float64(n))
		radial, forward := Vec{Y: s, Z: c}, Vec{Y: c, Z: -s}
		long := Vec{X: 1}
		if need > 2*(b.half+b.wrap+margin) {
			long = radial
		}
		t := inOpening(forward, long, angle, a < h)
		p := Vec{Y: r.centre.X, Z: r.centre.Y}.add(radial.times(middle))
		out = append(out, Pose{t, Vec{wall/2 - p.dot(t[0]), a/2 - p.dot(t[1]), h/2 - p.dot(t[2])}})
	}
	return out
}

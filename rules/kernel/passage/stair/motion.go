package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/space"
)

// carried looks for a motion on which one direction of the body is upright on the
// landing, and for the most that it leaves.
func (l landing) carried(up space.Vec, way passage.Way, budget *passage.Budget) passage.Motion {
	m := passage.Motion{Way: way, Margin: none, Climbs: true, Tilted: way == passage.Free}
	if l.b.Width(up) > l.s.Headroom-2*l.off || !budget.Spend(yaws) {
		return m
	}
	poses := l.upStair(up, budget)
	if poses == nil {
		return m
	}
	m.Margin = 0
	for step := corner.Ample; step > passage.Settled; step /= 2 {
		wider := l
		wider.off += m.Margin + step
		if m.Margin+step > corner.Ample || l.b.Width(up) > l.s.Headroom-2*wider.off || !budget.Spend(yaws) {
			continue
		}
		if more := wider.upStair(up, budget); more != nil {
			m.Margin, poses = m.Margin+step, more
		}
	}
	m.Tilted = m.Tilted || l.steeper(poses, up)
	m.Follow = func() []space.Pose { return poses }
	return m
}

// steepSlack is by how much more than the flight, in rad, the body may rise and count as
// carried along it.
const steepSlack = 1.01 * pitchStep

// steeper reports whether a direction of the body is at some pose further off the upright
// than the slope.
func (l *landing) steeper(poses []space.Pose, up space.Vec) bool {
	least := math.Cos(math.Atan(l.s.slope()) + steepSlack)
	for _, p := range poses {
		if p.Turn[2].Dot(up) < least {
			return true
		}
	}
	return false
}

// upStair is a way up the stair, or nil.
func (l landing) upStair(up space.Vec, budget *passage.Budget) []space.Pose {
	if l.s.Turn != Straight {
		return l.climb(up, budget).way()
	}
	flight := l.flight()
	flight.length = math.Inf(1)
	for i := range yaws / 2 {
		t := space.About(up, 4*math.Pi*float64(i)/yaws)
		if l.b.Width(t[0]) > l.s.Width-2*l.off || !budget.Spend(cellsAnEnd) {
			continue
		}
		if way := newPitching(l.b, flight, t, l.off).way(math.Inf(1), 0); way != nil {
			for k := range way {
				way[k].At.X = l.off - l.b.Reach(t[0].Times(-1)).Dot(t[0])
			}
			return way
		}
	}
	return nil
}

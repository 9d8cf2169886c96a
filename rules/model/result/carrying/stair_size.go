package carrying

import (
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/stair"
	"dryfit/rules/model/layout"
)

// climbsBare reports whether one motion is found by which the panel goes up a stair without
// its wrap.
func (p *panel) climbsBare(l layout.Leg, left *passage.Budget) bool {
	if p.brief || left == nil {
		return false
	}
	w := landingWalls(l)
	if turns(l, straightOn) {
		w = straightWalls(l, stair.AcrossSlope(l.Headroom.Get(), l.Rise.Get(), l.Going.Get()))
	}
	_, climbs := w.motionUp(p.body.Wrapped(0), w.sizes(), left)
	return climbs
}

// stairCells is how many cells one motion up a stair of other sizes is looked for with, or
// up the stair itself without the wrap.
const stairCells = 1000

// motionUp is the motion up a stair of such sizes, if one is found.
func (w walls) motionUp(b *passage.Body, sizes []float64, left *passage.Budget) (passage.Motion, bool) {
	if left.Cells < stairCells {
		return passage.Motion{}, false
	}
	left.Cells -= stairCells
	share := &passage.Budget{Cells: stairCells}
	d := w.decide(b, sizes, share)
	left.Cells += share.Cells
	return d.Motion, d.Outcome == passage.Passes && d.Motion.Climbs
}

// How a stair's sizes grow together until one motion up it is found: from the first
// step, in m, twice as far each time, and half as far back.
const (
	stairGrows    = 0.1
	stairGrowths  = 6
	stairHalvings = 3
)

// roomierStair is by how much all sizes of a stair have to grow together for one motion
// up it to be found.
func (p *panel) roomierStair(w walls, left *passage.Budget) (more float64, motion string) {
	climbs := func(by float64) bool {
		sizes := w.sizes()
		for i := range sizes {
			sizes[i] += by
		}
		m, found := w.motionUp(p.body, sizes, left)
		if found {
			more, motion = by, w.words(m)
		}
		return found
	}
	low, high := 0.0, stairGrows
	for range stairGrowths {
		if climbs(high) {
			break
		}
		low, high = high, 2*high
	}
	if more == 0 {
		return 0, ""
	}
	for range stairHalvings {
		if mid := (low + more) / 2; !climbs(mid) {
			low = mid
		}
	}
	return more, motion
}

package drawing

import (
	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/result/carrying"
)

// turnedFlat is the panel where it turns level, its diagonal across the room. The
// gaps are of the panel without its wrap.
func turnedFlat(p carrying.Pose, across, on, high float64) []*sight {
	plan := newSight("plan", p.Plan, 0)
	plan.side(1, across, false, nil)
	plan.show(passage.Point{X: min(on, plan.high.X+roomShown), Y: across})
	walls := []passage.Point{{X: plan.high.X}, {}, {Y: across}, {X: plan.high.X, Y: across}}
	if plan.high.X == on {
		walls = append(walls, walls[0])
	}
	plan.lines = [][]passage.Point{walls}
	section := newSight("section", p.Side, 0)
	section.upTo(high)
	return padded(p, plan, section)
}

// tippedDown is the panel on its way down from its edge, its box's diagonal upright.
func tippedDown(p carrying.Pose, wide, high float64) []*sight {
	plan := newSight("plan", p.Plan, 0)
	plan.side(1, wide, false, nil)
	plan.low.X, plan.high.X = plan.low.X-reachShown, plan.high.X+reachShown
	plan.show(passage.Point{X: plan.low.X, Y: wide})
	for _, y := range []float64{0, wide} {
		plan.lines = append(plan.lines, []passage.Point{{X: plan.low.X, Y: y}, {X: plan.high.X, Y: y}})
	}
	section := newSight("section", p.Side, 0)
	section.side(1, high, false, nil)
	section.upTo(high)
	return padded(p, plan, section)
}

// upTo draws the floor and the height of the springing.
func (s *sight) upTo(high float64) {
	s.low.X, s.high.X = s.low.X-reachShown, s.high.X+reachShown
	s.show(passage.Point{X: s.low.X, Y: high})
	for _, y := range []float64{0, high} {
		s.lines = append(s.lines, []passage.Point{{X: s.low.X, Y: y}, {X: s.high.X, Y: y}})
	}
}

// padded draws the wrap, which the gaps that were measured leave out.
func padded(p carrying.Pose, all ...*sight) []*sight {
	for _, s := range all {
		s.wrap = p.Inside
		for _, q := range s.panel {
			s.show(passage.Point{X: q.X - s.wrap, Y: q.Y - s.wrap})
			s.show(passage.Point{X: q.X + s.wrap, Y: q.Y + s.wrap})
		}
	}
	return all
}

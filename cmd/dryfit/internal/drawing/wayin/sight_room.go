package wayin

import (
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
)

// TurnedFlat is the panel where it turns level, its diagonal across the room. The
// gaps are of the panel without its wrap.
func TurnedFlat(p carrying.Pose, across, on, high float64) []*Sight {
	plan := newSight("plan", p.Plan, 0)
	plan.side(1, across, false, nil)
	plan.show(space.Point{X: min(on, plan.High.X+roomShown), Y: across})
	walls := []space.Point{{X: plan.High.X}, {}, {Y: across}, {X: plan.High.X, Y: across}}
	if plan.High.X == on {
		walls = append(walls, walls[0])
	}
	plan.Lines = [][]space.Point{walls}
	section := newSight("section", p.Side, 0)
	section.upTo(high)
	return padded(p, plan, section)
}

// TippedDown is the panel on its way down from its edge, its box's diagonal upright.
func TippedDown(p carrying.Pose, wide, high float64) []*Sight {
	plan := newSight("plan", p.Plan, 0)
	plan.side(1, wide, false, nil)
	plan.Low.X, plan.High.X = plan.Low.X-reachShown, plan.High.X+reachShown
	plan.show(space.Point{X: plan.Low.X, Y: wide})
	for _, y := range []float64{0, wide} {
		plan.Lines = append(plan.Lines, []space.Point{{X: plan.Low.X, Y: y}, {X: plan.High.X, Y: y}})
	}
	section := newSight("section", p.Side, 0)
	section.side(1, high, false, nil)
	section.upTo(high)
	return padded(p, plan, section)
}

// upTo draws the floor and the height of the springing.
func (s *Sight) upTo(high float64) {
	s.Low.X, s.High.X = s.Low.X-reachShown, s.High.X+reachShown
	s.show(space.Point{X: s.Low.X, Y: high})
	for _, y := range []float64{0, high} {
		s.Lines = append(s.Lines, []space.Point{{X: s.Low.X, Y: y}, {X: s.High.X, Y: y}})
	}
}

// padded draws the wrap, which the gaps that were measured leave out.
func padded(p carrying.Pose, all ...*Sight) []*Sight {
	for _, s := range all {
		s.Wrap = p.Inside
		for _, q := range s.Panel {
			s.show(space.Point{X: q.X - s.Wrap, Y: q.Y - s.Wrap})
			s.show(space.Point{X: q.X + s.Wrap, Y: q.Y + s.Wrap})
		}
	}
	return all
}

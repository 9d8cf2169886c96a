package wayin

import (
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
)

// stairSection looks up a stair's first flight at its landing: floor and soffit, and those
// of the flight that goes on from its side. What of the panel is over the first flight
// may be lower than the landing, so that nothing is measured to floor or soffit.
func stairSection(l carrying.Leg, p carrying.Pose) *Sight {
	s := newSight("section", p.Side, p.Inside)
	s.side(0, 0, true, nil)
	across, high := l.Landing.Width.Get(), l.Headroom.Get()
	s.show(space.Point{})
	s.show(space.Point{X: across, Y: high})
	if l.Turn.Get() == "half" {
		s.side(0, across, false, nil)
		s.Lines = [][]space.Point{{{Y: high}, {}, {X: across}, {X: across, Y: high}, {Y: high}}}
		return s
	}
	s.show(space.Point{X: across + reachShown})
	on := s.High.X - across
	up := on * l.Rise.Get() / l.Going.Get()
	s.show(space.Point{X: s.High.X, Y: high + up})
	s.Lines = [][]space.Point{{
		{X: s.High.X, Y: high + up},
		{X: across, Y: high},
		{Y: high},
		{},
		{X: across},
		{X: across, Y: l.Rise.Get()},
		{X: s.High.X, Y: l.Rise.Get() + up},
	}}
	return s
}

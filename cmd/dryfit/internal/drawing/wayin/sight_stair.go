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

// ascentPlan is a straight stair from above, up to the right: the walls of its flight, and
// those of its landing where the flight's place at it is known.
func ascentPlan(l carrying.Leg, p carrying.Pose) *Sight {
	s := newSight("plan", p.Plan, p.Inside)
	right, left := 0.0, p.A
	if l.LandingLeft.Given() {
		left += l.LandingLeft.Get()
		right = left - l.Landing.Width.Get()
	}
	flight := func(q space.Point) bool { return q.X <= 0 }
	landing := func(q space.Point) bool { return q.X > 0 }
	s.side(1, 0, true, flight)
	s.side(1, p.A, false, flight)
	s.side(1, right, true, landing)
	s.side(1, left, false, landing)
	s.show(space.Point{X: s.Low.X - reachShown, Y: right})
	s.show(space.Point{X: max(reachShown, s.High.X), Y: left})
	s.Lines = [][]space.Point{
		{{X: s.Low.X}, {}, {Y: right}, {X: s.High.X, Y: right}},
		{{X: s.Low.X, Y: p.A}, {Y: p.A}, {Y: left}, {X: s.High.X, Y: left}},
	}
	for k := range l.Risers.Get() {
		x := -float64(k) * l.Going.Get()
		s.Lines = append(s.Lines, []space.Point{{X: x}, {X: x, Y: p.A}})
	}
	return s
}

// ascentSection is that stair along its flight: its steps and its soffit, from which nothing
// is measured, since what is over the flight is at its slope.
func ascentSection(l carrying.Leg, p carrying.Pose) *Sight {
	s := newSight("section", p.Side, p.Inside)
	high, rise, going, n := l.Headroom.Get(), l.Rise.Get(), l.Going.Get(), float64(l.Risers.Get())
	s.show(space.Point{X: -n*going - reachShown, Y: -n * rise})
	s.show(space.Point{X: reachShown, Y: high})
	steps := []space.Point{{X: s.High.X}, {}}
	for k := 1.0; k <= n; k++ {
		steps = append(steps, space.Point{X: -(k - 1) * going, Y: -k * rise}, space.Point{X: -k * going, Y: -k * rise})
	}
	steps[len(steps)-1].X = s.Low.X
	s.Lines = [][]space.Point{steps, {{X: s.High.X, Y: high}, {Y: high}, {X: -n * going, Y: high - n*rise}, {X: s.Low.X, Y: high - n*rise}}}
	return s
}

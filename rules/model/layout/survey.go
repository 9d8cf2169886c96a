package layout

import (
	"fmt"

	"dryfit/rules/kernel/placement"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Survey is the room as measured. Places along it are counted from the zero of its
// baseline, and distances across it from the baseline.
type Survey struct {
	Table
	Date, By  Word
	Accuracy  Number // plus or minus, of each reading
	Near, Far SurveySides
	Diagonals record.Value[[]float64] // near left to far right, near right to far left
	Springing Number                  // height of the design springing above the level line
	Station   record.Value[[]SurveyStation]

	Room    record.Value[placement.Room]
	Seats   record.Value[[2]placement.Course] // above the level line, on the left wall and on the right one
	Framing record.Value[placement.Course]    // the same of the framing's underside, over the crown
	Row     record.Value[placement.Strip]     // of panels, at its widest
	// SetOut is where the row stands. It needs close.first_gap.
	SetOut record.Value[SetOut]
	// Raised is how far the seats of each panel lie over the springing, at its middle,
	// the panel at the far end first: none where that is not known.
	Raised record.Value[[]SeatsRaised]
}

// SurveySides is a reading at each side wall.
type SurveySides struct {
	Table
	Left, Right Number
}

// SurveyStation is what was measured at one place.
type SurveyStation struct {
	At, Left, Right, Framing Number
	Seat                     SurveySides
}

// SeatsRaised is how far the seats on both walls lie over the springing, in m.
type SeatsRaised struct{ Left, Right float64 }

// SetOut is where the row of panels stands between the measured walls, or why that
// is not known.
type SetOut struct {
	placement.Placed
	Err error
}

// SurveyClearance is what is to be left beside the panels: the built-in limit of
// survey.fits, which the set-out keeps where it can.
const SurveyClearance = 0.003

// surveyLimit is the name of that limit, as standards write it.
const surveyLimit = "survey.fits.clearance"

// takeSurvey is what the spec says was measured.
func (c *Ceiling) takeSurvey() {
	s := c.spec.Survey
	c.Survey = Survey{
		Table: c.table(s.Table), Date: stated(c, s.Date), By: stated(c, s.By), Accuracy: si(c, s.Accuracy),
		Near: c.surveySides(s.Near), Far: c.surveySides(s.Far),
		Diagonals: spec.Listed(c.rec, s.Diagonals), Springing: si(c, s.Springing),
		Station: each(c, s.Station, func(s spec.Station) SurveyStation {
			return SurveyStation{At: si(c, s.At), Left: si(c, s.Left), Right: si(c, s.Right), Framing: si(c, s.Framing), Seat: c.surveySides(s.Seat)}
		}),
	}
	c.deriveSurvey(&c.Survey)
}

// deriveSurvey says how what is asked of a survey is worked out of its readings.
func (c *Ceiling) deriveSurvey(v *Survey) {
	v.Room = Derive(c, v.room)
	v.Seats = Derive(c, func() [2]placement.Course {
		return [2]placement.Course{
			v.course(func(s SurveyStation) Number { return s.Seat.Left }), v.course(func(s SurveyStation) Number { return s.Seat.Right }),
		}
	})
	v.Framing = Derive(c, func() placement.Course { return v.course(func(s SurveyStation) Number { return s.Framing }) })
	v.Row = Derive(c, func() placement.Strip {
		return placement.Strip{Half: c.WidestPanel() / 2, Length: c.BuiltLength(), FirstGap: c.Close.FirstGap.Get()}
	})
	v.SetOut = Derive(c, func() SetOut {
		p, err := v.Room.Get().SetOut(v.Row.Get(), c.Limit(surveyLimit, SurveyClearance))
		return SetOut{p, err}
	})
	v.Raised = Derive(c, c.seatsRaised)
}

// Seated reports whether the survey has what the seats are compared with.
func (v *Survey) Seated() bool {
	return v.Given() && v.Springing.Given() && len(v.Seats.Get()[0]) > 0
}

func (c *Ceiling) seatsRaised() []SeatsRaised {
	v := &c.Survey
	if !v.Seated() || !c.Close.FirstGap.Given() || v.SetOut.Get().Err != nil {
		return nil
	}
	seats, springing, n := v.Seats.Get(), v.Springing.Get(), c.Panel.Along.Get()
	out := make([]SeatsRaised, n)
	for i := range out {
		near, far := c.PanelAlong(n - 1 - i)
		x := v.SetOut.Get().Near + (near+far)/2
		out[i] = SeatsRaised{seats[0].At(x) - springing, seats[1].At(x) - springing}
	}
	return out
}

// RowName names a panel of the row, the first being 0 at the far end: where an arch
// is of several panels, which are numbered by themselves, it is the whole arch.
func (c *Ceiling) RowName(i int) string { return fmt.Sprintf("%s %d", c.RowOf(), i+1) }

// RowOf is what the row is of.
func (c *Ceiling) RowOf() string {
	if c.Panel.Around.Get() > 1 {
		return "arch"
	}
	return "panel"
}

func (c *Ceiling) surveySides(s spec.SurveySides) SurveySides {
	return SurveySides{Table: c.table(s.Table), Left: si(c, s.Left), Right: si(c, s.Right)}
}

// course is a reading at each station that has it.
func (v *Survey) course(of func(SurveyStation) Number) (out placement.Course) {
	for _, s := range v.Station.Get() {
		if n := of(s); n.Given() {
			out = append(out, placement.Reading{X: s.At.Get(), Y: n.Get()})
		}
	}
	return out
}

func (v *Survey) room() placement.Room {
	return placement.Room{
		Left:  v.course(func(s SurveyStation) Number { return s.Left }),
		Right: v.course(func(s SurveyStation) Number { return s.Right }),
		Near:  placement.Ends{Left: v.Near.Left.Get(), Right: v.Near.Right.Get()},
		Far:   placement.Ends{Left: v.Far.Left.Get(), Right: v.Far.Right.Get()},
	}
}

// WidestPanel is the width of the arch over its feet at its widest: its own
// tolerance, and its form's turned into width.
func (c *Ceiling) WidestPanel() float64 {
	return c.Vault.Width.Get() + c.Panel.Tolerance.Get() + c.Panel.Form.Get()*c.Vault.Spread.Get()
}

// steepest is how far the axis of the panels may run off the baseline, by length.
const steepest = 0.010

// resolveSurvey says what can't be in a survey.
func resolveSurvey(c *Ceiling) []Fault {
	if !c.Survey.Given() {
		return nil
	}
	for _, wrong := range []func() []Fault{c.stationsAstray, c.crossedWalls, c.skewed} {
		if faults := wrong(); len(faults) > 0 {
			return faults
		}
	}
	return nil
}

// stationsAstray are stations that don't follow each other along the row.
func (c *Ceiling) stationsAstray() (faults []Fault) {
	list := c.Survey.Station.Get()
	place := func(i int) string { return spec.Key("survey", "station", i+1, "at") }
	for i := 1; i < len(list); i++ {
		before, at := list[i-1].At.Get(), list[i].At.Get()
		if at <= before {
			faults = append(faults, Fault{place(i), c.sprintf("station %d is at %v and the station before it at %v; list stations in ascending order along the baseline",
				i+1, length(at), length(before))})
		}
	}
	last := len(list) - 1
	if covers, row := list[last].At.Get()-list[0].At.Get(), c.BuiltLength(); len(faults) == 0 && covers < row {
		long, panels := c.Units.Pair(length(covers).Value(), length(row).Value())
		faults = append(faults, Fault{place(last), c.sprintf("the stations cover %s of the room, and the row of panels is %s long; measure at both ends of the row", long, panels)})
	}
	return faults
}

// crossedWalls are walls that stand on the wrong side of each other.
func (c *Ceiling) crossedWalls() (faults []Fault) {
	v := c.Survey
	for i, s := range v.Station.Get() {
		if width := s.Left.Get() + s.Right.Get(); width <= 0 {
			faults = append(faults, Fault{
				spec.Key("survey", "station", i+1, "right"),
				c.sprintf("left and right add up to a width of %v, so the walls cross", length(width)),
			})
		}
	}
	for _, side := range []struct{ near, far Number }{{v.Near.Left, v.Far.Left}, {v.Near.Right, v.Far.Right}} {
		if long := side.far.Get() - side.near.Get(); long <= 0 {
			faults = append(faults, Fault{side.far.Key(), c.sprintf("the distance from the near end to the far end is %v, so the end walls cross", length(long))})
		}
	}
	if len(faults) > 0 {
		return faults
	}
	room := v.Room.Get()
	for _, end := range []struct {
		key string
		at  placement.Ends
	}{{"survey.near", room.Near}, {"survey.far", room.Far}} {
		if left, right := room.Corners(end.at); right.Y <= left.Y {
			faults = append(faults, Fault{end.key, "the side walls, extended straight from the stations, cross before they reach this corner"})
		}
	}
	return faults
}

// skewed is a baseline that was not laid along the room.
func (c *Ceiling) skewed() []Fault {
	if !c.Close.FirstGap.Given() {
		return nil
	}
	if set := c.Survey.SetOut.Get(); set.Err == nil && (set.B > steepest || set.B < -steepest) {
		return []Fault{{"survey.station", c.sprintf("the axis of the panels is askew to the baseline by %v a metre; the maximum is %v a metre. Lay the baseline along the room, or look for a wrong reading",
			length(max(set.B, -set.B)), length(steepest))}}
	}
	return nil
}

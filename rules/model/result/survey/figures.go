package survey

import (
	"fmt"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// subject heads the survey's part of the calculation sheet.
const subject = "the room as measured"

// Figures are the survey's lines of the calculation sheet: none of a room that was
// not measured.
func (v *Survey) Figures() []figure.Figure {
	l := lines{v, calcs.New(v.c, subject)}
	l.Where(func() bool { _, ok := v.Placed(); return ok }, func() {
		l.placing()
		for i := range v.Panels.Get() {
			l.gaps(i)
		}
		l.ends()
	})
	l.Where(v.Seated, func() {
		l.Add("survey.tilt", "i_s", "steepest slope of the seats, between readings next to each other", func(f *figure.Figure) figure.Measure {
			f.Method = "rise divided by distance, on the wall where it is greatest"
			return calcs.Measured(v.Tilt, quantity.Fraction)
		})
	})
	l.Where(func() bool { _, ok := v.Placed(); return ok && v.Seated() }, l.seats)
	l.Where(func() bool { _, ok := v.Placed(); return ok && v.Framed() }, l.straps)
	return l.List
}

// lines collects figures.
type lines struct {
	v *Survey
	*calcs.Lines
}

// length adds a length that a method gives.
func (l lines) length(key, symbol, name, method string, of func() float64) {
	l.Add(key, symbol, name, func(f *figure.Figure) figure.Measure {
		f.Method = method
		return calcs.Metres(l.v.c.Number("", of))
	})
}

func (l lines) placing() {
	v := l.v
	set := func() layout.SetOut { return v.c.Survey.SetOut.Get() }
	l.length("survey.least-gap", "g_least", "least gap beside the panels at their widest, where it is greatest",
		"linear programming over the axis and the gap, from the walls' readings", func() float64 { return v.Least.Get().Gap })
	l.length("survey.most-gap", "g_most", "greatest gap beside the panels at their widest, for the placing of the row in the room",
		"the least that leaves the clearance of survey.fits or, if none does, the least gap", func() float64 { return set().Most })
	l.length("survey.axis.near", "y_n", "axis of the panels at the near end of the row, to the right of the baseline",
		"the set-out", func() float64 { return set().Y(set().Near) })
	l.length("survey.axis.far", "y_f", "axis of the panels at the far end of the row",
		"the set-out", func() float64 { return set().Y(set().Far) })
}

// gaps are those at the four corners of a panel.
func (l lines) gaps(i int) {
	for _, at := range []struct {
		key, symbol, name string
		of                func(Panel) float64
	}{
		{"left.near", "ln", "left of %s at its near end", func(p Panel) float64 { return p.AtNear.Left }},
		{"left.far", "lf", "left of %s at its far end", func(p Panel) float64 { return p.AtFar.Left }},
		{"right.near", "rn", "right of %s at its near end", func(p Panel) float64 { return p.AtNear.Right }},
		{"right.far", "rf", "right of %s at its far end", func(p Panel) float64 { return p.AtFar.Right }},
	} {
		l.length(fmt.Sprintf("survey.gap.%d.%s", i+1, at.key), fmt.Sprintf("g_%d%s", i+1, at.symbol), "gap to the wall, "+fmt.Sprintf(at.name, l.v.Name(i)),
			"the wall's reading, the axis and half of the panel's width", func() float64 { return at.of(l.v.Panels.Get()[i]) })
	}
}

func (l lines) ends() {
	v := l.v
	for i, side := range []string{"left", "right"} {
		l.length("survey.first-gap."+side, "g_f"+side[:1], "gap from the far wall to the first panel's "+side+" corner",
			"along the baseline; the nearer corner stands at the first gap", func() float64 {
				gaps := v.First.Get()
				return []float64{gaps.Left, gaps.Right}[i]
			})
		last := func() Last { return v.Last.Get()[i] }
		l.Where(func() bool { return last().Least.Err == nil }, func() {
			l.length("survey.last-gap."+side+".least", "g_n"+side[:1], "gap from the near wall to the last panel's "+side+" corner, least",
				"less the tolerances of panels and seams, twice the accuracy, and the growth of the ribs until they are hung", func() float64 { return last().Least.Value })
		})
		l.Where(func() bool { return last().Most.Err == nil }, func() {
			l.length("survey.last-gap."+side+".most", "g_m"+side[:1], "the same, greatest, in the dry season",
				"with the tolerances of panels and seams, twice the accuracy, and the shrinkage of the dry season", func() float64 { return last().Most.Value })
		})
	}
}

func (l lines) seats() {
	for i := range l.v.Panels.Get() {
		of := func() layout.SeatsRaised { return l.v.Panels.Get()[i].Seat }
		const method = "straight between the readings, at the panel's middle"
		l.length(fmt.Sprintf("survey.seat.%d.left", i+1), fmt.Sprintf("z_%dl", i+1), "left seat of "+l.v.Name(i)+" over the springing", method, func() float64 { return of().Left })
		l.length(fmt.Sprintf("survey.seat.%d.right", i+1), fmt.Sprintf("z_%dr", i+1), "right seat of "+l.v.Name(i)+" over the springing", method, func() float64 { return of().Right })
	}
}

func (l lines) straps() {
	c := l.v.c
	for i := range l.v.Panels.Get() {
		for k := range c.Strap.Stations.Get() {
			l.length(fmt.Sprintf("survey.strap.%d.%d", i+1, k+1), fmt.Sprintf("l_%d,%d", i+1, k+1), fmt.Sprintf("length of strap %d of %s between its fixings", k+1, l.v.Name(i)),
				"the framing's underside at the panel's middle, less the height of the extrados", func() float64 {
					return l.v.Strap(l.v.Panels.Get()[i], c.Strap.Stations.Get()[k])
				})
		}
	}
}

package carrying

import (
	"fmt"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// beyond says where the motion may have more than its margin.
func (w Way) beyond() string {
	if w.Climbs {
		return "; it may have more"
	}
	return ""
}

// Figures are the route's lines of the calculation sheet: each leg with the
// motion, the margin, and for a door the free depth that the motion takes.
func Figures(c *layout.Ceiling, legs []Leg) []figure.Figure {
	out := calcs.New(c, "the route")
	for _, l := range legs {
		kind := KindOf(l.Kind.Get())
		// add puts a figure of the leg's way on the sheet.
		add := func(key, symbol, name string, unit quantity.Unit, of func(Way) float64, method func(Way) string) {
			key, symbol = fmt.Sprintf("carrying.%s.%s", l.Number(), key), symbol+"_"+l.Number()
			out.Add(key, symbol, "", func(f *figure.Figure) figure.Measure {
				f.Name, f.Method = l.Name.Get()+": "+name, method(l.Way.Get())
				return calcs.Measured(c.Number("", func() float64 { return of(l.Way.Get()) }), unit)
			})
		}
		add("margin", "g", "clearance on every side of the wrap", quantity.Metre,
			func(w Way) float64 { return w.Margin }, func(w Way) string { return w.Outcome.String() + ", " + w.Motion + w.beyond() })
		if kind.Deep {
			add("depth", "d", "clear depth needed on each side of the opening", quantity.Metre,
				func(w Way) float64 { return w.Depth }, func(Way) string { return "depth that the motion takes, including the wrap" })
		}
		if kind.Loads {
			add("loads", "n", "number of loads", quantity.One,
				func(w Way) float64 { return float64(w.Loads) }, func(w Way) string { return fmt.Sprintf("%d panels in each load, arches nested", w.Load) })
		}
	}
	return out.List
}

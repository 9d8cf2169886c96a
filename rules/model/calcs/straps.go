package calcs

import (
	"fmt"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

func seamFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "seams"
	// tenons adds the count of the tenons in a seam that is in a number of pieces.
	tenons := func(key, symbol, name, formula string, pieces int, n layout.Count, length layout.Number) {
		l.Add(key, symbol, name, func(f *figure.Figure) figure.Measure {
			if n.Get() > pieces {
				f.Formula = formula
				f.Terms = []figure.Term{Term("A", Metres(length)), Term("e", Metres(c.Seam.Edge)), Term("p", Metres(c.Seam.Spacing))}
			} else {
				f.Method = "a seam that is too short for two tenons has one, in each piece of the arch"
			}
			if pieces > 1 {
				f.Terms = append(f.Terms, Term("q", Whole(c.Panel.Around)))
			}
			return Whole(n)
		})
	}
	const one = "ceil((A - 2*e) / p) + 1"
	l.Where(func() bool { return c.Seam.Count.Get() > 0 }, func() {
		formula := one
		if c.Panel.Around.Get() > 1 {
			formula = "q*(ceil((A/q - 2*e) / p) + 1)"
		}
		tenons("joint.tenons-in-seam", "n_s", "loose tenons in one seam around the arc", formula, c.Panel.Around.Get(), c.Seam.TenonsInSeam, c.Vault.Arc)
	})
	l.Where(func() bool { return c.Seam.EdgeSeams.Get() > 0 }, func() {
		tenons("joint.tenons-in-edge", "n_e", "loose tenons in one seam along the axis", one, 1, c.Seam.TenonsInEdge, c.Panel.Length)
	})
	l.Add("joint.count", "n_j", "number of loose tenons in all seams", func(f *figure.Figure) figure.Measure {
		f.Formula = "a*n_s + b*n_e"
		f.Terms = []figure.Term{
			Term("a", Whole(c.Seam.Count)), Term("n_s", Whole(c.Seam.TenonsInSeam)),
			Term("b", Whole(c.Seam.EdgeSeams)), Term("n_e", Whole(c.Seam.TenonsInEdge)),
		}
		return Whole(c.Seam.Tenons)
	})
}

func strapFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "straps"
	l.Where(func() bool { return len(c.Strap.Stations.Get()) > 0 }, func() {
		runFigures(c, l)
		l.Where(c.Room.Above.Given, func() { lengthFigures(c, l) })
	})
}

// runFigures are the longest clear run, and what each strap carries.
func runFigures(c *layout.Ceiling, l *Lines) {
	run := c.Number("strap.longest-run", func() float64 {
		run, _ := c.LongestRun()
		return run
	})
	l.Add("strap.longest-run", "u", "longest clear run of the rib; an overhang counts twice", func(f *figure.Figure) figure.Measure {
		f.Method = "stations as shares of the arc"
		return Metres(run)
	})
	l.Add("strap.run-ratio", "u/d", "greatest ratio of clear run to depth of rib", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "u / d", []figure.Term{Term("u", Metres(run)), Term("d", Metres(c.Rib.Depth))}
		return Ratio(c.Number("", func() float64 { return run.Get() / c.Rib.Depth.Get() }))
	})
	l.Add("strap.even-share", "F", "force on each strap if all share the weight equally", func(f *figure.Figure) figure.Measure {
		straps := c.Count(c.Strap.Stations.Key(), func() int { return len(c.Strap.Stations.Get()) })
		f.Formula = "m * q * g / (2*n)"
		f.Terms = []figure.Term{
			Term("m", Measured(c.Panel.Mass, quantity.Kilogram)), Term("q", Whole(c.Panel.Around)),
			Term("g", figure.Measure{Value: quantity.Value{SI: quantity.Gravity, Unit: quantity.NewtonPerKilogram}}), Term("n", Whole(straps)),
		}
		return Measured(c.Number("", c.EvenShare), quantity.Newton)
	})
}

// lengthFigures are the lengths of the straps.
func lengthFigures(c *layout.Ceiling, l *Lines) {
	for i := range c.Strap.Stations.Get() {
		at := func(f func(station float64) float64) layout.Number {
			return c.Number("", func() float64 { return f(c.Strap.Stations.Get()[i]) })
		}
		l.Add(fmt.Sprintf("strap.length.%d", i+1), fmt.Sprintf("l_%d", i+1), fmt.Sprintf("length of strap %d between its fixings", i+1), func(f *figure.Figure) figure.Measure {
			f.Formula = "a + z_c - b"
			f.Terms = []figure.Term{Term("a", Metres(c.Room.Above)), Term("z_c", Metres(c.Vault.Crown)), Term("b", Metres(at(c.ExtradosHeight)))}
			return Metres(at(c.StrapLength))
		})
	}
}

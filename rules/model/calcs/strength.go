package calcs

import (
	"math"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
)

// strengthFigures are the shares of its strength that the rib keeps.
func strengthFigures(c *layout.Ceiling, l *Lines) {
	made := func(construction string) bool {
		return c.Rib.Construction.Get() == construction && !math.IsInf(c.Vault.TightestRadius.Get(), 1)
	}
	l.Where(func() bool {
		_, err := c.CurvatureFactor()
		return made("laminated") && err == nil
	}, func() {
		l.Add("rib.curvature-factor", "C_c", "share of its bending strength that the curved rib keeps", func(f *figure.Figure) figure.Measure {
			f.Formula, f.Terms = "1 - 2000*(t/R_t)^2", []figure.Term{Term("t", Metres(c.Rib.Lamination)), Term("R_t", Metres(c.Vault.TightestRadius))}
			return Ratio(c.Number("", func() float64 {
				factor, _ := c.CurvatureFactor()
				return factor
			}))
		})
	})
	l.Where(func() bool {
		return made("sawn") && c.Rib.Segments.Given() && c.SegmentAngle() <= math.Pi
	}, func() { segmentFigures(c, l) })
}

// segmentFigures are those of a sawn rib.
func segmentFigures(c *layout.Ceiling, l *Lines) {
	angle := c.Number("rib.segment-angle", c.SegmentAngle)
	l.Add("rib.segment-angle", "α", "angle that one segment spans, where the curve is tightest", func(f *figure.Figure) figure.Measure {
		f.Formula = "A_p / (n*R_t) * 180/pi"
		f.Terms = []figure.Term{Term("A_p", Metres(c.Panel.Arc)), Term("n", Whole(c.Rib.Segments)), Term("R_t", Metres(c.Vault.TightestRadius))}
		return Angle(angle)
	})
	l.Add("rib.grain-strength", "k_g", "share of its bending strength that a segment keeps at its ends, where the grain slopes", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "0.05 / (sin(α/2)^1.5 + 0.05*cos(α/2)^1.5)", []figure.Term{Term("α", Angle(angle))}
		return Ratio(c.Number("", c.GrainStrength))
	})
}

package layout

import (
	"math"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/figure"
)

// SegmentAngle is the angle that one segment of a sawn rib spans where the curve
// is tightest, in rad; nothing where it is straight. It needs rib.segments.
func (c *Ceiling) SegmentAngle() float64 {
	return c.Panel.Arc.Get() / float64(c.Rib.Segments.Get()) / c.Vault.TightestRadius.Get()
}

// GrainStrength is the share of its bending strength that a sawn rib keeps, from
// 0.05 to 1, at the ends of its segments, where the grain slopes most: by half of
// the angle that a segment spans, since the grain runs along its chord. Past a half
// circle it lies right across. It needs rib.segments. Derived; see
// [timber.BendingAtSlope].
func (c *Ceiling) GrainStrength() float64 {
	return timber.BendingAtSlope(min(c.SegmentAngle(), math.Pi) / 2)
}

// CurvatureFactor is the share of its bending strength that a laminated rib keeps
// where the curve is tightest, by [timber.CurvatureFactor]; 1 where it is straight.
// Laminations that are too thick for their radius are a *timber.RangeError.
func (c *Ceiling) CurvatureFactor() (float64, error) {
	radius := c.Vault.TightestRadius.Get()
	if math.IsInf(radius, 1) {
		return 1, nil
	}
	return timber.CurvatureFactor(c.Rib.Lamination.Get(), radius, c.Rib.Species.Get().Group)
}

// strengthFigures are the shares of its strength that the rib keeps.
func (c *Ceiling) strengthFigures(l *Lines) {
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
	}, func() { c.segmentFigures(l) })
}

// segmentFigures are those of a sawn rib.
func (c *Ceiling) segmentFigures(l *Lines) {
	angle := c.Number("rib.segment-angle", c.SegmentAngle)
	l.Add("rib.segment-angle", "α", "angle that one segment spans, where the curve is tightest", func(f *figure.Figure) figure.Measure {
		f.Formula = "A_p / (n*R_t) * 180/pi"
		f.Terms = []figure.Term{Term("A_p", Metres(c.Panel.Arc)), Term("n", Whole(c.Rib.Segments)), Term("R_t", Metres(c.Vault.TightestRadius))}
		return Angle(angle)
	})
	l.Add("rib.grain-strength", "k_g", "share of its bending strength that the grain leaves at the ends of a segment", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "0.05 / (sin(α/2)^1.5 + 0.05*cos(α/2)^1.5)", []figure.Term{Term("α", Angle(angle))}
		return Ratio(c.Number("", c.GrainStrength))
	})
}

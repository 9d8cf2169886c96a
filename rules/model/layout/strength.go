package layout

import (
	"math"

	"dryfit/rules/kernel/timber"
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

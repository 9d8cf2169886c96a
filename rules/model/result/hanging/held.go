package hanging

import (
	"math"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
)

// block holds the feet against spreading; nil of a flat ceiling.
func block(c *layout.Ceiling, r *runner) (*Case, error) {
	if c.Vault.HalfAngle.Get() == 0 {
		return nil, nil
	}
	id := ID{Kind: FeetBlocked}
	alone := r.feetHeld()
	blocked, found := r.hold(id)
	if !found {
		if err := alone.compile(); err != nil {
			return nil, &CaseError{id, err}
		}
		var err error
		if blocked, err = alone.run(id, alone.rib.but(strapKind)); err != nil {
			return nil, err
		}
	}
	blocked.answers = []answer{{alone, acts{without: r.rib.but(strapKind)}}}
	return &blocked, nil
}

// feetHeld is the rib with feet that can't move, not made ready for solving yet. They then
// hold it sideways, and the restraint at the crown, which would take a part of the thrust,
// is left out.
func (r *runner) feetHeld() *runner {
	m := r.model
	m.Supports = []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: len(m.Nodes) - 1, Direction: frame.AlongX}}
	return newRunner(r.rib, m, feetHeld)
}

const (
	// closed is the spread of the feet, by that of feet that nothing holds, that is left of
	// round-off.
	closed = 1e-9
	// firstThrust is the first that is tried, by the weight: so small that it lets no
	// strap go slack that is not on the verge of it.
	firstThrust = 1e-3
	// mostThrusts is how many are tried: each puts right what the one before made of the
	// straps.
	mostThrusts = 12
)

// hold finds the feet held by what holds them: the pair of forces on them, toward each
// other, under which they do not spread. Nothing else pushes sideways, so that the
// restraint at the crown bears nothing of it. It reports false where that is not found.
//
// Method. The force method of statics. While the same straps are taut the spread is
// linear in the thrust; where they change, the secant is drawn again.
func (r *runner) hold(id ID) (c Case, found bool) {
	but := r.rib.but(strapKind)
	spread := func(thrust float64) bool {
		o := r.solved(acts{without: but, thrust: thrust})
		c = o.read
		return o.err == nil
	}
	if !spread(0) {
		return c, false
	}
	free := c.Feet
	before, was, thrust := 0.0, free, math.Copysign(firstThrust*r.rib.weight, free)
	for range mostThrusts {
		if !spread(thrust) {
			return c, false
		}
		if math.Abs(c.Feet) <= closed*math.Abs(free) {
			c.ID, c.Feet, c.supports = id, 0, []float64{thrust, -thrust}
			return c, true
		}
		before, was, thrust = thrust, c.Feet, thrust-c.Feet*(thrust-before)/(c.Feet-was)
	}
	return c, false
}

// thrust is the greater that held feet bear on a wall; walls only push.
func (c *Case) thrust() *float64 {
	if c == nil {
		return nil
	}
	thrust := max(0, c.supports[0], -c.supports[1])
	return &thrust
}

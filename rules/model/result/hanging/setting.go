package hanging

import (
	"math"
	"slices"

	"dryfit/rules/kernel/frame"
)

// Setting is what setting the straps by hand does.
type Setting struct {
	Cases   []Case   // each strap longer, then shorter
	Changes []Change // by strap; none where nothing is left to setting
	first   Case
}

// Change is what setting a strap does to its own force. The two differ where a
// strap goes slack, or a slack one catches, before the whole of it is set.
type Change struct {
	Most float64 // by the whole setting, the greater of longer and shorter, N
	Way  Way     // of that
	Rate float64 // by a setting near zero, likewise, N/m
}

// tinySetting is a setting, in m, at which no strap is slack that is not as first
// hung, but for one that is on the verge of it.
const tinySetting = 1e-6

// set makes each strap longer and shorter by what setting by hand leaves.
func set(r *runner, first Case, setting float64) (out Setting, err error) {
	if setting == 0 {
		return out, nil
	}
	out.first = first
	roundoff := slackShare * r.rib.weight
	for i := range r.rib.straps {
		change := Change{Way: Longer}
		for _, way := range []Way{Longer, Shorter} {
			c, err := r.set(i, way, setting)
			if err != nil {
				return out, err
			}
			out.Cases = append(out.Cases, c)
			if by := abs(c.Straps[i] - first.Straps[i]); by > max(roundoff, change.Most*(1+Alike)) {
				change.Most, change.Way = by, way
			}
			near, small := c, setting
			if !slices.Equal(c.Slack, first.Slack) {
				small = min(setting, tinySetting)
				if near, err = r.set(i, way, small); err != nil {
					return out, err
				}
			}
			change.Rate = max(change.Rate, abs(near.Straps[i]-first.Straps[i])/small)
		}
		out.Changes = append(out.Changes, change)
	}
	return out, nil
}

// set makes one strap longer or shorter.
func (r *runner) set(strap int, way Way, by float64) (Case, error) {
	id := ID{Kind: StrapSet, Strap: strap + 1, Way: way}
	return r.run(id, r.rib.but(strapKind), frame.Misfit{Spring: strap, Longer: float64(way) * by})
}

// Step is the most that one node moves, in m, when one strap is set long or short:
// at a seam the neighbour's straps are set by themselves. 0 where nothing is left
// to setting.
func (s Setting) Step() float64 {
	most := 0.0
	for _, c := range s.Cases {
		for i, d := range c.drops {
			most = max(most, math.Abs(d-s.first.drops[i]))
		}
	}
	return most
}

package hanging

import (
	"math"
	"slices"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/seasons"
)

// NoSeasonError says that it is not known what the seasons do to the rib: the
// cases of the seasons are then left out.
type NoSeasonError struct{ Err error }

// Error says what is left out, and the reason.
func (e *NoSeasonError) Error() string { return "the seasons' load on the straps: " + e.Err.Error() }

// Unwrap gives the reason.
func (e *NoSeasonError) Unwrap() error { return e.Err }

// inSeason is the rib in both seasons, from each state that its wood may have
// been hung in: alone, then with each strap longer and shorter. A season that
// bends no strap's point off the line of the others, as of a flat rib or of one
// on two straps, loads none, and has no case.
func inSeason(c *layout.Ceiling, r *runner) (out []Case, err error) {
	s, setting := seasons.Of(c), c.Strap.Setting.Get()
	risen := map[string][]float64{} // by the state of the wood
	in := func(state seasons.Season) (up []float64, err error) {
		if up = risen[state.Name]; up == nil {
			up, err = r.rib.risenIn(c.Vault, state)
			risen[state.Name] = up
		}
		return up, err
	}
	for _, hung := range c.Strap.Hung.Get() {
		for _, season := range []seasons.Season{s.Dry, s.Wet} {
			if hung == season.Name {
				continue
			}
			from, err := in(s.In(hung))
			if err != nil {
				return nil, &NoSeasonError{err}
			}
			to, err := in(season)
			if err != nil {
				return nil, &NoSeasonError{err}
			}
			free := r.rib.swing(from, to)
			if slices.Max(free) < apart && slices.Min(free) > -apart {
				continue
			}
			if out, err = r.season(out, ID{Kind: InSeason, Hung: hung, Season: season.Name}, free, setting); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// season appends the cases of the rib whose points have moved freely: each strap is as much
// too long as its point has risen. Without straps the rib is free to bend, so
// that nothing else acts on it.
func (r *runner) season(out []Case, id ID, free []float64, setting float64) ([]Case, error) {
	out = slices.Grow(out, 1+2*len(free))
	but := r.rib.but(strapKind)
	var misfits []frame.Misfit
	for i, up := range free {
		misfits = append(misfits, frame.Misfit{Spring: i, Longer: up})
	}
	add := func(id ID, misfits ...frame.Misfit) error {
		c, err := r.run(id, but, misfits...)
		c.Free = free
		out = append(out, c)
		return err
	}
	if err := add(id, misfits...); err != nil || setting == 0 {
		return out, err
	}
	for i := range free {
		for _, way := range []Way{Longer, Shorter} {
			id.Strap, id.Way = i+1, way
			set := frame.Misfit{Spring: i, Longer: float64(way) * setting}
			if err := add(id, append(misfits[:len(free):len(free)], set)...); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// swing is how far each strap's point rises between two states of the wood, by how far
// each node has risen in them, if no strap holds it, against the line through those of
// the first strap and the last: how the whole rib turns loads no strap.
func (r *rib) swing(from, to []float64) []float64 {
	x := func(strap int) float64 { return r.nodes[r.straps[strap]].X }
	rise := func(strap int) float64 { return to[r.straps[strap]] - from[r.straps[strap]] }
	last := len(r.straps) - 1
	free := make([]float64, len(r.straps))
	for i := 1; i < last; i++ {
		t := (x(i) - x(0)) / (x(last) - x(0))
		free[i] = rise(i) - (1-t)*rise(0) - t*rise(last)
	}
	return free
}

// risenIn is risen in a state of the wood.
func (r *rib) risenIn(v layout.Vault, s seasons.Season) ([]float64, error) {
	strain := s.RibDepth.Get()
	if strain.Err != nil {
		return nil, strain.Err
	}
	return r.risen(seasons.Slope(v, strain.Value)), nil
}

// risen is how far each node rises against the crown when slopes become others
// and the centre line keeps its length.
func (r *rib) risen(becomes func(slope float64) float64) []float64 {
	up := make([]float64, len(r.nodes))
	climb := func(low, high int) float64 {
		a, b := r.nodes[low], r.nodes[high]
		slope := math.Atan2(b.Y-a.Y, abs(b.X-a.X))
		return distance(a, b) * (math.Sin(becomes(slope)) - math.Sin(slope))
	}
	for i := r.crown - 1; i >= 0; i-- {
		up[i] = up[i+1] - climb(i, i+1)
	}
	for i := r.crown + 1; i < len(up); i++ {
		up[i] = up[i-1] - climb(i, i-1)
	}
	return up
}

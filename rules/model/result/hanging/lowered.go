package hanging

import (
	"errors"
	"fmt"
	"slices"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
)

// lowered is the rib on all its straps with each lift taken down alone, then all: as
// the straps were fixed on the lifts, and with each set longer and shorter. Without
// lifts that hold it there is none, and what nothing holds is left to the rules on
// straps.
func (h *Hanging) lowered(c *layout.Ceiling, all int) (out []Case, err error) {
	staged, none := h.Staged.Get(), (*NoLiftsError)(nil)
	if errors.As(staged.Err, &none) {
		return nil, nil
	}
	if staged.Err != nil {
		return nil, staged.Err
	}
	for _, s := range staged.Is {
		out = slices.Grow(out, (s.Lifts+1)*(1+2*len(s.Straps)))
		for lift := range s.Lifts + 1 {
			if s.Lifts == 1 && lift == 0 {
				continue // alone it is all
			}
			if out, err = s.lower(out, lift, c.Strap.Setting.Get(), all, len(staged.Is)); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// lower appends the cases with one lift down, counted from 0, or all of them past the
// last. The arch has so many straps and pieces.
func (s *Staging) lower(out []Case, lift int, setting float64, all, pieces int) ([]Case, error) {
	before := max(0, s.Piece-1) * s.Lifts // lifts under the pieces to the left
	id := ID{Kind: LiftDown, Lift: before + lift + 1, Part: s.Piece}
	without := s.run.rib.springs(ledgerKind)
	up := s.run.rib.springs(liftKind)
	if lift == len(up) {
		id.Kind, id.Lift = LiftsDown, 0
		without = append(without, up...)
	} else {
		without = append(without, up[lift])
	}
	add := func(id ID, misfits []frame.Misfit) error {
		one, err := s.run.run(id, without, misfits...)
		if mechanism(err) {
			return nil
		}
		if one.Straps != nil {
			one.Straps, one.Slack = s.spread(one.Straps, one.Slack, all)
			if id.Kind == LiftDown {
				here := slices.Insert(one.Lifts, lift, 0)
				one.Lifts = make([]float64, pieces*s.Lifts)
				copy(one.Lifts[before:], here)
			}
			out = append(out, one)
		}
		return err
	}
	if err := add(id, s.fixed); err != nil || setting == 0 {
		return out, err
	}
	for i, number := range s.Straps {
		for _, way := range [2]Way{Longer, Shorter} {
			id.Strap, id.Way = number, way
			set := slices.Clone(s.fixed)
			set[i].Longer += float64(way) * setting
			if err := add(id, set); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// spread gives each strap of the whole arch its place, as lower does lifts: those of
// other pieces carry nothing in this case.
func (s *Staging) spread(forces []float64, slack []bool, all int) ([]float64, []bool) {
	f, l := make([]float64, all), make([]bool, all)
	for i, number := range s.Straps {
		f[number-1], l[number-1] = forces[i], slack[i]
	}
	return f, l
}

// down are the words of a case with a lift down, or all of them.
func (id ID) down() string {
	said := "with all lifts down, the straps fixed on them"
	if id.Kind == LiftDown {
		said = fmt.Sprintf("with lift %d down alone, the straps fixed on the lifts", id.Lift)
	}
	if id.Part > 0 {
		said += fmt.Sprintf(", of piece %d", id.Part)
	}
	if id.Strap > 0 {
		said += ", " + id.set().Words()
	}
	return said
}

// downKey is such a case's part of a figure's key.
func (id ID) downKey() string {
	key := "lifts-down"
	if id.Kind == LiftDown {
		key = fmt.Sprintf("lift-%d-down", id.Lift)
	}
	if id.Part > 0 {
		key += fmt.Sprintf("-piece-%d", id.Part)
	}
	if id.Strap > 0 {
		key += "-" + id.set().Key()
	}
	return key
}

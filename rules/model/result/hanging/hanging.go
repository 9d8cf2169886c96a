// Package hanging is what every strap may carry: one edge rib of a panel as a
// plane frame on its centre line, hung on straps that only pull, through all
// the states it goes through from the lifts to the day a strap lets go.
//
// Lengths are in m, forces in N, stresses in Pa. The frame is held sideways at
// the crown alone, which is the computation's own restraint: what holds the
// ceiling sideways in truth is for the engineer.
package hanging

import (
	"errors"
	"fmt"
	"slices"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
	"dryfit/spec/record"
)

// NeedsError says which key the frame can't do without.
type NeedsError struct{ Key string }

// Error names the key.
func (e *NeedsError) Error() string { return "needs " + e.Key }

// CaseError says which case did not solve.
type CaseError struct {
	Case ID
	Err  error
}

// Error names the case by its part of a figure's key.
func (e *CaseError) Error() string { return fmt.Sprintf("%s: %v", e.Case.Key(), e.Err) }

// Unwrap gives the solver's own error.
func (e *CaseError) Unwrap() error { return e.Err }

// Case is one state of one edge rib.
type Case struct {
	ID
	Straps []float64 // tension of each, from the left foot
	Slack  []bool    // straps that go slack
	Lifts  []float64 // force of each on one rib, upward
	Feet   float64   // movement of each foot, + outward
	Sag    Sag       // greatest of all runs
	ByRun  Sag       // greatest by its run
	Moment float64   // greatest, either way
	Radial float64   // greatest tension across the grain
	Margin float64   // tipping margin, see balance; the least of a split arch's pieces
	Piece  int       // the piece that has it, from 1; 0 of a whole arch
	Free   []float64 // rise of each strap's point by the season alone, against the line of the end straps
	drops  []float64 // of each node, downward; none of a case with more than one misfit
	whole  float64   // greatest stress, of the whole section
	joint  float64   // the same, of what a joint leaves

	supports []float64 // force of each on the frame, along its direction
	answers  []answer  // of a split arch one for each piece
}

// Hanging is every case.
type Hanging struct {
	rib    Solved[*rib]
	arch   Solved[*runner]            // the whole rib
	pieces Solved[[]Outcome[*runner]] // of a split arch, each by itself

	governing Solved[[]*Case] // the envelope

	Weight   layout.Number      // on one edge rib, N
	First    Solved[First]      // as first hung
	Alone    Solved[*Case]      // the pieces of a split arch before they are joined; nil of a whole one
	Raised   Solved[*Case]      // nil without lifts; Lifts is nil where they do not hold the panel
	Staged   Solved[[]*Staging] // each piece of the arch, from its lifts to its straps
	Lowered  Solved[[]Case]     // by piece each lift down alone, then all: as fixed, then each strap longer and shorter
	Packed   Solved[*Case]      // nil without ledgers that bear
	Seated   Solved[[]Case]     // the same with ledgers as high as the measured seats of each panel
	Lost     Solved[[]Case]     // straps in turn; of those that the rest does not hold, Straps is nil
	LostPack Solved[[]Case]     // the same with ledgers that bear
	Set      Solved[Setting]    // each strap longer, then shorter
	Moved    Solved[[]Case]     // framing down, then up; none without room.framing.movement
	Seasonal Solved[[]Case]     // by the state in which it is hung and by season: alone, then each strap longer and shorter
	Blocked  Solved[*Case]      // with feet that can't move; nil of a flat ceiling
	Thrust   Solved[*float64]   // on a wall, then
}

// Solved is a result of the frame with the keys that it comes from.
type Solved[T any] = record.Value[Outcome[T]]

// Outcome is a result of the frame, or why there is none.
type Outcome[T any] struct {
	Is  T
	Err error
}

// First is the rib as it first hangs.
type First struct{ Case }

// Shape is the whole rib, from the left foot.
func (f *First) Shape() []Station { return f.answers[0].stations() }

// Err says why a case has no result: the first such, in the order in which the
// panel comes to them.
func (h *Hanging) Err() error {
	for _, err := range []error{
		h.Alone.Get().Err, h.Raised.Get().Err, h.First.Get().Err, h.Packed.Get().Err, h.Seated.Get().Err, h.Lost.Get().Err, h.LostPack.Get().Err,
		h.Lowered.Get().Err, h.Set.Get().Err, h.Moved.Get().Err, h.seasons(), h.Thrust.Get().Err,
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// Envelope lists the cases whose worst governs the straps. Framing that moves
// and a season that comes are not added to each other. Where it is not known what
// the seasons do, Seasonal says so, and their cases are left out. The list is for
// reading only.
func (h *Hanging) Envelope() ([]*Case, error) {
	cases := h.governing.Get()
	return cases.Is, cases.Err
}

// envelope makes the list.
func (h *Hanging) envelope() ([]*Case, error) {
	first, alone, packed, seated, set, moved := h.First.Get(), h.Alone.Get(), h.Packed.Get(), h.Seated.Get(), h.Set.Get(), h.Moved.Get()
	lowered := h.Lowered.Get()
	for _, err := range []error{alone.Err, first.Err, packed.Err, seated.Err, set.Err, lowered.Err, moved.Err, h.seasons()} {
		if err != nil {
			return nil, err
		}
	}
	out := []*Case{&first.Is.Case}
	if alone.Is != nil {
		out = append(out, alone.Is)
	}
	if packed.Is != nil {
		out = append(out, packed.Is)
	}
	out = append(out, pointers(seated.Is)...)
	out = append(out, pointers(set.Is.Cases)...)
	out = append(out, pointers(moved.Is)...)
	out = append(out, pointers(lowered.Is)...)
	return append(out, pointers(h.Seasonal.Get().Is)...), nil
}

// seasons says which case of the seasons did not solve.
func (h *Hanging) seasons() error {
	var unknown *NoSeasonError
	if err := h.Seasonal.Get().Err; !errors.As(err, &unknown) {
		return err
	}
	return nil
}

// Alike is how near two forces are, by themselves, to be one: far above the
// solver's rounding, which would else choose between what symmetry makes equal.
const Alike = 1e-6

// Worst is the greatest strap force of some cases, in N, with the strap's number
// from 1 and the case; of several alike, the first. Without a case that has straps
// the force and the number are 0 and the case is nil.
func Worst(cases []*Case) (force float64, strap int, in *Case) {
	for _, c := range cases {
		for i, f := range c.Straps {
			if in == nil || f > force*(1+Alike) {
				force, strap, in = f, i+1, c
			}
		}
	}
	return force, strap, in
}

// needs names the first key that the frame lacks.
func needs(c *layout.Ceiling) error {
	s := c.Strap
	switch {
	case len(s.Stations.Get()) == 0:
		return &NeedsError{"strap.stations"}
	case !c.Room.Above.Given():
		return &NeedsError{"room.above"}
	case !s.Width.Given():
		return &NeedsError{"strap.width"}
	case !s.Thickness.Given():
		return &NeedsError{"strap.thickness"}
	default:
		return nil
	}
}

// Of is every case of a ceiling, none of them solved yet. Without the keys that
// it needs a case is a *NeedsError, and one that has no solution is a
// *CaseError, but for a lost strap: that the others do not hold the rib is then
// the result. A frame that the memory has is not solved again.
func Of(c *layout.Ceiling, memory *Memory) *Hanging {
	h := &Hanging{}
	h.rib = solved(c, func() (*rib, error) {
		if err := needs(c); err != nil {
			return nil, err
		}
		return newRib(c, memory), nil
	})
	h.Weight = layout.Derive(c, func() float64 { return h.rib.Get().Is.weight })
	h.arch = after(c, h.rib, func(r *rib) (*runner, error) { return memory.compile(r, r.model(), wholeArch) })
	h.pieces = after(c, h.rib, func(r *rib) ([]Outcome[*runner], error) { return r.pieces(memory), nil })
	h.Alone = after(c, h.rib, func(*rib) (*Case, error) { return h.alone(c) })
	model := after(c, h.Alone, func(*Case) (*runner, error) { return h.arch.Get().named(FirstHung) })
	h.Raised = after(c, h.rib, func(r *rib) (*Case, error) {
		if len(r.seams) > 0 {
			return h.raisePieces(len(r.lifts))
		}
		return raise(model.Get())
	})
	h.Staged = solved(c, h.stage)
	h.First = after(c, model, hang)
	h.states(c, model)
	h.governing = solved(c, h.envelope)
	return h
}

// states are those of a rib that hangs.
func (h *Hanging) states(c *layout.Ceiling, model Solved[*runner]) {
	hung := after(c, model, func(r *runner) (*runner, error) { return r, h.First.Get().Err })
	bears := layout.Derive(c, func() bool { return c.Ledger.Packed.Get() && c.LedgerReach() > 0 })
	h.Packed = after(c, hung, func(r *runner) (*Case, error) { return pack(r, bears.Get()) })
	h.Seated = after(c, hung, func(r *runner) ([]Case, error) {
		if !bears.Get() {
			return nil, nil
		}
		return seat(c, r)
	})
	h.Lost = after(c, hung, func(r *runner) ([]Case, error) { return lose(r, StrapLost, r.rib.but(strapKind)) })
	h.LostPack = after(c, hung, func(r *runner) ([]Case, error) {
		if !bears.Get() {
			return nil, nil
		}
		return lose(r, StrapLostPacked, r.rib.springs(liftKind))
	})
	h.Set = after(c, hung, func(r *runner) (Setting, error) { return set(r, h.First.Get().Is.Case, c.Strap.Setting.Get()) })
	h.Lowered = after(c, hung, func(r *runner) ([]Case, error) { return h.lowered(c, len(r.rib.straps)) })
	h.Moved = after(c, hung, func(r *runner) ([]Case, error) { return move(r, c.Room.Framing.Movement) })
	h.Seasonal = after(c, hung, func(r *runner) ([]Case, error) { return inSeason(c, r) })
	h.Blocked = after(c, hung, func(r *runner) (*Case, error) { return block(c, r) })
	h.Thrust = after(c, h.Blocked, func(b *Case) (*float64, error) { return b.thrust(), nil })
}

// solved is a result of the frame.
func solved[T any](c *layout.Ceiling, f func() (T, error)) Solved[T] {
	return layout.Derive(c, func() Outcome[T] {
		v, err := f()
		return Outcome[T]{v, err}
	})
}

// after is a result that follows from another, if there is that.
func after[S, T any](c *layout.Ceiling, from Solved[S], f func(S) (T, error)) Solved[T] {
	return solved(c, func() (none T, err error) {
		s := from.Get()
		if s.Err != nil {
			return none, s.Err
		}
		return f(s.Is)
	})
}

// raise puts the rib on the lifts, if there are any. That they do not hold it is
// a result.
func raise(model Outcome[*runner]) (*Case, error) {
	r, err := model.Is, model.Err
	if err != nil || len(r.rib.lifts) == 0 {
		return nil, err
	}
	raised, err := r.run(ID{Kind: Raised}, r.rib.but(liftKind))
	raised.Straps, raised.Slack = nil, nil // none is fixed yet
	if mechanism(err) {
		err = nil
	}
	return &raised, err
}

func hang(r *runner) (First, error) {
	first, err := r.run(ID{Kind: FirstHung}, r.rib.but(strapKind))
	if err != nil {
		return First{}, err
	}
	return First{first}, nil
}

func pack(r *runner, bears bool) (*Case, error) {
	if !bears {
		return nil, nil
	}
	packed, err := r.run(ID{Kind: Packed}, r.rib.springs(liftKind))
	return &packed, err
}

// seat packs the ledgers to the measured seats of each panel: one that lies higher
// than the springing drives its foot up.
func seat(c *layout.Ceiling, r *runner) (out []Case, err error) {
	ledgers := r.rib.springs(ledgerKind)
	for i, seats := range c.Survey.Raised.Get() {
		packed, err := r.run(ID{Kind: Seated, At: c.RowName(i)}, r.rib.springs(liftKind),
			frame.Misfit{Spring: ledgers[0], Longer: seats.Left}, frame.Misfit{Spring: ledgers[1], Longer: seats.Right})
		if err != nil {
			return nil, err
		}
		out = append(out, packed)
	}
	return out, nil
}

// lose takes away each strap in turn, beside some other springs.
func lose(r *runner, kind Kind, without []int) (out []Case, err error) {
	for i := range r.rib.straps {
		lost, err := r.run(ID{Kind: kind, Strap: i + 1}, append(slices.Clone(without), i))
		if err != nil && !mechanism(err) {
			return nil, err
		}
		out = append(out, lost)
	}
	return out, nil
}

// move lets the framing over all but the end straps go down and up.
func move(r *runner, movement layout.Number) (out []Case, err error) {
	if len(r.rib.straps) < 3 || movement.Get() == 0 {
		return nil, nil
	}
	for _, way := range []Way{Longer, Shorter} {
		var misfits []frame.Misfit
		for i := 1; i < len(r.rib.straps)-1; i++ {
			misfits = append(misfits, frame.Misfit{Spring: i, Longer: float64(way) * movement.Get()})
		}
		c, err := r.run(ID{Kind: FramingMoved, Way: way}, r.rib.but(strapKind), misfits...)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

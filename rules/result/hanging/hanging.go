// Package hanging is what every strap may carry: one edge rib of a panel as a
// plane frame on its centre line, hung on straps that only pull, through all
// the states it goes through from the lifts to the day a strap lets go.
//
// Lengths are in m, forces in N, stresses in Pa. The frame is held sideways at
// the crown alone, which is the computation's own restraint: what holds the
// ceiling sideways in truth is for the engineer.
package hanging

import (
	"fmt"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/layout"
)

// NeedsError says which key the frame can't do without.
type NeedsError struct{ Key string }

func (e *NeedsError) Error() string { return "needs " + e.Key }

// CaseError says which case did not solve.
type CaseError struct {
	Case ID
	Err  error
}

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
	Sag    float64   // greatest by its run, long-term
	Run    float64   // the run that it is on
	Moment float64   // greatest, either way
	Stress float64   // greatest, N/A + M/S
	Radial float64   // greatest tension across the grain
	drops  []float64 // of each node, downward
}

// Hanging is every case.
type Hanging struct {
	Weight   float64 // on one edge rib, N
	Raised   *Case   // nil without lifts
	First    Case
	Shape    []Station // of the first case, from the left foot
	Alone    *Case     // the pieces of a split arch before they are joined; nil of a whole one
	Packed   *Case     // nil without ledgers that bear
	Lost     []Case    // straps in turn; of those that the rest does not hold, Straps is nil
	LostPack []Case
	Set      []Case    // each strap longer, then shorter
	PerMM    []float64 // change of each strap's own force for each mm of setting, N
	Moved    []Case    // framing down, then up; none without room.framing.movement
	Thrust   *float64  // on a wall, if the feet can't move; nil of a flat ceiling
}

// Envelope lists the cases whose worst governs the straps.
func (h *Hanging) Envelope() []*Case {
	out := []*Case{&h.First}
	if h.Alone != nil {
		out = append(out, h.Alone)
	}
	if h.Packed != nil {
		out = append(out, h.Packed)
	}
	for _, list := range [][]Case{h.Set, h.Moved} {
		for i := range list {
			out = append(out, &list[i])
		}
	}
	return out
}

// Alike is how near two forces are, by themselves, to be one: far above the
// solver's rounding, which would else choose between what symmetry makes equal.
const Alike = 1e-6

// Worst is the greatest strap force of some cases, with the strap's number from
// 1 and the case; of several alike, the first.
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
	s := c.Spec.Strap
	switch {
	case s == nil || len(s.Stations) == 0:
		return &NeedsError{"strap.stations"}
	case c.Spec.Room.Above == nil:
		return &NeedsError{"room.above"}
	case s.Width == nil:
		return &NeedsError{"strap.width"}
	case s.Thickness == nil:
		return &NeedsError{"strap.thickness"}
	default:
		return nil
	}
}

// Solve works out every case. Without the keys that it needs it is a
// *NeedsError, and a case that has no solution is a *CaseError, but for a lost
// strap: that the others do not hold the rib is then the result.
func Solve(c *layout.Ceiling) (*Hanging, error) {
	if err := needs(c); err != nil {
		return nil, err
	}
	rib := newRib(c)
	h := &Hanging{Weight: rib.weight}
	if err := alone(c, rib, h); err != nil {
		return nil, err
	}
	r, err := compile(c, rib, rib.model())
	if err != nil {
		return nil, &CaseError{ID{Kind: FirstHung}, err}
	}
	for _, step := range []func(*runner, *Hanging) error{hang, lose, set, move} {
		if err := step(r, h); err != nil {
			return nil, err
		}
	}
	return h, block(c, rib, h)
}

// runner solves the cases of one model.
type runner struct {
	c      *layout.Ceiling
	rib    *rib
	solver *frame.Solver
	result frame.Result
}

func compile(c *layout.Ceiling, rib *rib, m frame.Model) (*runner, error) {
	s, err := m.Compile()
	if err != nil {
		return nil, err
	}
	return &runner{c: c, rib: rib, solver: s}, nil
}

// run solves the rib under its own weight, without some springs and with
// others set long or short.
func (r *runner) run(id ID, without []int, misfits ...frame.Misfit) (Case, error) {
	err := r.solver.Solve(&frame.Case{
		Loads: r.rib.loads, Spread: r.rib.spread, Without: without, Misfits: misfits,
	}, &r.result)
	if err != nil {
		return Case{ID: id}, &CaseError{id, err}
	}
	return r.read(id, without), nil
}

func hang(r *runner, h *Hanging) (err error) {
	if len(r.rib.lifts) > 0 {
		raised, err := r.run(ID{Kind: Raised}, append(r.rib.springs(strapKind), r.rib.springs(ledgerKind)...))
		if err != nil {
			return err
		}
		raised.Straps, raised.Slack = nil, nil // none is fixed yet
		h.Raised = &raised
	}
	if h.First, err = r.run(ID{Kind: FirstHung}, r.rib.but(strapKind)); err != nil {
		return err
	}
	h.Shape = r.stations()
	if r.rib.packed {
		packed, err := r.run(ID{Kind: Packed}, r.rib.springs(liftKind))
		if err != nil {
			return err
		}
		h.Packed = &packed
	}
	return nil
}

// lose takes away each strap in turn, without the ledgers and with them.
func lose(r *runner, h *Hanging) error {
	for i := range r.rib.straps {
		lost, err := r.run(ID{Kind: StrapLost, Strap: i + 1}, append(r.rib.but(strapKind), i))
		if err != nil && !mechanism(err) {
			return err
		}
		h.Lost = append(h.Lost, lost)
		if !r.rib.packed {
			continue
		}
		lost, err = r.run(ID{Kind: StrapLostPacked, Strap: i + 1}, append(r.rib.springs(liftKind), i))
		if err != nil && !mechanism(err) {
			return err
		}
		h.LostPack = append(h.LostPack, lost)
	}
	return nil
}

// set makes each strap longer and shorter by what setting by hand leaves.
func set(r *runner, h *Hanging) error {
	setting := float64(*r.c.Spec.Strap.Setting)
	if setting == 0 {
		return nil
	}
	for i := range r.rib.straps {
		most := 0.0
		for _, way := range []Way{Longer, Shorter} {
			c, err := r.run(ID{Kind: StrapSet, Strap: i + 1, Way: way}, r.rib.but(strapKind), frame.Misfit{Spring: i, Longer: float64(way) * setting})
			if err != nil {
				return err
			}
			h.Set = append(h.Set, c)
			most = max(most, abs(c.Straps[i]-h.First.Straps[i]))
		}
		h.PerMM = append(h.PerMM, most/(1000*setting))
	}
	return nil
}

// move lets the framing over all but the end straps go down and up.
func move(r *runner, h *Hanging) error {
	f := r.c.Spec.Room.Framing
	if f == nil || f.Movement == nil || *f.Movement == 0 || len(r.rib.straps) < 3 {
		return nil
	}
	for _, way := range []Way{Longer, Shorter} {
		var misfits []frame.Misfit
		for i := 1; i < len(r.rib.straps)-1; i++ {
			misfits = append(misfits, frame.Misfit{Spring: i, Longer: float64(way) * float64(*f.Movement)})
		}
		c, err := r.run(ID{Kind: FramingMoved, Way: way}, r.rib.but(strapKind), misfits...)
		if err != nil {
			return err
		}
		h.Moved = append(h.Moved, c)
	}
	return nil
}

// block holds the feet against spreading and reads the thrust.
func block(c *layout.Ceiling, rib *rib, h *Hanging) error {
	if c.Vault.HalfAngle == 0 {
		return nil
	}
	m := rib.model()
	last := len(m.Nodes) - 1
	m.Supports = append(m.Supports, frame.Support{Node: 0, Direction: frame.AlongX}, frame.Support{Node: last, Direction: frame.AlongX})
	r, err := compile(c, rib, m)
	if err != nil {
		return &CaseError{ID{Kind: FeetBlocked}, err}
	}
	if _, err := r.run(ID{Kind: FeetBlocked}, rib.but(strapKind)); err != nil {
		return err
	}
	thrust := abs(r.result.Supports[len(m.Supports)-1])
	h.Thrust = &thrust
	return nil
}

package hanging

import (
	"fmt"
	"slices"

	"dryfit/rules/kernel/frame"
)

// Staging is one edge rib, of a whole arch or of one piece of a split one, from its
// lifts to its straps. Each strap is fixed unloaded, in the shape that the rib has on
// its lifts, and every state starts from that. Where it is solved anew instead the
// straps pull the rib into the shape that they were cut for, which no one does.
//
// Method. A strap fixed unloaded where its point has gone down by d is longer by d
// than the frame's own. The state is then one solution with the straps so much
// longer: which straps pull does not depend on the way there, as the energy of the
// frame is convex.
type Staging struct {
	Piece  int   // from 1; 0 of a whole arch
	Straps []int // their numbers, from the left foot, from 1
	Lifts  int   // how many are under it
	Weight float64
	X      []float64 // place of each strap across the span
	Centre float64   // of mass across the span

	run   *runner
	fixed []frame.Misfit
}

// State is what holds the rib at one time.
type State struct {
	Straps []float64 // force of each, 0 of one that is not fixed
	Lifts  []float64 // likewise, upward
	Margin float64   // tipping margin, see balance
	Falls  bool      // nothing holds it: there are no forces

	whole, joint float64
}

// Stress is the greatest of the rib, in Pa, as that of a [Case].
func (s *State) Stress(jointed bool) float64 {
	return (&Case{whole: s.whole, joint: s.joint}).Stress(jointed)
}

// NoLiftsError says that there is nothing to raise the panel by.
type NoLiftsError struct {
	Piece int // of a split arch, from 1, that its lifts do not hold; 0 of a whole one
	None  bool
}

// Error names the absent key, or the piece that tips.
func (e *NoLiftsError) Error() string {
	switch {
	case e.None:
		return "needs lift.stations"
	case e.Piece > 0:
		return fmt.Sprintf("piece %d of the arch tips off its lifts", e.Piece)
	default:
		return "the panel tips off its lifts"
	}
}

// stage is each piece of the arch on its lifts, no strap fixed.
func (h *Hanging) stage() ([]*Staging, error) {
	runs, err := h.raisedAtOnce()
	if err != nil {
		return nil, err
	}
	var out []*Staging
	for k, r := range runs {
		piece := 0
		if len(runs) > 1 {
			piece = k + 1
		}
		run, err := r.named(Raised)
		if err != nil {
			return nil, err
		}
		s, err := newStaging(run, piece)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// raisedAtOnce are the ribs that go up at one time.
func (h *Hanging) raisedAtOnce() ([]Outcome[*runner], error) {
	whole := h.rib.Get()
	if whole.Err != nil {
		return nil, whole.Err
	}
	if err := h.Alone.Get().Err; err != nil {
		return nil, err
	}
	if len(whole.Is.lifts) == 0 {
		return nil, &NoLiftsError{None: true}
	}
	if len(whole.Is.seams) > 0 {
		return h.pieces.Get().Is, nil
	}
	return []Outcome[*runner]{h.arch.Get()}, nil
}

func newStaging(run *runner, piece int) (*Staging, error) {
	r := run.rib
	s := &Staging{Piece: piece, Lifts: len(r.lifts), Weight: r.weight, Centre: r.centre(), run: run}
	on, err := run.run(ID{Kind: Raised}, r.but(liftKind))
	if mechanism(err) || err == nil && on.Tips() {
		return nil, &NoLiftsError{Piece: piece}
	}
	if err != nil {
		return nil, err
	}
	for i, n := range r.straps {
		s.Straps, s.X = append(s.Straps, r.numbers[i]), append(s.X, r.nodes[n].X)
		s.fixed = append(s.fixed, frame.Misfit{Spring: i, Longer: on.drops[n]})
	}
	return s, nil
}

// With is the rib on some of its straps and lifts, each counted from 0, the rest
// not yet fixed, lost or lowered. Forces are in N on one rib. Where nothing holds
// the rib, or it tips, Falls says so and is no error; an error is one of the
// solver.
//
// A strap's force of no more than a millionth of the weight is 0: the solver's
// rounding could else tell a slack strap from one that pulls.
func (s *Staging) With(straps, lifts []int) (State, error) {
	r := s.run.rib
	up := r.springs(liftKind)
	without := r.springs(ledgerKind)
	for i := range r.straps {
		if !slices.Contains(straps, i) {
			without = append(without, i)
		}
	}
	for i, spring := range up {
		if !slices.Contains(lifts, i) {
			without = append(without, spring)
		}
	}
	c, err := s.run.run(ID{Kind: Raised}, without, s.fixed...)
	out := State{Straps: make([]float64, len(r.straps)), Lifts: make([]float64, len(up))}
	if mechanism(err) {
		out.Falls = true
		return out, nil
	}
	if err != nil {
		return out, err
	}
	for i, f := range c.Straps {
		if f > slackShare*s.Weight {
			out.Straps[i] = f
		}
	}
	on := c.Lifts
	for i, spring := range up {
		if !slices.Contains(without, spring) {
			out.Lifts[i], on = max(0, on[0]), on[1:]
		}
	}
	out.Margin, out.Falls = c.Margin, c.Tips()
	out.whole, out.joint = c.whole, c.joint
	return out, nil
}

package hanging

import (
	"encoding/binary"
	"math"
	"slices"
	"sync"

	"dryfit/rules/kernel/frame"
)

// runner solves the cases of one model, each once.
type runner struct {
	title  title
	rib    *rib
	model  frame.Model
	sprung []int   // nodes of the springs
	centre float64 // of mass across the span

	mu     sync.Mutex // of what follows
	solver *frame.Solver
	acting frame.Case // the case at hand
	brief  frame.Summary
	key    []byte               // of the case at hand
	drops  []float64            // by node, likewise
	had    map[string]*solution // by the key of what acts

	// Of the case at hand.
	held      []bool // by node
	supported []int  // nodes
}

// named is a runner, or the error of a case of some kind that it did not compile.
func (o Outcome[T]) named(kind Kind) (T, error) {
	if o.Err != nil {
		return o.Is, &CaseError{ID{Kind: kind}, o.Err}
	}
	return o.Is, nil
}

// newRunner is one of a rib that is not ready to be solved yet.
func newRunner(rib *rib, m frame.Model, title title) *runner {
	return &runner{
		title: title, rib: rib, model: m, sprung: rib.sprung(), centre: rib.centre(),
		had: make(map[string]*solution, usualCases), held: make([]bool, len(rib.nodes)),
	}
}

// compile makes the rib ready to be solved, if it is not yet.
func (r *runner) compile() (err error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.solver == nil {
		r.solver, err = r.model.Compile()
	}
	return err
}

// compile makes a rib ready to be solved; the runner of one that can not be has no
// solver.
func compile(rib *rib, m frame.Model, title title) (*runner, error) {
	r := newRunner(rib, m, title)
	return r, r.compile()
}

// run is the rib under its own weight, without some springs and with others set
// long or short. The case's lists are for reading only.
func (r *runner) run(id ID, without []int, misfits ...frame.Misfit) (Case, error) {
	o := r.solved(acts{without: without, misfits: misfits})
	c := o.read
	c.ID = id
	if o.err != nil {
		return c, &CaseError{id, o.err}
	}
	return c, nil
}

// acts is what a case does beside the weight of its rib, which all cases bear.
type acts struct {
	without []int // springs that it lacks
	misfits []frame.Misfit
	thrust  float64 // on the feet, toward each other
}

// key appends what tells it from all others of one rib.
func (a acts) key(key []byte) []byte {
	key = binary.LittleEndian.AppendUint64(key, math.Float64bits(a.thrust))
	key = binary.LittleEndian.AppendUint64(key, uint64(len(a.without)))
	for _, spring := range a.without {
		key = binary.LittleEndian.AppendUint64(key, uint64(spring))
	}
	for _, f := range a.misfits {
		key = binary.LittleEndian.AppendUint64(key, uint64(f.Spring))
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(f.Longer))
	}
	return key
}

// solution is what was read of a solved case, which has no ID yet, or the solver's
// error.
type solution struct {
	read   Case
	answer [1]answer // of what was read
	err    error
}

// solved is the solution of a case, solved where it was not before.
func (r *runner) solved(a acts) *solution {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.key = a.key(r.key[:0])
	if had, ok := r.had[string(r.key)]; ok {
		return had
	}
	if len(r.had) >= mostCases {
		clear(r.had)
	}
	o := new(solution)
	if o.err = r.solver.Summarize(r.under(a), &r.brief); o.err == nil {
		o.read, o.answer = r.read(a), [1]answer{{r, a}}
		o.read.answers = o.answer[:]
	}
	r.had[string(r.key)] = o
	return o
}

// under is all that acts on the rib in a case, until the next one is asked for.
func (r *runner) under(a acts) *frame.Case {
	loads := r.rib.loads
	if a.thrust != 0 {
		loads = append(slices.Clip(loads), frame.NodalLoad{X: a.thrust}, frame.NodalLoad{Node: len(r.rib.nodes) - 1, X: -a.thrust})
	}
	r.acting = frame.Case{Loads: loads, Spread: r.rib.spread, Without: a.without, Misfits: a.misfits}
	return &r.acting
}

// answer is a case of a runner that was solved once; what is not kept of it is had
// by solving it again.
type answer struct {
	of *runner
	acts
}

// full is the whole answer of a case.
func (a answer) full(id ID) (Answer, error) {
	r, err := a.again()
	return Answer{ID: id, Without: a.without, Misfits: a.misfits, of: a.of, Nodes: r.Nodes, Springs: r.Springs, Supports: r.Supports}, err
}

// again is the case solved again, whole.
func (a answer) again() (*frame.Result, error) {
	r, whole := a.of, new(frame.Result)
	if err := r.compile(); err != nil {
		return whole, err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	return whole, r.solver.Solve(r.under(a.acts), whole)
}

// stations are the whole rib in the case.
func (a answer) stations() []Station {
	whole, err := a.again()
	if err != nil {
		panic(err) // it was solved before
	}
	return a.of.rib.stations(whole)
}

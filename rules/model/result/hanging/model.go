package hanging

import (
	"fmt"
	"maps"
	"slices"

	"dryfit/rules/kernel/frame"
)

// Frame is a frame as it was solved: all that a frame program needs to solve it
// again, and what was found. Its own weight is the only load.
type Frame struct {
	Key     string // "arch", "piece-1", "arch-feet-held"
	Words   string
	Model   frame.Model
	Section Section
	Springs []string // their names
	Loads   []frame.NodalLoad
	Spread  []frame.SpreadLoad
	Cases   []Answer
}

// Answer is one case of a frame, as solved.
type Answer struct {
	ID
	Without  []int          // springs that it lacks
	Misfits  []frame.Misfit // of its springs
	Nodes    []frame.Displacement
	Springs  []frame.SpringForce
	Supports []float64 // force of each on the frame, along its direction

	of *runner
}

// Has reports whether a spring is in the case.
func (a *Answer) Has(spring int) bool { return !slices.Contains(a.Without, spring) }

// Longer is by how much a spring is set long, in m; below 0 it is set short, and 0
// as made. Several settings of one spring add up.
func (a *Answer) Longer(spring int) float64 {
	by := 0.0
	for _, m := range a.Misfits {
		if m.Spring == spring {
			by += m.Longer
		}
	}
	return by
}

// Cases lists every case that is solved, in the order of the calculation sheet.
func (h *Hanging) Cases() []*Case {
	var out []*Case
	add := func(c *Case, err error) {
		if err == nil && c != nil && len(c.answers) > 0 {
			out = append(out, c)
		}
	}
	list := func(cases []Case, err error) {
		for i := range cases {
			add(&cases[i], err)
		}
	}
	raised, alone, first, packed, seated, blocked := h.Raised.Get(), h.Alone.Get(), h.First.Get(), h.Packed.Get(), h.Seated.Get(), h.Blocked.Get()
	lost, lostPack, set, moved, seasonal, lowered := h.Lost.Get(), h.LostPack.Get(), h.Set.Get(), h.Moved.Get(), h.Seasonal.Get(), h.Lowered.Get()
	add(raised.Is, raised.Err)
	add(alone.Is, alone.Err)
	add(&first.Is.Case, first.Err)
	list(lowered.Is, lowered.Err)
	add(packed.Is, packed.Err)
	list(seated.Is, seated.Err)
	list(lost.Is, lost.Err)
	list(lostPack.Is, lostPack.Err)
	list(set.Is.Cases, set.Err)
	list(moved.Is, moved.Err)
	list(seasonal.Is, seasonal.Err)
	add(blocked.Is, blocked.Err)
	return out
}

// Frames are those that the cases are of: the whole arch, the pieces of a split
// one, the arch with its feet held. There are none where nothing is solved.
func (h *Hanging) Frames() []Frame {
	var out []Frame
	for _, c := range h.Cases() {
		for _, a := range c.answers {
			at := slices.IndexFunc(out, func(f Frame) bool { return f.Key == a.of.title.key })
			if at < 0 {
				at = len(out)
				out = append(out, a.of.frame())
			}
			if full, err := a.full(c.ID); err == nil { // on supports, held feet may be a mechanism by round-off
				out[at].Cases = append(out[at].Cases, full)
			}
		}
	}
	return out
}

func (r *runner) frame() Frame {
	return Frame{
		Key: r.title.key, Words: r.title.words, Model: r.model, Section: r.rib.section.Section, Springs: r.rib.names,
		Loads: byNode(r.rib.loads), Spread: r.rib.spread,
	}
}

// byNode adds up the loads on each node, in the order of nodes.
func byNode(loads []frame.NodalLoad) (out []frame.NodalLoad) {
	sums := make(map[int]frame.NodalLoad)
	for _, l := range loads {
		s := sums[l.Node]
		sums[l.Node] = frame.NodalLoad{Node: l.Node, X: s.X + l.X, Y: s.Y + l.Y, Couple: s.Couple + l.Couple}
	}
	for _, node := range slices.Sorted(maps.Keys(sums)) {
		out = append(out, sums[node])
	}
	return out
}

// title names a frame.
type title struct{ key, words string }

var (
	wholeArch = title{"arch", "an edge rib of the whole arch"}
	feetHeld  = title{"arch-feet-held", "an edge rib of the whole arch, its feet held"}
)

func pieceAlone(number int) title {
	return title{fmt.Sprintf("piece-%d", number), fmt.Sprintf("an edge rib of piece %d, before the pieces are joined", number)}
}

package hanging

import "dryfit/spec/record"

// Done is what has been worked out of a rib by some time, for many goroutines.
type Done struct {
	rib       done[*rib]
	arch      done[*runner]
	pieces    done[[]Outcome[*runner]]
	governing done[[]*Case]
	first     done[First]
	staged    done[[]*Staging]
	set       done[Setting]
	thrust    done[*float64]
	ones      [4]done[*Case]
	lists     [6]done[[]Case]
}

type done[T any] = record.Done[Outcome[T]]

// Done is what has been worked out by now.
func (h *Hanging) Done() Done {
	d := Done{
		rib: h.rib.Done(), arch: h.arch.Done(), pieces: h.pieces.Done(), governing: h.governing.Done(),
		first: h.First.Done(), staged: h.Staged.Done(), set: h.Set.Done(), thrust: h.Thrust.Done(),
	}
	for i, v := range h.ones() {
		d.ones[i] = v.Done()
	}
	for i, v := range h.lists() {
		d.lists[i] = v.Done()
	}
	return d
}

// Take takes what was worked out of another rib, where it comes from none of the keys in
// which the two specs differ.
func (h *Hanging) Take(d Done, differ record.Set) {
	h.rib.Take(d.rib, differ)
	h.arch.Take(d.arch, differ)
	h.pieces.Take(d.pieces, differ)
	h.governing.Take(d.governing, differ)
	h.First.Take(d.first, differ)
	h.Staged.Take(d.staged, differ)
	h.Set.Take(d.set, differ)
	h.Thrust.Take(d.thrust, differ)
	for i, v := range h.ones() {
		v.Take(d.ones[i], differ)
	}
	for i, v := range h.lists() {
		v.Take(d.lists[i], differ)
	}
}

// ones are the results of one case, and lists those of many.
func (h *Hanging) ones() [4]Solved[*Case] {
	return [4]Solved[*Case]{h.Alone, h.Raised, h.Packed, h.Blocked}
}

func (h *Hanging) lists() [6]Solved[[]Case] {
	return [6]Solved[[]Case]{h.Lowered, h.Seated, h.Lost, h.LostPack, h.Moved, h.Seasonal}
}

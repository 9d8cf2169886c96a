package raising

import "dryfit/rules/model/result/hanging"

// Insecure is a piece that no number of its straps secures: all of them without
// lifts, or all but the one that is lost, do not hold it.
type Insecure struct {
	Piece int // of a split arch, from 1; 0 of a whole one
	Strap int // that is lost, from the left foot, from 1; 0 where none is
	State
}

// NeverSecure are the pieces that are not secure without their lifts. An error is
// one of the frame.
func NeverSecure(h *hanging.Hanging, l Limits) (out []Insecure, err error) {
	staged := h.Staged.Get()
	if staged.Err != nil {
		return nil, staged.Err
	}
	for _, s := range staged.Is {
		p := planner{Staging: s, limits: l}
		if fails, failed := p.insecure(count(len(p.Straps))); failed {
			out = append(out, fails)
		}
		if p.err != nil {
			return nil, p.err
		}
	}
	return out, nil
}

// insecure is the first state in which some straps do not hold the piece without
// lifts: all of them, or whichever one is lost.
func (p *planner) insecure(straps []int) (Insecure, bool) {
	if all := p.with(straps, nil); !all.Holds() {
		return Insecure{Piece: p.Piece, State: all}, true
	}
	for _, lost := range straps {
		if left := p.with(without(straps, lost), nil); !left.Holds() {
			return Insecure{p.Piece, p.Straps[lost], left}, true
		}
	}
	return Insecure{}, false
}

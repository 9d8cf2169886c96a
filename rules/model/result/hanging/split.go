package hanging

import (
	"fmt"

	"dryfit/rules/model/layout"
)

// UnstableError says that a piece of a split arch does not hang by itself.
type UnstableError struct {
	Piece int    // from the left, from 1
	Why   string // "no strap", "its centre of mass is not between its straps"
}

// Error counts the pieces from the left, from 1.
func (e *UnstableError) Error() string {
	return fmt.Sprintf("piece %d of the arch hangs before it is joined, and %s", e.Piece, e.Why)
}

// SeamError says that a strap lies over a seam within the arch, so that no piece
// has it by itself.
type SeamError struct {
	Strap int // from the left foot, from 1
}

// Error counts the straps from the left foot, from 1.
func (e *SeamError) Error() string {
	return fmt.Sprintf("strap %d lies on a seam within the arch", e.Strap)
}

// alone hangs each piece of a split arch by its own straps, before the pieces
// are joined; nil of a whole one.
func (h *Hanging) alone(c *layout.Ceiling) (all *Case, err error) {
	if c.Panel.Around.Get() == 1 {
		return nil, nil
	}
	for i, s := range c.Strap.Stations.Get() {
		if _, off := c.NearestSeam(s * c.Vault.Arc.Get()); c.OnSeam(off) {
			return nil, &SeamError{i + 1}
		}
	}
	for k, piece := range h.pieces.Get().Is {
		if err := piece.Is.rib.hangs(k + 1); err != nil {
			return nil, err
		}
		r, err := piece.named(FirstHungAlone)
		if err != nil {
			return nil, err
		}
		one, err := r.run(ID{Kind: FirstHungAlone}, r.rib.but(strapKind))
		if err != nil {
			return nil, err
		}
		one.Piece = k + 1
		all = together(all, one)
	}
	return all, nil
}

// pieces are those of a split arch, each by itself.
func (r *rib) pieces(memory *Memory) []Outcome[*runner] {
	var out []Outcome[*runner]
	for k := range r.parts {
		piece := r.piece(k)
		run, err := memory.compile(piece, piece.model(), pieceAlone(k+1))
		out = append(out, Outcome[*runner]{run, err})
	}
	return out
}

// raisePieces puts each piece of a split arch on the lifts, as it hangs.
func (h *Hanging) raisePieces(lifts int) (all *Case, err error) {
	if lifts == 0 {
		return nil, nil
	}
	for k, piece := range h.pieces.Get().Is {
		run, err := piece.named(Raised)
		if err != nil {
			return nil, err
		}
		one, err := raise(Outcome[*runner]{Is: run})
		if err != nil {
			return nil, err
		}
		one.Piece = k + 1
		if one.Lifts == nil {
			return one, nil
		}
		all = together(all, *one)
	}
	return all, nil
}

// Over is the piece of a split arch, from 1, over one of the case's lifts, which is
// counted from 0 and of which there are so many under each piece; 0 of a whole
// arch.
func (c *Case) Over(lift, each int) int {
	if c.Piece == 0 {
		return 0
	}
	return lift/each + 1
}

// together adds the straps of one more piece to those before it, and keeps the
// worst of the rest.
func together(all *Case, one Case) *Case {
	if all == nil {
		return &one
	}
	all.Straps = append(all.Straps, one.Straps...)
	all.Slack = append(all.Slack, one.Slack...)
	all.Lifts = append(all.Lifts, one.Lifts...)
	all.answers = append(all.answers, one.answers...)
	if one.Margin < all.Margin*(1-Alike) {
		all.Margin, all.Piece = one.Margin, one.Piece
	}
	all.Sag, all.ByRun = larger(all.Sag, one.Sag), steeper(all.ByRun, one.ByRun)
	all.Feet = max(all.Feet, one.Feet)
	all.Moment, all.Radial = max(all.Moment, one.Moment), max(all.Radial, one.Radial)
	all.whole, all.joint = max(all.whole, one.whole), max(all.joint, one.joint)
	return all
}

// piece is the k-th piece of a split arch as a rib of its own, with its own
// straps, lifts and weight.
func (r *rib) piece(k int) *rib {
	a, b, loads := r.parts[k].from, r.parts[k].to, r.parts[k].loads
	p := &rib{
		at: r.at[a : b+1], nodes: r.nodes[a : b+1], bends: r.bends[2*a : 2*b], section: r.section,
		crown: r.parts[k].middle - a,
	}
	for i, n := range r.straps {
		if n >= a && n <= b {
			p.straps, p.numbers = append(p.straps, n-a), append(p.numbers, r.numbers[i])
			p.kinds, p.stiff, p.names = append(p.kinds, strapKind), append(p.stiff, r.stiff[i]), append(p.names, r.names[i])
		}
	}
	each := len(r.lifts) / len(r.parts)
	named := r.names[len(r.names)-len(r.lifts):]
	for i := k * each; i < (k+1)*each; i++ {
		p.lifts = append(p.lifts, r.lifts[i]-a)
		p.kinds, p.stiff, p.names = append(p.kinds, liftKind), append(p.stiff, bearing), append(p.names, named[i])
	}
	for _, l := range loads {
		l.Node -= a
		p.loads = append(p.loads, l)
		p.weight -= l.Y
	}
	for e := a; e < b; e++ {
		s := r.spread[e]
		s.Element -= a
		p.spread = append(p.spread, s)
		p.weight -= s.Y * distance(r.nodes[e], r.nodes[e+1])
	}
	return p
}

// hangs reports whether the piece's straps hold it from both sides of its
// centre of mass.
func (r *rib) hangs(number int) error {
	if len(r.straps) == 0 {
		return &UnstableError{number, "it has no strap"}
	}
	centre := r.centre()
	left, right := r.nodes[r.straps[0]].X, r.nodes[r.straps[len(r.straps)-1]].X
	if centre <= left || centre >= right {
		return &UnstableError{number, "its centre of mass is not between its straps"}
	}
	return nil
}

package hanging

import (
	"fmt"
	"slices"

	"dryfit/rules/layout"
)

// UnstableError says that a piece of a split arch does not hang by itself.
type UnstableError struct {
	Piece int    // from the left, from 1
	Why   string // "no strap", "its centre of mass is not between its straps"
}

func (e *UnstableError) Error() string {
	return fmt.Sprintf("piece %d of the arch hangs before it is joined, and %s", e.Piece, e.Why)
}

// alone hangs each piece of a split arch by its own straps, before the pieces
// are joined; nil of a whole one.
func alone(c *layout.Ceiling, whole *rib) (all *Case, err error) {
	if c.Panel.Around.Get() == 1 {
		return nil, nil
	}
	for k, piece := range whole.pieces() {
		if err := piece.hangs(k + 1); err != nil {
			return nil, err
		}
		r, err := compile(piece, piece.model())
		if err != nil {
			return nil, &CaseError{ID{Kind: FirstHungAlone}, err}
		}
		one, err := r.run(ID{Kind: FirstHungAlone}, piece.but(strapKind))
		if err != nil {
			return nil, err
		}
		one.Piece = k + 1
		all = together(all, one)
	}
	return all, nil
}

// pieces are the ribs of the pieces of a split arch.
func (r *rib) pieces() []*rib {
	var out []*rib
	bounds := slices.Concat([]int{0}, r.seams, []int{len(r.nodes) - 1})
	for k := range len(bounds) - 1 {
		out = append(out, r.between(bounds[k], bounds[k+1]))
	}
	return out
}

// raisePieces puts each piece of a split arch on the lifts, as it hangs.
func raisePieces(whole *rib) (all *Case, err error) {
	if len(whole.lifts) == 0 {
		return nil, nil
	}
	for k, piece := range whole.pieces() {
		run, err := compile(piece, piece.model())
		if err != nil {
			return nil, &CaseError{ID{Kind: Raised}, err}
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

// together adds the straps of one more piece to those before it, and keeps the
// worst of the rest.
func together(all *Case, one Case) *Case {
	if all == nil {
		return &one
	}
	all.Straps = append(all.Straps, one.Straps...)
	all.Slack = append(all.Slack, one.Slack...)
	all.Lifts = append(all.Lifts, one.Lifts...)
	if one.Margin < all.Margin*(1-Alike) {
		all.Margin, all.Piece = one.Margin, one.Piece
	}
	all.Sag, all.ByRun = larger(all.Sag, one.Sag), steeper(all.ByRun, one.ByRun)
	all.Feet = max(all.Feet, one.Feet)
	all.Moment, all.Stress, all.Radial = max(all.Moment, one.Moment), max(all.Stress, one.Stress), max(all.Radial, one.Radial)
	return all
}

// between is the part of a rib from node a to node b, with its own straps and
// loads; the rail at a seam is shared.
func (r *rib) between(a, b int) *rib {
	p := &rib{
		at: r.at[a : b+1], nodes: r.nodes[a : b+1], radii: r.radii[a : b+1], section: r.section,
		crown: (b - a) / 2,
	}
	for i, n := range r.straps {
		if n >= a && n <= b {
			p.straps = append(p.straps, n-a)
			p.kinds, p.stiff = append(p.kinds, strapKind), append(p.stiff, r.stiff[i])
		}
	}
	for _, n := range r.lifts {
		if n >= a && n <= b {
			p.lifts = append(p.lifts, n-a)
			p.kinds, p.stiff = append(p.kinds, liftKind), append(p.stiff, bearing)
		}
	}
	for _, l := range r.loads {
		if l.Node < a || l.Node > b {
			continue
		}
		l.Node -= a
		if shared := l.Node == 0 && a > 0 || l.Node == b-a && b < len(r.nodes)-1; shared {
			l.Y /= 2
		}
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

package hanging

import (
	"fmt"

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
	pieces := c.Panel.Around.Get()
	if pieces == 1 {
		return nil, nil
	}
	bounds := append([]int{0}, append(append([]int{}, whole.seams...), len(whole.nodes)-1)...)
	for k := range pieces {
		piece := whole.between(bounds[k], bounds[k+1])
		if err := piece.hangs(k + 1); err != nil {
			return nil, err
		}
		r, err := compile(piece, piece.model())
		if err != nil {
			return nil, &CaseError{ID{Kind: FirstHungAlone}, err}
		}
		one, err := r.run(ID{Kind: FirstHungAlone}, nil)
		if err != nil {
			return nil, err
		}
		all = together(all, one)
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
	if one.Sag*all.Run > all.Sag*one.Run {
		all.Sag, all.Run = one.Sag, one.Run
	}
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
	moment, weight := 0.0, 0.0
	for _, l := range r.loads {
		moment += -l.Y * r.nodes[l.Node].X
		weight -= l.Y
	}
	for _, s := range r.spread {
		a, b := r.nodes[s.Element], r.nodes[s.Element+1]
		w := -s.Y * distance(a, b)
		moment += w * (a.X + b.X) / 2
		weight += w
	}
	centre := moment / weight
	left, right := r.nodes[r.straps[0]].X, r.nodes[r.straps[len(r.straps)-1]].X
	if centre <= left || centre >= right {
		return &UnstableError{number, "its centre of mass is not between its straps"}
	}
	return nil
}

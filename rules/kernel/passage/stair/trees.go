package stair

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// trees are poses of the body on a stair, each joined by a straight way that is free to
// others of its tree.
type trees struct {
	s      Stair
	b      *passage.Body // of fewer corners
	pieces []piece
	solids []solid
	radius float64     // of the body about its origin
	placed []space.Vec // of the piece that is looked at
	open   []span      // of the way that is looked at
	budget *passage.Budget

	nodes []treeNode
	keys  []nodeKey // of the nodes
	tree  []int     // of each node, another that stands for it, or itself
	ends  []reach   // of the tree that a node stands for
	whole bool      // one tree reaches from the foot to the floor above
}

// nodeKey is what tells how near a node is.
type nodeKey struct {
	at   space.Vec
	turn space.Quaternion
}

// reach is whether all of the body is beyond the foot at some pose, and on the floor above
// at some.
type reach struct{ foot, top bool }

// treeNode is a pose with the room about it, and the nodes it is joined to.
type treeNode struct {
	space.Pose
	turn  space.Quaternion
	room  float64
	joins []int
}

// How poses are looked at, in m.
const (
	treesCoarse = 0.002  // that the body with fewer corners is off
	roundOff    = 1e-8   // to which all is rounded: else round-off would choose between trees
	roomMost    = 0.3    // more room than this is not measured
	roomLeast   = 0.0005 // less room than this is none
	leastStep   = 0.004  // a way shorter than this is not halved
)

func newTrees(b *passage.Body, s Stair, budget *passage.Budget) *trees {
	s = s.rounded()
	t := &trees{s: s, b: b.Coarse(treesCoarse).Rounded(roundOff), solids: s.solids(), budget: budget}
	t.pieces = piecesOf(t.b)
	for _, p := range t.pieces {
		for _, v := range p.corners {
			t.radius = max(t.radius, v.Length())
		}
	}
	return t
}

// look is the room at a pose, none once nothing is left to spend. Where it is below
// least, it is known to be that and no more.
func (t *trees) look(p space.Pose, least float64) float64 {
	if t.budget.Looks <= 0 {
		return none
	}
	t.budget.Looks--
	return t.room(p, least)
}

// room is how far at the least the wrapped body is from all solids, up to roomMost: no
// piece of it moves by more towards one.
func (t *trees) room(p space.Pose, least float64) float64 {
	wrap := t.b.Wrap()
	room := roomMost + wrap
	for i := range t.pieces {
		piece := &t.pieces[i]
		at := p.Place(piece.centre)
		t.placed = t.placed[:0]
		for _, s := range t.solids {
			if s.beyond(at, piece.radius+room) {
				continue
			}
			if len(t.placed) == 0 {
				t.place(piece, p)
			}
			if room = min(room, s.off(t.placed, room)); room < least+wrap {
				return room - wrap
			}
		}
	}
	return room - wrap
}

// place works out the corners of a piece at a pose.
func (t *trees) place(piece *piece, p space.Pose) {
	for _, v := range piece.corners {
		t.placed = append(t.placed, p.Place(v))
	}
}

// moved is how far no point of the body moves further between two poses.
func (t *trees) moved(a, b *treeNode) float64 {
	return a.At.Minus(b.At).Length() + t.radius*a.turn.Apart(b.turn)
}

// between is the pose part of the way from one to another.
func (n *treeNode) between(m *treeNode, part float64) treeNode {
	q := n.turn.Between(m.turn, part)
	return treeNode{Pose: space.Pose{Turn: q.Turn(), At: n.At.Times(1 - part).Add(m.At.Times(part))}, turn: q}
}

// span is a straight way between two poses on which no point of the body moves further
// than moved.
type span struct {
	a, b  treeNode
	moved float64
}

// free reports whether the straight way between two poses leaves keep all the way: its
// ends leave as much as any point moves, or both its halves do so. The longest are looked
// at first, since most ways that are not free are so by much.
func (t *trees) free(a, b *treeNode, keep float64) bool {
	t.open = append(t.open[:0], span{*a, *b, t.moved(a, b)})
	for k := 0; k < len(t.open); k++ {
		s := &t.open[k]
		if s.a.room+s.b.room-2*keep >= s.moved {
			continue
		}
		if s.moved < leastStep {
			return false
		}
		m := s.a.between(&s.b, 0.5)
		if m.room = t.look(m.Pose, keep+roomLeast); m.room < keep+roomLeast {
			return false
		}
		t.open = append(t.open, span{s.a, m, s.moved / 2}, span{m, s.b, s.moved / 2})
	}
	return true
}

// way reports whether the straight way from one pose to another is free.
func (t *trees) way(a, b *treeNode) bool { return t.free(a, b, 0) }

// add plants a pose, joined to a node unless that is -1, and that of the same places with
// the body turned to its other end if it is then the same: the trees of the two grow alike.
func (t *trees) add(n treeNode, to int) int {
	i := len(t.nodes)
	t.plant(n)
	if t.b.Mirrored() {
		q := n.turn
		n.turn = space.Quaternion{-q[3], q[2], -q[1], q[0]} // before it, half a turn about the body's Z
		n.Turn = n.turn.Turn()
		t.plant(n)
	}
	if to >= 0 {
		t.join(to, i)
	}
	return i
}

func (t *trees) plant(n treeNode) {
	n.joins = nil
	t.tree = append(t.tree, len(t.nodes))
	t.nodes, t.keys = append(t.nodes, n), append(t.keys, nodeKey{n.At, n.turn})
	t.ends = append(t.ends, t.reach(n.Pose))
}

// join joins two nodes, and those of the body turned.
func (t *trees) join(i, j int) {
	t.link(i, j)
	if t.b.Mirrored() {
		t.link(i^1, j^1)
	}
}

func (t *trees) link(i, j int) {
	t.nodes[i].joins = append(t.nodes[i].joins, j)
	t.nodes[j].joins = append(t.nodes[j].joins, i)
	i, j = t.of(i), t.of(j)
	t.tree[j] = i
	e := &t.ends[i]
	e.foot, e.top = e.foot || t.ends[j].foot, e.top || t.ends[j].top
	t.whole = t.whole || e.foot && e.top
}

// of is the node that stands for a node's tree.
func (t *trees) of(i int) int {
	for t.tree[i] != i {
		t.tree[i] = t.tree[t.tree[i]]
		i = t.tree[i]
	}
	return i
}

// reach is that of a pose.
func (t *trees) reach(p space.Pose) reach {
	most := func(axis int, sign float64) float64 {
		e := p.Turn[axis].Times(sign)
		return t.b.Reach(e).Dot(e)
	}
	second := t.s.Turn == Half && p.At.X > t.s.Across/2
	on := t.s.run() - t.s.Going // of the last nosing of the flight that goes on
	r := reach{foot: p.At.Y+most(1, 1) <= -t.s.run() && !second}
	switch t.s.Turn {
	case Straight:
		r.top = p.At.Y-most(1, -1) >= 0
	case Quarter:
		r.top = p.At.X-most(0, -1) >= t.s.Across+on
	default:
		r.top = p.At.Y+most(1, 1) <= -on && second
	}
	return r
}

// line is the way from a node beyond the foot to one of its tree on the floor above.
func (t *trees) line() []treeNode {
	for i, n := range t.nodes {
		if e := t.ends[t.of(i)]; e.foot && e.top && t.reach(n.Pose).foot {
			return t.from(i)
		}
	}
	return nil
}

// from is the way from a node to the floor above.
func (t *trees) from(i int) (out []treeNode) {
	last := map[int]int{i: i}
	for open := []int{i}; len(open) > 0; open = open[1:] {
		j := open[0]
		if t.reach(t.nodes[j].Pose).top {
			for ; j != i; j = last[j] {
				out = append(out, t.nodes[j])
			}
			slices.Reverse(out)
			return append([]treeNode{t.nodes[i]}, out...)
		}
		for _, k := range t.nodes[j].joins {
			if _, had := last[k]; !had {
				last[k] = j
				open = append(open, k)
			}
		}
	}
	return nil
}

// nearest is the node that is nearest to a pose, of another tree than that of a node,
// unless that is -1.
func (t *trees) nearest(to *treeNode, but int) (at int, ok bool) {
	least, swing := math.Inf(1), 4*t.radius*t.radius
	for i := range t.keys {
		k := &t.keys[i]
		d, q := k.at.Minus(to.At), k.turn.Dot(to.turn)
		if l := d.Dot(d) + swing*(1-q*q); l < least && (but < 0 || t.of(i) != but) {
			least, at, ok = l, i, true
		}
	}
	return at, ok
}

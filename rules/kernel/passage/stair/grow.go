package stair

import (
	"math"
	"math/rand/v2"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// growing looks for a motion up a stair by growing trees in random directions, the same
// ones on every machine, from poses on the floors, the flights and the landing, until one
// reaches from the foot to the floor above.
type growing struct {
	*trees
	r *rand.Rand
}

// How trees grow.
const (
	treesSeed   = 25
	seeds       = 3    // for each part of the stair
	seedTries   = 150  // to find one
	aroundTries = 8    // to find a way around what a branch meets
	treeStride  = 0.3  // m, that a branch grows at most in one
	shortBranch = 0.02 // m: one that is shorter is not planted
	slopeMost   = 2.0  // m, that one grows along a flight
	meets       = 0.05 // m, past the last free pose, where a way around is looked for
)

// ways that a tree grows, in hundredths: from a new seed, along a flight, near where it
// is; else towards a pose anywhere.
const (
	growSeed  = 5
	growSlope = 20
	growNear  = 33
)

// ClimbFreely looks for a motion up a stair on which the body turns as need be. It spends
// all looks of a budget where it finds none, which proves nothing.
func ClimbFreely(b *passage.Body, s Stair, budget *passage.Budget) (passage.Motion, bool) {
	if budget == nil {
		return passage.Motion{}, false
	}
	for forest := uint64(1); budget.Looks > 0; forest++ {
		part := &passage.Budget{Looks: min(looksAForest, budget.Looks)}
		budget.Looks -= part.Looks
		g := growing{newTrees(b, s, part), rand.New(rand.NewPCG(treesSeed, forest))}
		if way := g.find(); way != nil {
			budget.Looks += part.Looks
			return g.motion(way), true
		}
	}
	return passage.Motion{}, false
}

// looksAForest are after how many new trees are begun: to look for the nearest of many
// costs more than to find those that grow well.
const looksAForest = 200000

// motion is a way once it is made straight.
func (g *growing) motion(way []treeNode) passage.Motion {
	way, margin := g.straightened(way)
	poses := make([]space.Pose, 0, len(way))
	for _, n := range way {
		poses = append(poses, n.Pose)
	}
	return passage.Motion{Way: passage.Free, Margin: margin, Tilted: true, Climbs: true, Follow: func() []space.Pose { return poses }}
}

// find grows trees until one is whole.
func (g *growing) find() []treeNode {
	for range seeds * g.s.parts() {
		g.seed()
	}
	for g.budget.Looks > 0 {
		if len(g.nodes) > 0 {
			g.grow()
		} else {
			g.seed()
		}
		if g.whole {
			return g.line()
		}
	}
	return nil
}

// parts are how many a stair has: the floor at the foot, a flight, a landing, and those
// that go on.
func (s Stair) parts() int {
	if s.Turn == Straight {
		return 3
	}
	return 5
}

// seed plants a pose with room that is found near a random one.
func (g *growing) seed() {
	n := g.anywhere()
	n.room = g.look(n.Pose, none)
	if n, ok := g.roomier(n, seedTries, 0.3); ok {
		g.connect(g.add(n, -1))
	}
}

// grow grows one branch.
func (g *growing) grow() {
	var target treeNode
	i := g.r.IntN(len(g.nodes))
	switch k := g.r.IntN(100); {
	case k < growSeed:
		g.seed()
		return
	case k < growSeed+growSlope:
		target = g.nodes[i]
		target.At = target.At.Add(g.slope().Times(g.even(-slopeMost, slopeMost)))
	case k < growSeed+growSlope+growNear:
		target = g.near(&g.nodes[i], [3]float64{0.05, 0.2, 0.6}[g.r.IntN(3)])
	default:
		target = g.anywhere()
		i, _ = g.nearest(&target, -1)
	}
	n, whole := g.toward(g.nodes[i], &target)
	if !whole {
		n = g.around(n, &target)
	}
	if g.moved(&n, &g.nodes[i]) >= shortBranch {
		g.connect(g.add(n, i))
	}
}

// around is a pose to the side of what is met on the way to another, or the same.
func (g *growing) around(n treeNode, target *treeNode) treeNode {
	far := g.moved(&n, target)
	at := n.between(target, min(1, meets/max(meets, far)))
	at.room = g.look(at.Pose, none)
	if at, ok := g.roomier(at, aroundTries, meets); ok && g.way(&n, &at) {
		return at
	}
	return n
}

// toward goes towards a pose as far as it is free, in strides.
func (g *growing) toward(n treeNode, target *treeNode) (_ treeNode, whole bool) {
	from, strides := n, math.Ceil(g.moved(&n, target)/treeStride)
	for k := 1.0; k <= strides; k++ {
		m := from.between(target, k/strides)
		if m.room = g.look(m.Pose, roomLeast); m.room < roomLeast || !g.way(&n, &m) {
			return n, false
		}
		n = m
	}
	return n, true
}

// connect joins a node to the nearest of another tree, or grows towards it.
func (g *growing) connect(i int) {
	j, ok := g.nearest(&g.nodes[i], g.of(i))
	if !ok {
		return
	}
	n, whole := g.toward(g.nodes[i], &g.nodes[j])
	switch {
	case whole:
		g.join(i, j)
	case g.moved(&n, &g.nodes[i]) >= shortBranch:
		g.add(n, i)
	}
}

// How a way is made straight.
const (
	straightenTries = 100
	straightenLooks = 10000 // that are looked at, beside what a spec may spend
	marginStep      = 0.001 // m
	marginMost      = 0.02
)

// straightened leaves out stations of a way that it can do without, and gives the most
// that is known to be free about the body all the way.
func (g *growing) straightened(way []treeNode) ([]treeNode, float64) {
	g.budget = &passage.Budget{Looks: straightenLooks}
	for range straightenTries {
		i, j := g.r.IntN(len(way)), g.r.IntN(len(way))
		if i, j = min(i, j), max(i, j); j-i > 1 && g.way(&way[i], &way[j]) {
			way = slices.Delete(way, i+1, j)
		}
	}
	margin := 0.0
	for m := marginStep; m <= marginMost && g.keeps(way, m); m += marginStep {
		margin = m
	}
	return way, margin
}

// keeps reports whether a way leaves so much about the body.
func (g *growing) keeps(way []treeNode, margin float64) bool {
	for k := 1; k < len(way); k++ {
		if !g.free(&way[k-1], &way[k], margin) {
			return false
		}
	}
	return true
}

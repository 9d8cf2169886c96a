package turns_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"

	"dryfit/rules/kernel/passage/turns"
)

// Ways through random nodes cost what gonum's search finds, come in the order of their costs,
// and go back to where they begin.
func TestWaysAreTheCheapest(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 1))
	var w turns.Ways
	for range 50 {
		n := 2 + r.IntN(30)
		graph := simple.NewWeightedDirectedGraph(0, 0)
		for i := range n {
			graph.AddNode(simple.Node(i))
		}
		for range 3 * n {
			if a, b := r.IntN(n), r.IntN(n); a != b {
				graph.SetWeightedEdge(graph.NewWeightedEdge(simple.Node(a), simple.Node(b), float64(1+r.IntN(9))))
			}
		}
		want := path.DijkstraFrom(simple.Node(0), graph)
		w.Clear(n)
		w.Reach(0, -1, 0)
		last, found := 0.0, 0
		for end, ok := w.Next(); ok; end, ok = w.Next() {
			require.InDelta(t, want.WeightTo(int64(end.Node)), end.Cost, 0)
			require.GreaterOrEqual(t, end.Cost, last)
			last, found = end.Cost, found+1
			cost, after := 0.0, -1
			for i := range w.Back(end.Node) {
				if after >= 0 {
					step, joined := graph.Weight(int64(i), int64(after))
					require.True(t, joined)
					cost += step
				}
				after = i
			}
			require.Zero(t, after)
			require.InDelta(t, end.Cost, cost, 0)
			for to := graph.From(int64(end.Node)); to.Next(); {
				step, _ := graph.Weight(int64(end.Node), to.Node().ID())
				w.Reach(int(to.Node().ID()), end.Node, end.Cost+step)
			}
		}
		reached := 0
		for i := range n {
			if nodes, _ := want.To(int64(i)); len(nodes) > 0 {
				reached++
			}
		}
		assert.Equal(t, reached, found)
	}
}

// Of two ways from 0 and 1 over 2 and 3 to the end 4, the cheaper one comes first; a node in
// doubt on both is given once. Without doubt on a way there is a way through, and with no way
// there is nothing to cut.
func TestDoubtful(t *testing.T) {
	var w turns.Ways
	begin := func() {
		w.Clear(6)
		w.Reach(0, -1, 1)
		w.Reach(1, -1, 2)
	}
	next := map[int][]int{0: {2}, 1: {3}, 2: {4}, 3: {5}}
	leadOn := func(end turns.WayEnd) {
		for _, k := range next[end.Node] {
			w.Reach(k, end.Node, end.Cost+1)
		}
	}
	ends := func(i int) bool { return i >= 4 }
	var asked []int
	inDoubt := func(end int) []int {
		asked = append(asked, end)
		return append(slices.Collect(w.Back(end)), 9)
	}
	begin()
	cells, through := w.Doubtful(100, ends, leadOn, inDoubt)
	assert.False(t, through)
	assert.Equal(t, []int{4, 5}, asked)
	assert.Equal(t, []int{4, 2, 0, 9, 5, 3, 1}, cells)
	begin()
	cells, _ = w.Doubtful(2, ends, leadOn, inDoubt)
	assert.Equal(t, []int{4, 2, 0, 9}, cells)
	begin()
	cells, through = w.Doubtful(2, ends, leadOn, func(int) []int { return nil })
	assert.True(t, through)
	assert.Empty(t, cells)
	w.Clear(6)
	cells, through = w.Doubtful(2, ends, leadOn, inDoubt)
	assert.False(t, through)
	assert.Empty(t, cells)
}

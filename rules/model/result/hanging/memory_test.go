package hanging

import (
	"fmt"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/sample"
)

// Ceilings with the same rib share its frame and its cases, whatever else differs;
// any other rib is solved by itself, and every figure is what it is without a memory.
func TestTheMemoryKnowsARibByItself(t *testing.T) {
	var memory Memory
	room := func(changes map[string]any) *Hanging {
		c := sample.Room(t, changes)
		h := Of(c, &memory)
		assert.Equal(t, figures(Of(sample.Room(t, changes), nil)), figures(h), "%v", changes)
		return h
	}
	frame := func(h *Hanging) *runner { return h.arch.Get().Is }
	first := room(nil)
	solved := len(frame(first).had)
	assert.Same(t, frame(first), frame(room(nil)))
	assert.Same(t, frame(first), frame(room(map[string]any{"rib.lamination": "5mm"})), "layers of another thickness make the same section")
	assert.Len(t, frame(first).had, solved, "no case is solved twice")
	assert.Same(t, frame(first), frame(room(map[string]any{"strap.setting": "2mm"})), "the setting is of the cases alone")
	assert.Greater(t, len(frame(first).had), solved)
	assert.Len(t, memory.weights, 1, "weighed once")
	for _, other := range []map[string]any{{"rib.depth": "61mm"}, {"strap.thickness": "2mm"}, {"strap.stations": []any{"10%", "37%", "63%", "90%"}}, {"skin.thickness": "6mm"}} {
		assert.NotSame(t, frame(first), frame(room(other)), "%v", other)
	}
	room(map[string]any{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}})
	room(nil)
}

// figures are all that is read of the cases, and the reactions.
func figures(h *Hanging) (out []any) {
	for _, c := range h.Cases() {
		read := *c
		read.answers = nil
		out = append(out, read)
	}
	return append(out, h.Tables())
}

func TestTheMemoryOfFramesIsBounded(t *testing.T) {
	var memory Memory
	for i := range mostFrames + 5 {
		c := sample.Room(t, map[string]any{"rib.depth": fmt.Sprintf("%dmm", 60+i)})
		require.NoError(t, Of(c, &memory).arch.Get().Err)
	}
	assert.Len(t, memory.frames, mostFrames)
	assert.Len(t, memory.weights, mostFrames)
	r := memory.frames[0]
	for i := range mostCases {
		r.had[fmt.Sprint(i)] = &solution{}
	}
	r.solved(acts{without: r.rib.but(strapKind)})
	assert.Len(t, r.had, 1)
}

// Several goroutines find what one finds alone, of the same rib and of others.
func TestTheMemoryIsShared(t *testing.T) {
	var memory Memory
	var workers sync.WaitGroup
	changes := []map[string]any{nil, {"strap.setting": "2mm"}, {"rib.depth": "61mm"}, {"rib.lamination": "5mm"}}
	got := make([][]any, 2*len(changes))
	for i := range got {
		c := sample.Room(t, changes[i/2])
		workers.Go(func() { got[i] = figures(Of(c, &memory)) })
	}
	workers.Wait()
	for i := range got {
		assert.Equal(t, figures(Of(sample.Room(t, changes[i/2]), nil)), got[i], "%v", changes[i/2])
	}
}

// Ribs that differ in any one field are two.
func TestEqualLooksAtEveryField(t *testing.T) {
	changes := []func(r *rib){
		func(r *rib) { r.at = append([]float64{0.1}, r.at[1:]...) },
		func(r *rib) { r.nodes = append([]frame.Vector{{X: 0.1}}, r.nodes[1:]...) },
		func(r *rib) { r.bends = append([]float64{1}, r.bends[1:]...) },
		func(r *rib) { r.section.left.byForce = 1 },
		func(r *rib) { r.straps = r.straps[1:] },
		func(r *rib) { r.numbers = r.numbers[1:] },
		func(r *rib) { r.lifts = r.lifts[1:] },
		func(r *rib) { r.feet = r.feet[1:] },
		func(r *rib) { r.crown++ },
		func(r *rib) { r.seams = append([]int{7}, r.seams...) },
		func(r *rib) { r.parts = []part{{from: r.parts[0].from, to: r.parts[0].to, middle: r.parts[0].middle}} },
		func(r *rib) { r.weight++ },
		func(r *rib) { r.loads = r.loads[1:] },
		func(r *rib) { r.spread = r.spread[1:] },
		func(r *rib) { r.kinds = r.kinds[1:] },
		func(r *rib) { r.stiff = append([]float64{1}, r.stiff[1:]...) },
		func(r *rib) { r.names = r.names[1:] },
	}
	assert.Len(t, changes, reflect.TypeFor[rib]().NumField(), "one change for each field")
	c := sample.Room(t, nil)
	assert.True(t, newRib(c, nil).equal(newRib(c, nil)))
	for i, change := range changes {
		other := newRib(c, nil)
		change(other)
		assert.False(t, newRib(c, nil).equal(other), "change %d", i+1)
	}
}

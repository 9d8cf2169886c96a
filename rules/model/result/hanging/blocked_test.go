package hanging

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/sample"
)

// assembled makes a frame anew: Timoshenko's beams by their stiffness matrix
// (Przemieniecki, Theory of Matrix Structural Analysis, 5.6, from memory), and the
// weight of each as forces and couples of its clamped ends.
func assembled(r *rib) (k *mat.SymDense, load *mat.VecDense) {
	n := 3 * len(r.nodes)
	k, load = mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	for e := range len(r.nodes) - 1 {
		a, b := r.nodes[e], r.nodes[e+1]
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		c, s, g := (b.X-a.X)/l, (b.Y-a.Y)/l, r.section.stiffness()
		phi := 12 * g.EI / (g.GA * l * l)
		f, u := g.EI/(1+phi)/l, g.EA/l
		local := mat.NewDense(6, 6, []float64{
			u, 0, 0, -u, 0, 0,
			0, 12 * f / l / l, 6 * f / l, 0, -12 * f / l / l, 6 * f / l,
			0, 6 * f / l, (4 + phi) * f, 0, -6 * f / l, (2 - phi) * f,
			-u, 0, 0, u, 0, 0,
			0, -12 * f / l / l, -6 * f / l, 0, 12 * f / l / l, -6 * f / l,
			0, 6 * f / l, (2 - phi) * f, 0, -6 * f / l, (4 + phi) * f,
		})
		turn := mat.NewDense(6, 6, nil)
		for end := 0; end < 6; end += 3 {
			turn.Set(end, end, c)
			turn.Set(end, end+1, s)
			turn.Set(end+1, end, -s)
			turn.Set(end+1, end+1, c)
			turn.Set(end+2, end+2, 1)
		}
		var global mat.Dense
		global.Product(turn.T(), local, turn)
		for i := range 6 {
			for j := i; j < 6; j++ {
				k.SetSym(3*e+i, 3*e+j, k.At(3*e+i, 3*e+j)+global.At(i, j))
			}
		}
		for end, way := range []float64{1, -1} {
			i := 3*(e+end) + 1
			load.SetVec(i, load.AtVec(i)+r.spread[e].Y*l/2)
			load.SetVec(i+1, load.AtVec(i+1)+way*r.spread[e].Y*c*l*l/12)
		}
	}
	for _, l := range r.loads {
		load.SetVec(3*l.Node+1, load.AtVec(3*l.Node+1)+l.Y)
		load.SetVec(3*l.Node+2, load.AtVec(3*l.Node+2)+l.Couple)
	}
	return k, load
}

// dense solves a frame with some straps as springs both ways, and the feet held
// along x by stiff springs. It gives the forces of the feet, inward, and the
// movements.
func dense(t *testing.T, r *rib, taut int) (feet [2]float64, moved []float64) {
	const stiff = 1e12
	k, load := assembled(r)
	n := 3 * len(r.nodes)
	add := func(i int, by float64) { k.SetSym(i, i, k.At(i, i)+by) }
	for i, node := range r.straps {
		if taut&(1<<i) != 0 {
			add(3*node+1, r.stiff[i])
		}
	}
	add(0, stiff)
	add(n-3, stiff)
	var x mat.VecDense
	require.NoError(t, x.SolveVec(k, load))
	return [2]float64{-stiff * x.AtVec(0), stiff * x.AtVec(n-3)}, x.RawVector().Data
}

// Of every set of taut straps one suits: each pulls, and the others are slack.
// The feet then thrust alike, as nothing else pushes sideways. Where the straps
// are uneven a restraint at the crown would take its part. Feet that would move
// inward leave the walls.
func TestThrustOfBlockedFeet(t *testing.T) {
	for _, stations := range [][]any{{"10%", "30%", "55%", "90%"}, {"10%", "36%", "64%", "90%"}, {"5%", "40%", "70%"}} {
		c := sample.Room(t, map[string]any{"strap.stations": stations})
		r := newRib(c, nil)
		found := 0
		for taut := 3; taut < 1<<len(r.straps); taut++ {
			if taut&(taut-1) == 0 {
				continue // one strap lets it swing
			}
			feet, moved := dense(t, r, taut)
			suits := true
			for i, node := range r.straps {
				suits = suits && (moved[3*node+1] < 0) == (taut&(1<<i) != 0)
			}
			if !suits {
				continue
			}
			found++
			assert.InEpsilon(t, feet[0], feet[1], 1e-5, stations)
			got := Of(c, nil).Thrust.Get()
			require.NoError(t, got.Err)
			assert.InDelta(t, max(0, feet[0]), *got.Is, 1e-3, stations)
			t.Logf("%v: %.2fN", stations, feet[0])
		}
		assert.Equal(t, 1, found, stations)
	}
}

// The feet that forces hold are those that supports hold: every figure of the case is what
// the frame gives whose feet can't move.
func TestHeldFeetAreThoseOnSupports(t *testing.T) {
	for _, changes := range []map[string]any{
		nil,
		{"strap.stations": []any{"10%", "30%", "55%", "90%"}},
		{"strap.stations": []any{"5%", "40%", "70%"}},
		{"strap.stations": []any{"20%", "40%", "60%", "80%"}},
		{"vault.rise": "60mm"},
		{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}},
		{"vault": map[string]any{"profile": "pointed", "span": "4200mm", "radius": "3000mm", "length": "7080mm"}},
		{"vault": map[string]any{"profile": "elliptical", "span": "4200mm", "rise": "1300mm", "length": "7080mm"}},
	} {
		h := Of(sample.Room(t, changes), nil)
		r := h.arch.Get()
		require.NoError(t, r.Err)
		got, found := r.Is.hold(ID{Kind: FeetBlocked})
		require.True(t, found, "%v", changes)
		alone := r.Is.feetHeld()
		require.NoError(t, alone.compile())
		want, err := alone.run(ID{Kind: FeetBlocked}, alone.rib.but(strapKind))
		require.NoError(t, err)
		assert.Equal(t, want.Slack, got.Slack, "%v", changes)
		assert.InDeltaSlice(t, want.supports, got.supports, 1e-5, "%v", changes)
		assert.InDeltaSlice(t, want.Straps, got.Straps, 1e-5, "%v", changes)
		assert.InDeltaSlice(t, want.drops, got.drops, 1e-10, "%v", changes)
		assert.InDelta(t, want.Feet, got.Feet, 1e-12, "%v", changes)
		for _, pair := range [][2]float64{{want.Moment, got.Moment}, {want.whole, got.whole}, {want.joint, got.joint}, {want.Radial, got.Radial}, {want.Margin, got.Margin}, {want.Sag.Drop, got.Sag.Drop}} {
			assert.InEpsilon(t, pair[0]+1e-9, pair[1]+1e-9, 1e-6, "%v", changes)
		}
	}
}

// Where no thrust is found that closes the feet, the frame on supports is solved.
func TestFeetThatNoThrustClosesAreSolvedOnSupports(t *testing.T) {
	h := Of(sample.Room(t, nil), nil)
	want := h.Blocked.Get()
	require.NoError(t, want.Err)
	again := Of(sample.Room(t, nil), nil)
	r := again.arch.Get().Is
	first, err := r.run(ID{Kind: FirstHung}, r.rib.but(strapKind))
	require.NoError(t, err)
	tried := acts{without: r.rib.but(strapKind), thrust: math.Copysign(firstThrust*r.rib.weight, first.Feet)}
	r.had[string(tried.key(nil))] = &solution{err: &frame.MechanismError{}}
	got := again.Blocked.Get()
	require.NoError(t, got.Err)
	assert.InDeltaSlice(t, want.Is.supports, got.Is.supports, 1e-5)
	assert.InDeltaSlice(t, want.Is.Straps, got.Is.Straps, 1e-5)
}

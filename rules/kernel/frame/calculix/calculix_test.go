package calculix

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
)

// What a run prints of two nodes, the second on a spring, at half of the load and at all of
// it; and the section forces of its nodes, in columns of twelve.
const (
	printed = `
 displacements (vx,vy,vz) for set NAXIS and time  0.5000000E+00

         1  0.000000E+00  0.000000E+00  0.000000E+00
         2  5.000000E-04 -1.000000E-03  0.000000E+00

 displacements (vx,vy,vz) for set NAXIS and time  0.1000000E+01

         1  0.000000E+00  0.000000E+00  0.000000E+00
         2  1.000000E-03 -2.000000E-03  0.000000E+00

 forces (fx,fy,fz) for set NANCHOR and time  0.1000000E+01

    100001  0.300000E+01  0.400000E+01  0.000000E+00

 forces (fx,fy,fz) for set NAXIS and time  0.1000000E+01

         1  0.100000E+01  0.500000E+01  0.000000E+00
         2  0.000000E+00 -0.900000E+01  0.000000E+00
`
	sections = ` -4  DISP        4    1
 -1         2 9.00000E+00 9.00000E+00 9.00000E+00 9.00000E+00 9.00000E+00
 -3
 -4  STRESS      6    1
 -1         1 1.00000E+00 2.00000E+00 3.00000E+00 4.00000E+00-5.00000E+01 6.00000E+00
 -1         2 1.00000E+00 2.00000E+00 3.00000E+00 4.00000E+00 not a figure
 -3
`
)

func deck() Deck {
	return Deck{Model: frame.Model{
		Nodes:    []frame.Vector{{}, {X: 1}},
		Springs:  []frame.Spring{{Node: 1, Toward: frame.Vector{X: 0.6, Y: 0.8}}},
		Supports: []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: 0, Direction: frame.AlongY}},
	}}
}

// Derived: the force of a spring is what acts on its anchor, along it, 0.6·3 + 0.8·4; a
// support has what acts on its node less the load on that, 5 − (−2); what counts is the
// end of the run.
func TestWhatIsPrintedIsRead(t *testing.T) {
	got, err := deck().read([]byte(printed), []byte(sections), []frame.Vector{{Y: -2}, {Y: -9}})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{5}, got.Forces, 1e-12)
	assert.Equal(t, []float64{1, 7}, got.Supports)
	assert.Equal(t, []float64{0, 0, 0.001, -0.002}, got.Moved)
	assert.Equal(t, -50.0, got.Moments[0])
	assert.True(t, math.IsNaN(got.Moments[1]), "no comparison passes it")
}

// A run that ended early has not printed all.
func TestWhatIsNotPrintedIsAnError(t *testing.T) {
	for gone, want := range map[string]string{"    100001": "no force of spring 0", "         2": "no movement of node 1"} {
		lines := strings.Split(printed, "\n")
		kept := lines[:0:0]
		for _, l := range lines {
			if !strings.HasPrefix(l, gone) {
				kept = append(kept, l)
			}
		}
		_, err := deck().read([]byte(strings.Join(kept, "\n")), nil, make([]frame.Vector, 2))
		assert.EqualError(t, err, want)
	}
}

// A table has the stiffness for the ways in which a spring acts, and none where it is
// left out.
func TestSpringsActTheirWays(t *testing.T) {
	for sense, want := range map[frame.Sense]string{
		frame.BothWays: "\n-3.0, -1.\n0., 0.\n3.0, 1.", frame.TensionOnly: "\n0.0, -1.\n0., 0.\n3.0, 1.", frame.CompressionOnly: "\n-3.0, -1.\n0., 0.\n0.0, 1.",
	} {
		w := writer{Deck: Deck{Model: frame.Model{Springs: []frame.Spring{{Stiffness: 3, Sense: sense}}}}}
		assert.Equal(t, want, w.table(0))
		w.Case.Without = []int{0}
		assert.Equal(t, "\n0.0, -1.\n0., 0.\n0.0, 1.", w.table(0))
	}
}

// failed notes that a test has failed.
type failed struct {
	testing.TB
	said bool
}

func (*failed) Helper() {}

func (*failed) Logf(string, ...any) {}

func (f *failed) Errorf(string, ...any) { f.said = true }

func (f *failed) Fatalf(string, ...any) { f.said = true; panic("ended") }

func TestAlike(t *testing.T) {
	for _, c := range []struct {
		ours, theirs []float64
		alike        bool
	}{
		{[]float64{200, 1}, []float64{200.9, 0.1}, true}, // 0.9 of 200
		{[]float64{200, 1}, []float64{200, 2.1}, false},
		{[]float64{-200}, []float64{-198.9}, false}, // 1.1 of 198.9
		{[]float64{0, 0}, []float64{0, 0}, true},
		{[]float64{1, math.NaN(), 1}, []float64{1, 1, 1}, false},
		{[]float64{1, 1, 1}, []float64{math.NaN(), 1, 1}, false},
	} {
		var f failed
		Alike(&f, "", c.ours, c.theirs)
		assert.Equal(t, c.alike, !f.said, "%v", c)
	}
	var f failed
	assert.PanicsWithValue(t, "ended", func() { Alike(&f, "", []float64{1}, nil) })
}

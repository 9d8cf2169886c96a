package frame

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// randomBand is a random positive definite band, here and as gonum stores it.
func randomBand(random *rand.Rand, n, b int) (band, *mat.SymBandDense) {
	here, there := newBand(n, b), mat.NewSymBandDense(n, b, nil)
	for i := range n {
		for j := i; j <= min(i+b, n-1); j++ {
			v := random.Float64() - 0.5
			if i == j {
				v = 1 + float64(b) // above the sum of its row: positive definite
			}
			here.add(j, i, v)
			there.SetSymBand(i, j, v)
		}
	}
	return here, there
}

func TestBandAgainstGonum(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for _, size := range []struct{ n, b int }{{1, 0}, {2, 1}, {5, 4}, {6, 2}, {40, 5}, {195, 5}, {195, 8}, {60, 59}} {
		k, k2 := randomBand(random, size.n, size.b)
		f := make([]float64, size.n)
		for i := range f {
			f[i] = random.NormFloat64()
		}

		var cholesky mat.BandCholesky
		require.True(t, cholesky.Factorize(k2))
		var want, dense mat.VecDense
		require.NoError(t, cholesky.SolveVecTo(&want, mat.NewVecDense(size.n, f)))
		require.NoError(t, dense.SolveVec(k2, mat.NewVecDense(size.n, f)))

		u := append([]float64(nil), f...)
		k.factor()
		k.solve(u)
		for i := range u {
			assert.InDelta(t, want.AtVec(i), u[i], 1e-13, "n %d b %d", size.n, size.b)
			assert.InDelta(t, dense.AtVec(i), u[i], 1e-13, "n %d b %d", size.n, size.b)
		}
	}
}

// The factor must give K back: UᵀU = K to a rounding for each of its b+1 terms.
func TestBandFactorMultipliesBack(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	const n, b = 50, 6
	k, want := randomBand(random, n, b)
	k.factor()
	u := func(i, j int) float64 {
		switch d := j - i; {
		case d < 0 || d > b:
			return 0
		case d == 0:
			return 1 / k.k[i*(b+1)]
		default:
			return k.k[i*(b+1)+d]
		}
	}
	for i := range n {
		for j := i; j <= min(i+b, n-1); j++ {
			sum := 0.0
			for l := range i + 1 {
				sum += u(l, i) * u(l, j)
			}
			assert.InDelta(t, want.At(i, j), sum, (b+1)*4*roundoff*(1+b), "%d, %d", i, j)
		}
	}
}

// A row of n masses tied by unit springs, the first also to the ground by a
// spring e, moves as one: xᵀKx/xᵀDx = e/(2n − 2 + e), as derived, for e so small
// that the row itself does not stretch. Without the ground, or with a ground that
// pushes, nothing resists.
func TestSoftestFindsTheMotionNothingResists(t *testing.T) {
	const n = 40
	row := func(e float64) band {
		k := newBand(n, 2)
		for i := range n - 1 {
			k.add(i, i, 1)
			k.add(i+1, i+1, 1)
			k.add(i, i+1, -1)
		}
		k.add(0, 0, e)
		return k
	}
	motion := make([]float64, n)
	for _, e := range []float64{1e-5, 1e-7, 1e-9, 1e-11} {
		k := row(e)
		k.factor()
		assert.InEpsilon(t, e/(2*n-2), k.softest(seed(n), motion), 0.05, "%v", e)
	}
	for _, e := range []float64{0, -1e-17, -1e-9} {
		k := row(e)
		k.factor()
		assert.Less(t, k.softest(seed(n), motion), leastShare/1000, "%v", e)
		for _, x := range motion {
			assert.InEpsilon(t, motion[0], x, 1e-6, "all masses move alike")
		}
	}
}

func TestSoftestIsAtLeastTheLeastEigenvalue(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	const n, b = 30, 4
	for range 20 {
		k, k2 := randomBand(random, n, b)
		scaled := mat.NewSymDense(n, nil)
		for i := range n {
			for j := i; j < n; j++ {
				scaled.SetSym(i, j, k2.At(i, j)/math.Sqrt(k2.At(i, i)*k2.At(j, j)))
			}
		}
		var eigen mat.EigenSym
		require.True(t, eigen.Factorize(scaled, false))
		k.factor()
		assert.GreaterOrEqual(t, k.softest(seed(n), make([]float64, n)), eigen.Values(nil)[0]*(1-1e-9))
	}
}

package curve

import "math"

// Nodes and weights of Gauss-Legendre quadrature with five points on [-1, 1]
// (Abramowitz and Stegun, table 25.4, from memory).
var (
	gaussNodes   = [5]float64{-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664}
	gaussWeights = [5]float64{0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189}
)

// root is where f changes sign between a and b, by bisection to the last bit.
func root(f func(float64) float64, a, b float64) float64 {
	fa := f(a)
	for {
		mid := a + (b-a)/2
		if mid == a || mid == b {
			return mid
		}
		if fm := f(mid); fm == 0 || math.Signbit(fm) != math.Signbit(fa) {
			b = mid
		} else {
			a = mid
		}
	}
}

package corner

// goldenSteps shrink an interval of a right angle to 3e-8 of it.
const goldenSteps = 36

// least is the least value of a function with one minimum between a and b, by
// golden section.
func least(f func(float64) float64, a, b float64) float64 {
	const g = 0.6180339887498949
	x, y := b-g*(b-a), a+g*(b-a)
	fx, fy := f(x), f(y)
	for range goldenSteps {
		if fx < fy {
			b, y, fy = y, x, fx
			x = b - g*(b-a)
			fx = f(x)
		} else {
			a, x, fx = x, y, fy
			y = a + g*(b-a)
			fy = f(y)
		}
	}
	return min(fx, fy)
}

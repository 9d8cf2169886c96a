package stack

import (
	"math"
	"math/rand/v2"
)

// sigmas is how many standard deviations a normal length's tolerance is.
const sigmas = 3

// steps is into how many parts of equal probability the normal shape is cut.
// Between their ends it is drawn uniformly, which moves no probability by more
// than 0.01%.
const steps = 1024

// grain is what the ends of the steps are rounded to. It is coarse enough that
// every processor rounds to the same, whatever its last bit is, and fine enough
// that no figure shows it.
const grain = 1.0 / (1 << 20)

// quantiles are the ends of the steps, in tolerances, from −1 to +1.
var quantiles = func() [steps + 1]float64 {
	var q [steps + 1]float64
	within := math.Erf(sigmas / math.Sqrt2) // probability of ±3 standard deviations
	for i := range q {
		z := math.Sqrt2 * math.Erfinv(within*(2*float64(i)/steps-1))
		q[i] = math.Round(z/sigmas/grain) * grain
	}
	return q
}()

// variance is that of a length of this shape, in squares of its tolerance.
//
// Uniform: t²/3. Normal, cut off at ±3σ: σ²·(1 − 2·3·φ(3)/(2Φ(3) − 1)), with
// σ = t/3. Source: closed forms of the truncated normal distribution.
func (s Shape) variance() float64 {
	if s == Uniform {
		return 1.0 / 3
	}
	density := math.Exp(-sigmas*sigmas/2.0) / math.Sqrt(2*math.Pi)
	return (1 - 2*sigmas*density/math.Erf(sigmas/math.Sqrt2)) / (sigmas * sigmas)
}

// draw is a deviation in tolerances, from −1 to +1.
func (s Shape) draw(r *rand.PCG) float64 {
	bits := r.Uint64()
	u := float64(bits>>11) / (1 << 53)
	if s == Uniform {
		return float64(2*u) - 1
	}
	u *= steps
	i := int(u)
	return quantiles[i] + float64((u-float64(i))*(quantiles[i+1]-quantiles[i]))
}

// Draws says how many sums are drawn, and from which seed.
type Draws struct {
	Seed  uint64
	Count int // at least 1
}

// Chance is a probability that was drawn.
type Chance struct {
	Share float64 // of the sums that hold
	// Error is the standard error of the share: √(p·(1 − p)/n), with p by the
	// rule of succession, (k + 1)/(n + 2), so that it is never nothing.
	Error float64
}

// AtLeast is the chance, from 0 to 1, that the sum is not less than a limit, in the
// unit of the lengths: the share of the drawn sums that reach it, with its standard
// error. No draws give NaN.
//
// The same seed gives the same figure on every machine: each term draws from a
// stream of its own, by adding and multiplying alone, and no product is fused with
// a sum.
//
// Source: Monte Carlo sampling, which is common practice for what no closed form
// covers; the tests hold it to the closed forms of uniform and of normal sums.
func (s Stack) AtLeast(limit float64, d Draws) Chance {
	sums := make([]float64, d.Count)
	for i, t := range s {
		r := rand.NewPCG(d.Seed, uint64(i))
		by := t.Sense * t.Tolerance
		if by == 0 {
			continue
		}
		for k := range sums {
			sums[k] += float64(by * t.deviation(r))
		}
	}
	// What is compared is how far below the nominal sum the limit is: a tie is
	// decided by the designer's figures and not by the order of adding.
	below, held := limit-s.Nominal(), 0
	for _, sum := range sums {
		if sum >= below {
			held++
		}
	}
	n := float64(d.Count)
	p := (float64(held) + 1) / (n + 2)
	return Chance{Share: float64(held) / n, Error: math.Sqrt(p * (1 - p) / n)}
}

// mostDrawn is how many parts of a term are drawn one by one. More are drawn as
// so many that deviate more each, for the same variance: both sums are normal
// but for their kurtosis, which moves a probability by no more than
// 1.2/mostDrawn/24·max|(x³ − 3x)·φ(x)|, 0.02%. Source: the Edgeworth
// series, from memory; a test compares with the normal distribution.
const mostDrawn = 128

// deviation is what all parts of a term are off together, in tolerances of one.
func (t Term) deviation(r *rand.PCG) float64 {
	if t.Shared {
		return float64(t.Count) * t.Shape.draw(r)
	}
	sum := 0.0
	for range min(t.Count, mostDrawn) {
		sum += t.Shape.draw(r)
	}
	if t.Count > mostDrawn {
		sum *= math.Sqrt(float64(t.Count) / mostDrawn)
	}
	return sum
}

// Package stack adds up lengths that each have a tolerance: at their worst, by
// root sum square, and by drawing them at random. It knows nothing of what the
// lengths belong to.
package stack

import "math"

// Shape is how a length lies within its tolerance.
type Shape uint8

// The shapes.
const (
	// Normal: the tolerance is three standard deviations, and nothing lies past
	// it.
	Normal Shape = iota + 1
	// Uniform: any value within the tolerance is as likely as another.
	Uniform
)

// Term is one length of a chain, or several alike.
type Term struct {
	Name      string
	Sense     float64 // +1 where it adds to the sum, −1 where it takes from it
	Count     int     // how many alike
	Nominal   float64 // of one
	Tolerance float64 // plus or minus, of one; not negative
	Shape     Shape
	// Shared has all Count deviate by the same amount, as parts off one form do.
	Shared bool
}

// Stack is a chain of lengths, all in one unit.
type Stack []Term

// Nominal is the sum with every length as designed, in the unit of the lengths: Σ
// s·n·L, 0 of no terms.
func (s Stack) Nominal() float64 {
	sum := 0.0
	for _, t := range s {
		sum += t.Sense * float64(t.Count) * t.Nominal
	}
	return sum
}

// Worst is how far the sum may be off, in the unit of the lengths, with every
// length at the worse end of its tolerance: T = Σ |s|·n·t. It holds whatever the
// shapes.
//
// Source: Scholz, Tolerance Stack Analysis Methods, 1995, arithmetic tolerancing.
func (s Stack) Worst() float64 {
	sum := 0.0
	for _, t := range s {
		sum += math.Abs(t.Sense) * float64(t.Count) * t.Tolerance
	}
	return sum
}

// RootSumSquare is T = √(Σ n·(s·t)²), in the unit of the lengths, with n² for n in
// a term whose parts deviate alike: about 99.7 % of sums stay within it if the
// lengths are independent, centred and about normal. It takes each tolerance as
// three standard deviations, so that fewer sums stay within it where several terms
// are uniform; [Stack.AtLeast] takes the shapes as they are.
//
// Source: Scholz, Tolerance Stack Analysis Methods, 1995, statistical tolerancing.
func (s Stack) RootSumSquare() float64 {
	sum := 0.0
	for _, t := range s {
		one := t.Sense * t.Tolerance
		sum += t.parts() * one * one
	}
	return math.Sqrt(sum)
}

// parts is what the number of parts of a term multiplies a variance by.
func (t Term) parts() float64 {
	n := float64(t.Count)
	if t.Shared {
		return n * n
	}
	return n
}

// variance is that of the whole term.
func (t Term) variance() float64 {
	one := t.Sense * t.Tolerance
	return t.parts() * one * one * t.Shape.variance()
}

// Shares are each term's part of the sum's variance, from 0 to 1 in the order of
// the terms, 1 together; all 0 where nothing varies.
func (s Stack) Shares() []float64 {
	out := make([]float64, len(s))
	total := 0.0
	for i, t := range s {
		out[i] = t.variance()
		total += out[i]
	}
	for i := range out {
		if total > 0 {
			out[i] /= total
		}
	}
	return out
}

// Deviation is the sum's standard deviation, in the unit of the lengths: √(Σ
// n·(s·t)²·v), with n² for n where the parts deviate alike and v the variance of
// the shape, 1/3 of a uniform term and 0.108 of a normal one cut off at its
// tolerance. The terms are independent of each other.
//
// Source: variances of independent terms add; closed forms of the uniform and the
// truncated normal distribution.
func (s Stack) Deviation() float64 {
	total := 0.0
	for _, t := range s {
		total += t.variance()
	}
	return math.Sqrt(total)
}

// Alike is the same stack with the parts of the terms of that name deviating
// together; unchanged where no term has it.
func (s Stack) Alike(name string) Stack {
	out := append(Stack{}, s...)
	for i := range out {
		out[i].Shared = out[i].Shared || out[i].Name == name
	}
	return out
}

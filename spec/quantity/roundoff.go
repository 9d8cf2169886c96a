package quantity

import "math"

// RoundOff is the share of a figure that the last bits of its arithmetic may come
// to. They differ between processors, between a length in millimetres and the same
// in inches, and between the two ends of what is alike, and must decide nothing: it
// is far above them, and far below what anyone measures.
const RoundOff = 1e-9

// Over reports whether a is more than b by more than round-off.
func Over(a, b float64) bool { return a-b > RoundOff*max(math.Abs(a), math.Abs(b)) }

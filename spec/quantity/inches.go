package quantity

import "fmt"

// InchText writes n parts of an inch as a spec does, in lowest terms: "1 1/16in",
// "-3/4in". Parts is a power of two.
func InchText(n, parts int) string {
	if n < 0 {
		return "-" + InchText(-n, parts)
	}
	whole, rest, of := lowest(n, parts)
	switch {
	case rest == 0:
		return fmt.Sprintf("%din", whole)
	case whole == 0:
		return fmt.Sprintf("%d/%din", rest, of)
	default:
		return fmt.Sprintf("%d %d/%din", whole, rest, of)
	}
}

// FeetText is InchText with feet from two feet on: "23 1/2in", "4ft 2in", "4ft".
func FeetText(n, parts int) string {
	if n < 0 {
		return "-" + FeetText(-n, parts)
	}
	feet, rest := n/(12*parts), n%(12*parts)
	switch {
	case feet < 2:
		return InchText(n, parts)
	case rest == 0:
		return fmt.Sprintf("%dft", feet)
	default:
		return fmt.Sprintf("%dft ", feet) + InchText(rest, parts)
	}
}

// lowest divides n parts of an inch, none below zero, into whole inches and a fraction
// in lowest terms.
func lowest[N int | int64](n, parts N) (whole, rest, of N) {
	whole, rest, of = n/parts, n%parts, parts
	for rest > 0 && rest%2 == 0 {
		rest, of = rest/2, of/2
	}
	return whole, rest, of
}

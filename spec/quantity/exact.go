package quantity

// What is exact by definition (NIST SP 811, from memory), in SI: m, kg, N, m/s2.
const (
	Inch       = 0.0254
	Foot       = 12 * Inch
	Pound      = 0.45359237
	Gravity    = 9.80665 // the standard acceleration of free fall
	PoundForce = Pound * Gravity
)

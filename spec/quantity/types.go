package quantity

// Value is a quantity of any kind. The zero Value, with no unit, is none.
type Value struct {
	SI   float64
	Unit Unit
}

// The kinds of quantity that a spec states, each in its SI unit.
type (
	Length      float64 // m
	Mass        float64 // kg
	Force       float64 // N
	Stress      float64 // Pa
	Density     float64 // kg/m3
	Temperature float64 // degrees Celsius
	Angle       float64 // rad
	Share       float64 // a fraction of one
)

// Value is the length in m.
func (q Length) Value() Value { return Value{float64(q), Metre} }

// Value is the mass in kg.
func (q Mass) Value() Value { return Value{float64(q), Kilogram} }

// Value is the force in N.
func (q Force) Value() Value { return Value{float64(q), Newton} }

// Value is the stress in Pa.
func (q Stress) Value() Value { return Value{float64(q), Pascal} }

// Value is the density in kg/m3.
func (q Density) Value() Value { return Value{float64(q), KilogramPerCubicMetre} }

// Value is the temperature in degrees Celsius.
func (q Temperature) Value() Value { return Value{float64(q), Celsius} }

// Value is the angle in rad.
func (q Angle) Value() Value { return Value{float64(q), Radian} }

// Value is the share as a fraction.
func (q Share) Value() Value { return Value{float64(q), Fraction} }

// read parses text into any of the kinds above.
func read[Q ~float64](q *Q, u Unit, text []byte) error {
	v, err := Parse(u, string(text))
	if err != nil {
		return err
	}
	*q = Q(v.SI)
	return nil
}

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Length) UnmarshalText(text []byte) error { return read(q, Metre, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Mass) UnmarshalText(text []byte) error { return read(q, Kilogram, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Force) UnmarshalText(text []byte) error { return read(q, Newton, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Stress) UnmarshalText(text []byte) error { return read(q, Pascal, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Temperature) UnmarshalText(text []byte) error { return read(q, Celsius, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Angle) UnmarshalText(text []byte) error { return read(q, Radian, text) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (q *Share) UnmarshalText(text []byte) error { return read(q, Fraction, text) }

// Package quantity reads and prints physical quantities as specs write them: a
// number with its unit and no space between, "11.2mm", "0.90kN", "13'-9 1/2\"".
// Inside the program every quantity is a float64 in SI.
package quantity

// Unit is the SI unit that a quantity is kept in.
type Unit uint8

// The units. From SquareMetre on they are only printed.
const (
	One Unit = iota + 1
	Metre
	Kilogram
	Newton
	Pascal
	KilogramPerCubicMetre
	Celsius
	Radian
	Fraction // a share of the arc, a relative humidity, a moisture content: printed as %

	SquareMetre
	CubicMetre
	KilogramPerSquareMetre
	NewtonMetre
	NewtonPerMetre
	Hour
	PerMetre
	MetreToTheFourth
	NewtonPerKilogram
)

// String is the unit as JSON prints it.
func (u Unit) String() string {
	return [...]string{
		One: "1", Metre: "m", Kilogram: "kg", Newton: "N", Pascal: "Pa", KilogramPerCubicMetre: "kg/m3",
		Celsius: "C", Radian: "rad", Fraction: "1", SquareMetre: "m2", CubicMetre: "m3",
		KilogramPerSquareMetre: "kg/m2", NewtonMetre: "N.m", NewtonPerMetre: "N/m", Hour: "h", PerMetre: "1/m",
		MetreToTheFourth: "m4", NewtonPerKilogram: "N/kg",
	}[u]
}

package spec

import "dryfit/spec/quantity"

// Leg is one leg of the route; which keys it has depends on its kind.
type Leg struct {
	Name     Field[string]          `toml:"name"`
	Kind     Field[LegKind]         `toml:"kind"`
	Width    Field[quantity.Length] `toml:"width"`
	Height   Field[quantity.Length] `toml:"height"`
	Length   Field[quantity.Length] `toml:"length"`
	Wall     Field[quantity.Length] `toml:"wall"`
	Before   Field[quantity.Length] `toml:"before"`
	After    Field[quantity.Length] `toml:"after"`
	Beside   Field[quantity.Length] `toml:"beside"`
	Onward   Field[quantity.Length] `toml:"onward"`
	Headroom Field[quantity.Length] `toml:"headroom"`
	Rise     Field[quantity.Length] `toml:"rise"`
	Going    Field[quantity.Length] `toml:"going"`
	Risers   Field[int]             `toml:"risers"`
	Landing  Landing                `toml:"landing"`
	Turn     Field[string]          `toml:"turn"`    // "none", "quarter" or "half"
	Between  Field[string]          `toml:"between"` // "wall" or "open"
	Ends     Field[string]          `toml:"ends"`    // "corridor" or "open"
	Door     CarDoor                `toml:"door"`
	Inside   Box                    `toml:"inside"`
	Capacity Field[quantity.Mass]   `toml:"capacity"`
	Tried    Trial                  `toml:"tried"`
}

// Trial is what was tried at a leg.
type Trial struct {
	Table
	Date  Field[string] `toml:"date"`
	By    Field[string] `toml:"by"`
	How   Field[string] `toml:"how"`
	Until Field[string] `toml:"until"`
}

// Landing is the floor of a stair's landing, and where the flight meets it.
type Landing struct {
	Table
	Width  Field[quantity.Length] `toml:"width"`
	Length Field[quantity.Length] `toml:"length"`
	Left   Field[quantity.Length] `toml:"left"`
}

// CarDoor is the clear opening of a vehicle or an elevator, and where it is in the
// end wall.
type CarDoor struct {
	Table
	Width  Field[quantity.Length] `toml:"width"`
	Height Field[quantity.Length] `toml:"height"`
	Left   Field[quantity.Length] `toml:"left"`
	Sill   Field[quantity.Length] `toml:"sill"`
}

// Box is a clear inside.
type Box struct {
	Table
	Length Field[quantity.Length] `toml:"length"`
	Width  Field[quantity.Length] `toml:"width"`
	Height Field[quantity.Length] `toml:"height"`
}

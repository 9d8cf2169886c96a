package spec

import "dryfit/spec/quantity"

// Lift is the hand-cranked lifts.
type Lift struct {
	Table
	Units    Field[int]              `toml:"units"`
	Capacity Field[quantity.Mass]    `toml:"capacity"`
	Reach    Field[quantity.Length]  `toml:"reach"`
	Stowed   Field[quantity.Length]  `toml:"stowed"`
	Stations Field[[]quantity.Share] `toml:"stations"`
	Saddle   Field[bool]             `toml:"saddle"`
	Base     LiftBase                `toml:"base"`
}

// LiftBase is what one lift stands on.
type LiftBase struct {
	Table
	Along  Field[quantity.Length] `toml:"along"`
	Across Field[quantity.Length] `toml:"across"`
	Heel   Field[quantity.Length] `toml:"heel"`
}

// Crew is who carries.
type Crew struct {
	Table
	People Field[int]    `toml:"people"`
	Aids   Field[string] `toml:"aids"` // "none", "dollies"
}

// Wrap is the padding while travelling.
type Wrap struct {
	Table
	Allowance Field[quantity.Length] `toml:"allowance"`
}

package spec

import "dryfit/spec/quantity"

// Fitting is something let into a coffer.
type Fitting struct {
	Name   Field[string]        `toml:"name"`
	Kind   Field[string]        `toml:"kind"` // "luminaire", "sprinkler", "diffuser", "other"
	Coffer Field[[]int]         `toml:"coffer"`
	Size   FittingSize          `toml:"size"`
	At     Offset               `toml:"at"`
	Mass   Field[quantity.Mass] `toml:"mass"`
}

// FittingSize is a diameter, or a width around the arc and a length along the
// axis.
type FittingSize struct {
	Table
	Diameter Field[quantity.Length] `toml:"diameter"`
	Width    Field[quantity.Length] `toml:"width"`
	Length   Field[quantity.Length] `toml:"length"`
}

// Offset is measured from the coffer's centre; either may be negative.
type Offset struct {
	Table
	Around Field[quantity.Length] `toml:"around"`
	Along  Field[quantity.Length] `toml:"along"`
}

package spec

import "dryfit/spec/quantity"

// Survey is the room as measured, from a straight baseline on the floor.
type Survey struct {
	Table
	Date      Field[string]            `toml:"date"` // a date, 2026-11-20
	By        Field[string]            `toml:"by"`
	Accuracy  Field[quantity.Length]   `toml:"accuracy"` // plus or minus, of each reading
	Near      SurveySides              `toml:"near"`     // where the near end wall meets each side wall, along the baseline
	Far       SurveySides              `toml:"far"`
	Diagonals Field[[]quantity.Length] `toml:"diagonals"` // near left to far right, near right to far left
	Springing Field[quantity.Length]   `toml:"springing"` // height of the design springing above the level line
	Station   List[Station]            `toml:"station"`
}

// SurveySides is a reading at each side wall.
type SurveySides struct {
	Table
	Left  Field[quantity.Length] `toml:"left"`
	Right Field[quantity.Length] `toml:"right"`
}

// Station is what was measured at a place along the baseline.
type Station struct {
	At      Field[quantity.Length] `toml:"at"`
	Left    Field[quantity.Length] `toml:"left"`  // from the baseline to the left wall, at the springing
	Right   Field[quantity.Length] `toml:"right"` // to the right wall
	Seat    SurveySides            `toml:"seat"`  // from the level line to where the springing will sit
	Framing Field[quantity.Length] `toml:"framing"`
}

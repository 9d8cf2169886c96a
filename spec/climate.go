package spec

import "dryfit/spec/quantity"

// Climate is the air that the wood lives in.
type Climate struct {
	Table
	Shop  Air       `toml:"shop"`
	Dry   Air       `toml:"dry"`
	Wet   Air       `toml:"wet"`
	Above RoofSpace `toml:"above"`
}

// Air is a temperature and a relative humidity.
type Air struct {
	Table
	Temperature Field[quantity.Temperature] `toml:"temperature"`
	Humidity    Field[quantity.Share]       `toml:"humidity"`
}

// RoofSpace is the air behind the ceiling.
type RoofSpace struct {
	Table
	Dry Air `toml:"dry"`
	Wet Air `toml:"wet"`
}

// Finish says which faces are sealed.
type Finish struct {
	Table
	Sides Field[string] `toml:"sides"` // "all", "seen"
}

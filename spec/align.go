package spec

import "dryfit/spec/quantity"

// Align is a window or a door in a side wall, whose middle the coffers are to meet.
type Align struct {
	Name Field[string]          `toml:"name"`
	At   Field[quantity.Length] `toml:"at"` // of its middle, from the near end wall
}

package spec

// Profile is the shape of a vault's intrados, as a spec names it.
type Profile string

// The profiles.
const (
	Flat         Profile = "flat"
	Segmental    Profile = "segmental"
	Semicircular Profile = "semicircular"
	ThreeCentred Profile = "three-centred"
	Pointed      Profile = "pointed"
	Elliptical   Profile = "elliptical"
)

// Profiles are all of them.
func Profiles() []Profile {
	return []Profile{Flat, Segmental, Semicircular, ThreeCentred, Pointed, Elliptical}
}

// LegKind is the kind of one leg of the route, as a spec names it.
type LegKind string

// The kinds of leg. The room itself is none of them: its leg follows from [room].
const (
	Vehicle  LegKind = "vehicle"
	Door     LegKind = "door"
	Corridor LegKind = "corridor"
	Corner   LegKind = "corner"
	Stair    LegKind = "stair"
	Elevator LegKind = "elevator"
)

// LegKinds are all of them.
func LegKinds() []LegKind {
	return []LegKind{Vehicle, Door, Corridor, Corner, Stair, Elevator}
}

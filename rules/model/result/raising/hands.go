package raising

// PersonMass is the mass that one person lifts, in kg, StandOff what is left over when
// a panel stands off to slide onto tenons, and Level how far one end of a panel may be
// over the other while it goes up, in m: the built-in limits of transit.weight,
// close.slide and install.tilt.
const (
	PersonMass = 25
	StandOff   = 0.003
	Level      = 0.020
)

// The names of those limits, as standards write them.
const (
	personLimit   = "transit.weight.person"
	standOffLimit = "close.slide.clearance"
	levelLimit    = "install.tilt.level"
)

// HandsBelow is the height, in m, up to which the revised equation of NIOSH 94-110 goes
// for a lift by hand: no figure here holds above it.
const HandsBelow = 1.75

// Together is the mass, in kg, that so many people lift, from 1, of what one does:
// all of it for one, 2/3 of the sum for two, 1/2 for three. For more the 1/2 of
// three is kept, though the source says that teams of more than four are unlikely
// to work. Source: HSE L23, paragraph 120.
func Together(people int, one float64) float64 {
	return one * float64(people) * team(people)
}

// team is what people manage together, of the sum of each alone: HSE L23,
// paragraph 120.
func team(people int) float64 {
	switch people {
	case 1:
		return 1
	case 2:
		return 2.0 / 3
	default:
		return 0.5
	}
}

// Lifters is the least number of people, from 1, that lift a mass, of what one
// lifts, both in kg, by [Together]. What one lifts must be positive, and the mass
// finite: no number would do otherwise, and it would not end.
func Lifters(mass, one float64) int {
	n := 1
	for Together(n, one) < mass {
		n++
	}
	return n
}

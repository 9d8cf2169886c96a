// Package timber holds what is published of wood: properties of species and
// sheet goods, density, moisture and movement, what bends to which radius, what
// sloping grain costs.
//
// Everything is in SI; moisture contents, relative humidities and ratios are
// fractions. Strengths are averages of clear wood, not design values.
package timber

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/kernel/cite"
)

// Group is hardwood or softwood.
type Group uint8

// The groups.
const (
	Hardwood Group = iota + 1
	Softwood
)

// Species is one species of wood.
type Species struct {
	Name    string
	Aliases []string
	Group   Group

	// Specific gravity, ovendry weight over volume green and at 12 % moisture.
	GreenSG, SG12 float64
	// Modulus of elasticity, of a centre-loaded beam, and strengths, at 12 %, Pa.
	MOE, MOR                      float64
	CompressionAlong, Compression float64
	Shear                         float64
	Strength                      cite.Source
	// Change of a size, as a fraction of it, by one whole of moisture content:
	// 0.18 is the handbook's 0.00180 by one percent. Zero: no figure.
	RadialChange, TangentialChange float64
	Change                         cite.Source
	// Shrinkage from green to ovendry, fractions.
	RadialShrinkage, TangentialShrinkage float64
	Shrinkage                            cite.Source
	// ShearRatio is the lesser of the two long-grain shear moduli, by the
	// modulus of elasticity.
	ShearRatio float64
	ShearFrom  cite.Source
	// Bends is the least radius by thickness of wood that is steamed; zero: no
	// figure.
	Bends Bends
	// FlameSpread is the index of bare wood 19 mm thick, as it is printed, and
	// FlameClass its class by IBC 803 in the test of ASTM E84; empty: no figure.
	FlameSpread, FlameClass string
	FlameFrom               cite.Source
}

// UnknownError says that no data are held under a name.
type UnknownError struct {
	What string // "species" or "sheet material"
	Name string
	Near string   // the nearest known name, or ""
	All  []string // all that are known
}

// Error suggests the nearest name, or lists all where none is near.
func (e *UnknownError) Error() string {
	if e.Near != "" {
		return fmt.Sprintf("no data on the %s %q; is it %q?", e.What, e.Name, e.Near)
	}
	return fmt.Sprintf("no data on the %s %q; there are data on %s", e.What, e.Name, strings.Join(e.All, ", "))
}

// Own is a species that someone else vouches for: specific gravity and moduli at
// 12 %, change coefficients by one percent as the handbook prints them, zero
// where there is none.
func Own(name string, g Group, sg12, moe, mor, radial, tangential float64, from cite.Source) Species {
	s := Species{
		Name: name, Group: g, SG12: sg12, MOE: moe, MOR: mor, Strength: from,
		ShearRatio: 1.0 / 16, ShearFrom: noRatio,
	}
	return s.movement(radial, tangential, from)
}

// Lookup finds a species by its name or an alias, in any case. A name that is not
// held is an *UnknownError, which suggests the nearest.
func Lookup(name string) (Species, error) {
	for _, s := range species {
		if named(name, s.Name, s.Aliases) {
			return s, nil
		}
	}
	var words []string
	for _, s := range species {
		words = append(append(words, s.Name), s.Aliases...)
	}
	return Species{}, unknown("species", name, words, Names())
}

// Names lists the species.
func Names() []string {
	var names []string
	for _, s := range species {
		names = append(names, s.Name)
	}
	return names
}

func named(name, full string, aliases []string) bool {
	is := func(known string) bool { return strings.EqualFold(known, strings.TrimSpace(name)) }
	return is(full) || slices.ContainsFunc(aliases, is)
}

// unknown suggests the known word that shares the most letter pairs.
func unknown(what, name string, words, all []string) error {
	best, most := "", 0.5
	for _, w := range words {
		if s := likeness(strings.ToLower(name), strings.ToLower(w)); s > most {
			best, most = w, s
		}
	}
	return &UnknownError{What: what, Name: name, Near: best, All: all}
}

// likeness is Dice's coefficient over pairs of letters, from 0 to 1.
func likeness(a, b string) float64 {
	pairs := map[string]int{}
	for i := range max(len(a)-1, 0) {
		pairs[a[i:i+2]]++
	}
	shared := 0
	for i := range max(len(b)-1, 0) {
		if pairs[b[i:i+2]] > 0 {
			pairs[b[i:i+2]]--
			shared++
		}
	}
	return 2 * float64(shared) / float64(max(len(a)+len(b)-2, 1))
}

// Cut is how the boards or strips are sawn.
type Cut uint8

// The cuts.
const (
	VerticalGrain Cut = iota + 1 // quarter sawn: the board's width is radial
	FlatGrain                    // the board's width is tangential
	MixedGrain                   // either
)

// Direction is which size of a board moves.
type Direction uint8

// The directions.
const (
	OverWidth Direction = iota + 1
	OverThickness
)

// Across is the change coefficient, by one whole of moisture content, and the
// shrinkage from green to ovendry, a fraction, of one size of a board: radial of
// the width of vertical grain and of the thickness of flat grain, tangential
// otherwise. Of mixed grain it is the larger of the two, since either may come. 0
// where no figure is held. Source: Change and Shrinkage of the species.
func (s Species) Across(c Cut, d Direction) (change, shrinkage float64) {
	radial := (c == VerticalGrain) == (d == OverWidth)
	if c != MixedGrain && radial {
		return s.RadialChange, s.RadialShrinkage
	}
	if c == MixedGrain {
		return max(s.RadialChange, s.TangentialChange), max(s.RadialShrinkage, s.TangentialShrinkage)
	}
	return s.TangentialChange, s.TangentialShrinkage
}

// shearCorrection: the tabulated modulus is of a beam whose span is fourteen
// times its depth, and rises by a tenth once shear is taken out of it (Wood
// Handbook, 2021, table 5-3b, footnote c).
const shearCorrection = 1.10

// TrueMOE is the modulus of elasticity free of shear, in Pa, for a computation that
// takes shear into account itself: the tabulated one and a tenth. 0 where no
// strengths are held. Source: Wood Handbook, FPL-GTR-282, table 5-3b, footnote c.
func (s Species) TrueMOE() float64 { return shearCorrection * s.MOE }

// ShearModulus is along the grain, in Pa: [Species.TrueMOE] times ShearRatio. 0
// where no strengths are held. Source: ShearFrom.
func (s Species) ShearModulus() float64 { return s.ShearRatio * s.TrueMOE() }

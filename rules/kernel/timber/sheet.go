package timber

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/cite"
)

// SheetMaterial is a sheet material.
type SheetMaterial struct {
	Name        string
	Aliases     []string
	Density     float64 // kg/m3, on the actual thickness, within 15 %
	DensityFrom cite.Source
	// Least radius by thickness, with the long edge of the sheet bent (the face
	// grain is bent with it) and with the short edge bent; thinnest first. Nil:
	// no figure.
	LongBent, ShortBent []BendRow
	BendFrom            cite.Source
	// The same whatever the thickness, as a maker gives it for his one sheet;
	// zero: none.
	LongBentAny, ShortBentAny float64
	// Sold are the thicknesses that a sheet is named by and is less than, thinnest
	// first; none: a sheet is as thick as it is named.
	Sold     []SoldRow
	SoldFrom cite.Source
	// Within is what a sheet may be thicker or thinner than its actual thickness,
	// in m; zero: no figure.
	Within     float64
	WithinFrom cite.Source
	// MOE is the panel's average, Pa; zero: no figure.
	MOE     float64
	MOEFrom cite.Source
	// Emission is the most formaldehyde that the material may give off, by
	// thickness, the thinnest first; none: no limit is known.
	Emission []EmissionRow
}

// SoldRow is a thickness by name and the actual one, both in m.
type SoldRow struct{ Named, Actual float64 }

// Actual is the actual thickness, in m, of a sheet that is named by a thickness, in
// m, within a tenth of a millimetre: the named one where the material has no other
// for that name. Source: SoldFrom.
func (s SheetMaterial) Actual(named float64) float64 {
	for _, row := range s.Sold {
		if math.Abs(named-row.Named) <= rowSlack {
			return row.Actual
		}
	}
	return named
}

// EmissionRow is a limit on the formaldehyde of sheets up to a thickness.
type EmissionRow struct {
	UpTo float64 // m, included
	Most float64 // parts per million
	From cite.Source
}

// MostEmission is the limit on a sheet of a thickness, in m, and whether one is
// known: false for a material without limits, and past its thickest row. Source:
// From of the row.
func (s SheetMaterial) MostEmission(thickness float64) (EmissionRow, bool) {
	for _, row := range s.Emission {
		if thickness <= row.UpTo {
			return row, true
		}
	}
	return EmissionRow{}, false
}

// anyThickness is a limit that holds for sheets of every thickness.
func anyThickness(most float64, from cite.Source) []EmissionRow {
	return []EmissionRow{{UpTo: math.Inf(1), Most: most, From: from}}
}

// thinMDF is the thickness up to which fibreboard is thin, for the limits on
// formaldehyde: 8 mm, 40 CFR 770.3.
const thinMDF = 0.008

// BendRow is one row of a bend table, both in m.
type BendRow struct{ Thickness, Radius float64 }

const (
	inch = 0.0254
	foot = 0.3048
	// lbft3 is a pound by cubic foot, in kg/m3.
	lbft3 = 0.45359237 / (foot * foot * foot)
)

func bendTable(unit float64, rows ...[2]float64) []BendRow {
	table := make([]BendRow, len(rows))
	for i, r := range rows {
		table[i] = BendRow{r[0] * inch, r[1] * unit}
	}
	return table
}

var (
	plywoodWeights = cite.RetailPlywood.At("30 to 33lb/ft3")
	// Both ways round, dry; the mills' figures where they give a range, the
	// larger.
	bendable = bendTable(inch, [2]float64{1.0 / 8, 4}, [2]float64{1.0 / 4, 10}, [2]float64{5.0 / 16, 12}, [2]float64{3.0 / 8, 12})
	// Knot-free or wetted sheets go tighter.
	plywoodLong = bendTable(foot, [2]float64{1.0 / 4, 5}, [2]float64{5.0 / 16, 6}, [2]float64{3.0 / 8, 8},
		[2]float64{1.0 / 2, 12}, [2]float64{5.0 / 8, 16}, [2]float64{3.0 / 4, 20})
	plywoodShort = bendTable(foot, [2]float64{1.0 / 4, 2}, [2]float64{5.0 / 16, 2}, [2]float64{3.0 / 8, 3},
		[2]float64{1.0 / 2, 6}, [2]float64{5.0 / 8, 8}, [2]float64{3.0 / 4, 12})
	// At 10 % moisture; the face grain bent, and not. 0.160 in and what is thicker
	// than 0.185 in is of five plies, the rest of three.
	aircraftLong = bendTable(inch, [2]float64{0.035, 2}, [2]float64{0.07, 5.2}, [2]float64{0.1, 8.6}, [2]float64{0.125, 12},
		[2]float64{0.155, 16}, [2]float64{0.16, 17}, [2]float64{0.185, 20}, [2]float64{0.19, 21}, [2]float64{0.225, 27},
		[2]float64{0.25, 31}, [2]float64{0.315, 43}, [2]float64{0.375, 54})
	aircraftShort = bendTable(inch, [2]float64{0.035, 1.1}, [2]float64{0.07, 3.2}, [2]float64{0.1, 5.2}, [2]float64{0.125, 7.1},
		[2]float64{0.155, 10}, [2]float64{0.16, 11}, [2]float64{0.185, 13}, [2]float64{0.19, 14}, [2]float64{0.225, 17},
		[2]float64{0.25, 20}, [2]float64{0.315, 28}, [2]float64{0.375, 36})
)

var sheets = []SheetMaterial{
	{
		Name: "bendable plywood", Aliases: []string{"flexible plywood", "bending plywood"},
		Density: 35 * lbft3, DensityFrom: cite.CommonPractice(),
		LongBent: bendable, ShortBent: bendable, BendFrom: cite.CommonPractice(),
		Emission: anyThickness(0.05, cite.TSCATitleVI.At("hardwood plywood")),
	},
	{
		Name: "softwood plywood", Aliases: []string{"plywood", "Douglas-fir plywood"},
		Density: 33 * lbft3, DensityFrom: plywoodWeights,
		LongBent: plywoodLong, ShortBent: plywoodShort, BendFrom: cite.APAConcreteForm.At("curving plywood"),
		Sold:     []SoldRow{{3 * inch / 8, 11 * inch / 32}, {inch / 2, 15 * inch / 32}, {3 * inch / 4, 23 * inch / 32}},
		SoldFrom: cite.PlywoodSizes.At("sanded, 3/8in is 11/32in, 1/2in is 15/32in, 3/4in is 23/32in"),
		Within:   inch / 64, WithinFrom: cite.PS1.At("sanded panels up to 3/4in").FromMemory(),
		MOE: 6.96e9, MOEFrom: cite.WoodHandbook2010.At("table 12-1").FromMemory(),
	},
	{
		Name:    "hardwood plywood",
		Density: 33.75 * lbft3, DensityFrom: cite.RetailPlywood.At("1/2in, 45lb a sheet"),
		Emission: anyThickness(0.05, cite.TSCATitleVI.At("hardwood plywood")),
	},
	{
		Name: "aircraft plywood", Aliases: []string{"aircraft birch plywood"},
		Density: 45 * lbft3, DensityFrom: cite.CommonPractice(),
		LongBent: aircraftLong, ShortBent: aircraftShort, BendFrom: cite.FAA4313.At("table 1-2, 10% moisture"),
		Emission: anyThickness(0.05, cite.TSCATitleVI.At("hardwood plywood")),
	},
	{
		Name: "MDF", Aliases: []string{"medium density fibreboard", "medium density fiberboard"},
		Density: 50 * lbft3, DensityFrom: cite.RetailPlywood.At("1/2in, 66.7lb a sheet"),
		MOE: 3.59e9, MOEFrom: cite.WoodHandbook2010.At("table 12-1").FromMemory(),
		Emission: append([]EmissionRow{{UpTo: thinMDF, Most: 0.13, From: cite.TSCATitleVI.At("thin MDF, 8mm or less")}},
			anyThickness(0.11, cite.TSCATitleVI.At("MDF"))...),
	},
	{
		Name:    "particleboard",
		Density: 45 * lbft3, DensityFrom: cite.CommonPractice(),
		MOE: 2.76e9, MOEFrom: cite.WoodHandbook2010.At("table 12-1").FromMemory(),
		Emission: anyThickness(0.09, cite.TSCATitleVI.At("particleboard").FromMemory()),
	},
}

// LookupSheet finds a sheet material by its name or an alias, in any case. A name
// that is not held is an *UnknownError, which suggests the nearest.
func LookupSheet(name string) (SheetMaterial, error) {
	var words, all []string
	for _, s := range sheets {
		if named(name, s.Name, s.Aliases) {
			return s, nil
		}
		words = append(append(words, s.Name), s.Aliases...)
		all = append(all, s.Name)
	}
	return SheetMaterial{}, unknown("sheet material", name, words, all)
}

// SheetNames lists the sheet materials.
func SheetNames() []string {
	var names []string
	for _, s := range sheets {
		names = append(names, s.Name)
	}
	return names
}

// rowSlack is how far past a row's thickness a sheet is still of that row: the
// tables' own metric sizes are rounded to a tenth of a millimetre (1/4 in is
// printed as 6.4 mm), and what a mill's sheet is off is within its nominal size.
const rowSlack = 0.0001

// LeastRadius is the least radius, in m, that a sheet of a thickness, in m, bends
// to dry, on its concave face. The thickness is the nominal one, as the tables have
// it. Between two rows the thicker one holds, since the tables print no rule for
// what lies between. A maker's one figure for his sheet holds whatever the
// thickness.
//
// Errors. A *RangeError outside the table, more than a tenth of a millimetre, and
// for NaN; for a material without a table an error that says so. Source: BendFrom.
func (s SheetMaterial) LeastRadius(thickness float64, longBent bool) (float64, error) {
	table, whatever := s.ShortBent, s.ShortBentAny
	if longBent {
		table, whatever = s.LongBent, s.LongBentAny
	}
	if whatever > 0 {
		return whatever, nil
	}
	if len(table) == 0 {
		return 0, fmt.Errorf("dryfit has no bend table for %s; put the maker's figure into the standards", s.Name)
	}
	reach := RangeError{
		What: "thickness", Value: thickness, From: table[0].Thickness, To: table[len(table)-1].Thickness,
		Unit: "m", Published: "the bend table of " + s.Name,
	}
	for _, row := range table {
		if thickness <= row.Thickness+rowSlack && thickness >= reach.From-rowSlack {
			return row.Radius, nil
		}
	}
	return 0, &reach
}

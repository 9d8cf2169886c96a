package study

import (
	"math"

	"dryfit/rules/model/result/hanging"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// Better says which way a figure is better.
type Better int8

// The ways.
const (
	Neither Better = iota
	Lower
	Higher
)

// String is the way as reports print it, empty for neither.
func (b Better) String() string { return [...]string{Neither: "", Lower: "lower", Higher: "higher"}[b] }

// Column is one figure of the table.
type Column struct {
	Key    string // as --sort and --weigh name it
	Head   string // short, over a column
	Name   string
	Unit   quantity.Unit
	Better Better
	// Of is the figure of a sheet in SI; NaN where it has none. It is nil of a column
	// that is a figure of the calculation sheet by its key.
	Of func(*review.Assessment) float64
}

var none = math.NaN()

// Aside reports whether a column is shown only to who aims at it.
func (c Column) Aside() bool { return c.Key == longSide || c.Key == "coffers" }

// columns are all figures of the table, in its order.
var columns = []Column{
	{"ratio", "ratio", "module ratio", quantity.One, Lower, func(s *review.Assessment) float64 { return s.Ceiling.Grid.Ratio() }},
	{longSide, "long side", "module along by module around", quantity.One, Neither, func(s *review.Assessment) float64 {
		return s.Ceiling.Grid.ModuleAlong.Get() / s.Ceiling.Grid.ModuleAround.Get()
	}},
	{"coffers", "coffers", "coffers", quantity.One, Neither, func(s *review.Assessment) float64 {
		return float64(s.Ceiling.Grid.Around.Get() * s.Ceiling.Grid.Along.Get())
	}},
	{"module-around", "module around", "module around", quantity.Metre, Neither, func(s *review.Assessment) float64 { return s.Ceiling.Grid.ModuleAround.Get() }},
	{"module-along", "module along", "module along", quantity.Metre, Neither, func(s *review.Assessment) float64 { return s.Ceiling.Grid.ModuleAlong.Get() }},
	{"length", "panel length", "panel length", quantity.Metre, Neither, func(s *review.Assessment) float64 { return s.Ceiling.Panel.Length.Get() }},
	{"width", "panel width", "panel width", quantity.Metre, Neither, func(s *review.Assessment) float64 { return s.Ceiling.Panel.Width.Get() }},
	{"height", "panel height", "panel height", quantity.Metre, Neither, func(s *review.Assessment) float64 { return s.Ceiling.Panel.Height.Get() }},
	{"mass", "panel mass", "panel mass", quantity.Kilogram, Lower, func(s *review.Assessment) float64 { return s.Ceiling.Panel.Mass.Get() }},
	{"strap", "worst strap", "worst strap force", quantity.Newton, Lower, worstStrap},
	{"share", "of allowable", "worst strap's share of its allowable", quantity.Fraction, Lower, strapShare},
	{"sag", "sag", "sag as first hung", quantity.Metre, Lower, sag},
	{"sheets", "sheets", "skin sheets to buy", quantity.One, Lower, sheetsBought},
	{"joints", "field joints", "field joints", quantity.One, Lower, func(s *review.Assessment) float64 { return float64(s.Ceiling.Seam.Tenons.Get()) }},
	{"margin", "transit margin", "least margin on the route", quantity.Metre, Higher, margin},
	{"gap", "last gap", "last gap as designed", quantity.Metre, Neither, lastGap},
	{"holds", "holds", "holds", quantity.One, Lower, func(s *review.Assessment) float64 { return float64(s.Counts.Held) }},
	{"queries", "queries", "queries", quantity.One, Lower, func(s *review.Assessment) float64 { return float64(s.Counts.Queried) }},
}

func worstStrap(s *review.Assessment) float64 {
	cases, err := s.Results.Hanging().Envelope()
	if err != nil {
		return none
	}
	force, _, _ := hanging.Worst(cases)
	return force
}

func strapShare(s *review.Assessment) float64 {
	strap := s.Ceiling.Strap
	if !strap.Allowable.Given() {
		return none
	}
	return worstStrap(s) / strap.Allowable.Load.Get()
}

func sag(s *review.Assessment) float64 {
	first := s.Results.Hanging().First.Get()
	if first.Err != nil {
		return none
	}
	return first.Is.Sag.Drop
}

func margin(s *review.Assessment) float64 {
	least := none
	for _, l := range s.Results.Carrying() {
		if m := l.Way.Get().Margin; !(m >= least) {
			least = m
		}
	}
	return least
}

func sheetsBought(s *review.Assessment) float64 {
	n := s.Results.Shop().Sheets.Get()
	if n.Err != nil {
		return none
	}
	return float64(n.Count + n.TooLarge)
}

// lastGap is as designed.
func lastGap(s *review.Assessment) float64 {
	if e, ok := s.Results.Closing().Ends(); ok {
		return e.Last.Get()
	}
	return none
}

// Weighed are the aims where nothing else is asked for, which only a shop would argue
// with: what is lifted and carried, what hangs on a strap, what is closed overhead,
// and what is left to answer. The look is not, which is a matter of taste; nor is the
// margin on the way in: past what holds it settles nothing, and would keep an option
// for a tenth of a millimetre.
var Weighed = []string{"mass", "strap", "joints", "queries"}

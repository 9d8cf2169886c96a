// Package engine says what a rule is, what it finds, and how a list of rules is
// run over a ceiling. It prints nothing, and knows no file and no clock.
package engine

import (
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// Rule is one thing that is checked: all that a reader, a report or a page
// needs to know of it, and one function.
type Rule struct {
	ID       string   // family and name: "bend.lamination"; never used again for another rule
	Title    string   // what holds where the rule finds nothing
	Why      string   // what goes wrong otherwise
	Severity Severity // the most that a finding of it may say
	Needs    []string // keys of the spec without which it is not checked
	Quiet    bool     // without the first of these nothing is said of it, unless it is required
	Figures  []string // keys of the calculation sheet that it compares
	Limits   []Limit
	Basis    Basis
	RefersTo string // who decides what it refers; empty of a rule that refers nothing
	// Always marks a rule that finds something in every spec that it is
	// checked on, such as what is always referred. It has no passing case.
	Always bool
	Check  func(*Pass)
}

// Those that a rule may refer to.
const (
	ToEngineer       = "licensed engineer"
	ToAuthority      = "authority having jurisdiction"
	ToElectrician    = "licensed electrical trade"
	ToFireProtection = "licensed fire protection trade"
)

// Limit is a figure that a rule compares with, and that standards may set.
type Limit struct {
	Key    string // within the rule: "ratio" of "bend.lamination"
	Title  string
	Value  quantity.Value // the built-in figure; a NaN where only standards give one
	Sense  Sense
	Lowest float64 // physical range, in SI, both ends allowed
	Most   float64 // likewise
	Source cite.Source
}

// Sense says on which side of the limit the measured value must be.
type Sense uint8

// The two sides.
const (
	AtLeast Sense = iota + 1
	AtMost
)

// Basis is what a rule rests on.
type Basis struct {
	Formula string
	Symbols []Symbol
	Valid   string      // where the formula holds
	Source  cite.Source // its standing is the basis's own
}

// Symbol explains one symbol of a formula.
type Symbol struct {
	Name, Means, Unit string
}

// Full is the name of a rule's limit, as standards write it.
func (r *Rule) Full(limit string) string { return r.ID + "." + limit }

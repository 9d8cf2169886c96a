// Package engine says what a rule is, what it finds, and how a list of rules is
// run over a ceiling. It prints nothing, and knows no file and no clock.
package engine

import (
	"io/fs"
	"strings"

	"golang.org/x/tools/txtar"

	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// Severity is what a finding means for the spec.
type Severity uint8

// The severities, and there are no others.
const (
	// Note: worth knowing.
	Note Severity = iota + 1
	// Query: buildable, but outside the standards; to be answered.
	Query
	// Hold: cannot be built, carried, raised or closed as specified.
	Hold
	// Refer: for a licensed engineer, the authority or the local code. It is
	// neither accepted away nor switched off.
	Refer
)

// String is the word that reports print.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Query:
		return "query"
	case Hold:
		return "hold"
	case Refer:
		return "refer"
	default:
		return "no severity"
	}
}

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
	Most   float64
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

// Family is the rules of one subject, in report order, with the cases that
// show each failing and passing: one archive a rule, "testdata/<name>.txtar".
type Family struct {
	Name  string
	Title string
	Rules []Rule
	Cases fs.FS
}

// Full is the name of a rule's limit, as standards write it.
func (r *Rule) Full(limit string) string { return r.ID + "." + limit }

// List is the family's rules, as they are run.
func (f Family) List() []*Rule {
	list := make([]*Rule, len(f.Rules))
	for i := range f.Rules {
		list[i] = &f.Rules[i]
	}
	return list
}

// Case is one of the specs that show a rule at work: what it changes in the
// base spec.
type Case struct {
	Name string // "fails", "passes", or one of them with a word after a hyphen
	Text string
}

// Fails reports whether the rule finds something in the case.
func (c Case) Fails() bool { return strings.HasPrefix(c.Name, "fails") }

// CasesOf reads the cases of one of the family's rules.
func (f Family) CasesOf(r *Rule) ([]Case, error) {
	name := strings.TrimPrefix(r.ID, f.Name+".")
	data, err := fs.ReadFile(f.Cases, "testdata/"+name+".txtar")
	if err != nil {
		return nil, err
	}
	var cases []Case
	for _, file := range txtar.Parse(data).Files {
		cases = append(cases, Case{Name: strings.TrimSuffix(file.Name, ".ceiling.toml"), Text: string(file.Data)})
	}
	return cases, nil
}

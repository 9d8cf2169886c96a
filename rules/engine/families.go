package engine

import (
	"slices"
	"strings"
)

// Families are names of families of rules, in their alphabetical order, each after a
// space.
type Families string

// FamiliesNamed are those of some names.
func FamiliesNamed(names []string) (f Families) {
	names = slices.Clone(names)
	slices.Sort(names)
	for _, name := range slices.Compact(names) {
		f += Families(" " + name)
	}
	return f
}

// FamiliesOf are those of rules.
func FamiliesOf(list []*Rule) Families {
	var names []string
	for _, r := range list {
		family, _, _ := strings.Cut(r.ID, ".")
		names = append(names, family)
	}
	return FamiliesNamed(names)
}

func (f Families) plus(o Families) Families {
	return FamiliesNamed(append(f.Names(), o.Names()...))
}

// Names are they, not nil.
func (f Families) Names() []string { return strings.Fields(string(f)) }

// List is their names after each other; "" where there is none.
func (f Families) List() string { return strings.Join(f.Names(), ", ") }

// aside lists them in brackets, after a space; "" where there is none.
func (f Families) aside() string {
	if f == "" {
		return ""
	}
	return " (" + f.List() + ")"
}

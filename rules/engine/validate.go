package engine

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strings"

	"dryfit/rules/kernel/cite"
)

// idForm is a family and a name, each in lower case with hyphens.
var idForm = regexp.MustCompile(`^[a-z]+\.[a-z]+(-[a-z]+)*$`)

// Validate refuses a list of families in which a rule is malformed, is listed
// twice, or has no case that fails and none that passes. All that is wrong is
// in the error.
func Validate(families []Family) error {
	var wrong []error
	seen := map[string]bool{}
	for _, f := range families {
		for i := range f.Rules {
			r := &f.Rules[i]
			refuse := func(format string, args ...any) {
				wrong = append(wrong, fmt.Errorf("rule %q: %s", r.ID, fmt.Sprintf(format, args...)))
			}
			if seen[r.ID] {
				refuse("listed twice")
			}
			seen[r.ID] = true
			validateRule(r, refuse)
			validateCases(f, r, refuse)
		}
	}
	return errors.Join(wrong...)
}

func validateRule(r *Rule, refuse func(string, ...any)) {
	if !idForm.MatchString(r.ID) {
		refuse("malformed id")
	}
	if r.Title == "" || r.Why == "" {
		refuse("no title or no why")
	}
	if r.Severity < Note || r.Severity > Refer {
		refuse("no severity")
	}
	if r.Severity == Refer && r.RefersTo == "" {
		refuse("refers to nobody")
	}
	if r.Check == nil {
		refuse("no check")
	}
	validateBasis(r.Basis, refuse)
	for i, l := range r.Limits {
		validateLimit(l, refuse)
		for _, other := range r.Limits[:i] {
			if other.Key == l.Key {
				refuse("limit %q is listed twice", l.Key)
			}
		}
	}
}

func validateBasis(b Basis, refuse func(string, ...any)) {
	if b.Source.Standing == 0 {
		refuse("no basis")
	}
	if b.Source.Standing != cite.Practice && b.Source.String() == b.Source.Standing.String() {
		refuse("a basis that is %s names no source", b.Source.Standing)
	}
	for _, s := range b.Symbols {
		if !strings.Contains(b.Formula, s.Name) {
			refuse("symbol %q is not in the formula", s.Name)
		}
		if s.Means == "" || s.Unit == "" {
			refuse("symbol %q is not explained", s.Name)
		}
	}
	if b.Formula != "" && len(b.Symbols) == 0 {
		refuse("a formula without symbols")
	}
}

func validateLimit(l Limit, refuse func(string, ...any)) {
	if l.Key == "" || l.Title == "" || l.Sense == 0 || l.Value.Unit == 0 {
		refuse("limit %q lacks its title, sense or unit", l.Key)
	}
	if l.Source.Standing == 0 && !math.IsNaN(l.Value.SI) {
		refuse("limit %q has no source", l.Key)
	}
	if !(l.Lowest < l.Most) || l.Value.SI < l.Lowest || l.Value.SI > l.Most {
		refuse("limit %q is outside its physical range", l.Key)
	}
}

// validateCases looks for a case that fails and one that passes.
func validateCases(f Family, r *Rule, refuse func(string, ...any)) {
	if !strings.HasPrefix(r.ID, f.Name+".") {
		refuse("not of the family %q", f.Name)
		return
	}
	cases, err := f.CasesOf(r)
	if err != nil {
		refuse("no cases: %v", err)
	}
	var fails, passes bool
	for _, c := range cases {
		fails = fails || c.Fails()
		passes = passes || !c.Fails()
	}
	if !fails || (!passes && !r.Always) {
		refuse("its cases do not show it failing and passing")
	}
}

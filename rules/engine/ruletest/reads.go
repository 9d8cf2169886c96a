package ruletest

import (
	"fmt"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec/record"
)

// On is the date that cases are judged on.
const On = "2026-11-25"

// Examples are the folders of the repository with whole specs that rules are run
// on to see what they read.
var Examples = []string{"docs/examples", "testdata/specs"}

// Reads are the keys that each rule reads in one of all cases of all rules, or
// in one of some specs.
func Reads(families []engine.Family, specs map[string][]byte) (map[string]record.Set, error) {
	var list []*engine.Rule
	for _, f := range families {
		list = append(list, f.List()...)
	}
	seen := map[string]record.Set{}
	read := func(name string, src []byte) error {
		assessment := review.Spec(name, src, review.Options{Rules: list, Standards: standards.BuiltIn(), On: On})
		for _, p := range assessment.Problems {
			return fmt.Errorf("%s: %s: %s", name, p.Key, p.Message)
		}
		for r, keys := range assessment.Inputs {
			seen[r.ID] = seen[r.ID].Or(keys)
		}
		return nil
	}
	for _, f := range families {
		for _, r := range f.List() {
			cases, err := f.CasesOf(r)
			if err != nil {
				return nil, err
			}
			for _, c := range cases {
				src, _ := Compose(c.Text)
				if err := read(r.ID+" "+c.Name, []byte(src)); err != nil {
					return nil, err
				}
			}
		}
	}
	for name, src := range specs {
		if err := read(name, src); err != nil {
			return nil, err
		}
	}
	return seen, nil
}

// Package study makes the same ceiling otherwise: for each combination of
// values of some keys the ceiling is resolved and every rule run on it. It
// finds the options that no other beats in the figures that matter, and says
// what each of the rest loses. It does no input or output.
package study

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// Study is what is varied of one spec, and what follows from that.
type Study struct {
	Base    *review.Assessment
	Vary    []Dimension
	Total   int      // options in all
	Says    []string // what follows what, one sentence each
	Columns []Column

	options  review.Options
	patterns patterns
	follows  []*follow
	drops    []string
	shaped   bool // a combination may be misshapen though each value is not
}

// New is a study of a spec that could be resolved. Each of vary is KEY=VALUES;
// of several, the last changes fastest. An error is a *VaryError where it is of
// one of them.
func New(base *review.Assessment, vary []string, o review.Options) (*Study, error) {
	if len(vary) == 0 {
		return nil, errors.New("nothing to vary; give --vary KEY=VALUES, as in --vary grid.along=3..6")
	}
	o.Offers = false
	o.Frames, o.Search.Memory = new(hanging.Memory), carrying.NewMemory() // options may differ in what neither knows
	s := &Study{Base: base, Total: 1, options: o, Columns: slices.Clip(columns)}
	for _, text := range vary {
		linked, err := dimensions(base, text)
		if err != nil {
			return nil, err
		}
		for _, d := range linked {
			if s.varies(d.Key) {
				return nil, &VaryError{text, fmt.Errorf("%s is varied twice", d.Key)}
			}
			s.Vary = append(s.Vary, d)
		}
		n := len(linked[0].Values)
		if s.Total > mostOptions/n {
			return nil, &VaryError{text, fmt.Errorf("with the rest this makes more than %d options", mostOptions)}
		}
		s.Total *= n
	}
	s.patterns.spec = s.ofSpec()
	s.follow()
	s.shaped = s.mayMisshape()
	return s, nil
}

// mayMisshape reports whether the schema must look at every combination: where
// the keys of a table hang on its kind, and where one that is varied is in a
// table that the spec does not have, which may need others.
func (s *Study) mayMisshape() bool {
	for _, d := range s.Vary {
		if strings.HasPrefix(d.Key, "route.") || strings.HasPrefix(d.Key, "fitting.") {
			return true
		}
	}
	return len(misshapen(s.Tree(1))) > 0
}

// varies reports whether a key is one of those varied.
func (s *Study) varies(key string) bool {
	return slices.ContainsFunc(s.Vary, func(d Dimension) bool { return d.Key == key })
}

// Units are those that the study prints in.
func (s *Study) Units() quantity.System { return s.Base.Ceiling.Units }

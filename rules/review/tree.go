package review

import (
	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
)

// Tree reviews the tree of a spec that satisfies the schema, as Spec does the
// bytes, for who changes a tree and has no file of it: the assessment has no
// document, its findings have no places and stand in the order of the rules,
// and nothing is offered. Where the ceiling can't be resolved the faults say
// why, and there is no assessment.
func Tree(tree map[string]any, o Options) (*Assessment, []layout.Fault) {
	s := &Assessment{Standards: o.Standards}
	if faults := s.work(tree, o); len(faults) > 0 {
		return nil, faults
	}
	s.Findings = distinct(s.Findings)
	s.Assumed = assumedBy(s.Ceiling, s.Inputs, s.NotChecked)
	s.judge(o)
	return s, nil
}

// distinct keeps one of those that say the same of one key.
func distinct(findings []engine.Finding) []engine.Finding {
	type said struct {
		rule     *engine.Rule
		at, text string
	}
	had := make(map[said]bool, len(findings))
	out := findings[:0]
	for _, f := range findings {
		if is := (said{f.Rule, f.At, f.Text}); !had[is] {
			had[is] = true
			out = append(out, f)
		}
	}
	return out
}

package study

import (
	"dryfit/rules/model/layout"
	"dryfit/rules/review"
	"dryfit/spec"
)

// Option is one combination, worked out.
type Option struct {
	Index  int // from 1, in the order of the study
	Values []any
	// Assessment is its review, without offers; nil where the ceiling can't be made,
	// which Fault says.
	Assessment *review.Assessment
	Fault      *layout.Fault

	like *pattern
}

// Values are those of an option, in the order of Vary.
func (s *Study) Values(index int) []any {
	out := make([]any, len(s.Vary))
	for i := range s.Vary {
		out[i] = s.Vary[i].Values[s.place(index, i)]
	}
	return out
}

// Option works out one option: the same each time, and by any goroutine.
func (s *Study) Option(index int) Option {
	o := Option{Index: index, Values: s.Values(index), like: s.patternOf(index)}
	tree := s.Tree(index)
	if s.shaped {
		if problems := misshapen(tree); len(problems) > 0 {
			o.Fault = &layout.Fault{Key: problems[0].Key, Text: problems[0].Message}
			return o
		}
	}
	options := s.options
	options.Like = o.like.said
	assessment, faults := review.Tree(tree, options)
	if len(faults) > 0 {
		o.Fault = &faults[0]
		return o
	}
	assessment.Path = s.Base.Path
	o.Assessment = assessment
	return o
}

// Tree is the spec's with the values of an option, and with what follows. It
// shares what does not change with the spec's own.
func (s *Study) Tree(index int) map[string]any {
	tree, values := s.Base.Document.Tree, s.Values(index)
	for _, key := range s.drops {
		tree = without(tree, key)
	}
	for i, d := range s.Vary {
		tree, _ = spec.With(tree, d.Key, values[i]) // that it can be, dimension has seen
	}
	return s.followed(tree)
}

package study

import (
	"sync"

	"dryfit/rules/engine"
	"dryfit/rules/review"
	"dryfit/spec/record"
)

// pattern is a ceiling that was worked out, from which options take what comes from
// nothing in which they differ.
type pattern struct {
	said *engine.Precedent
	own  []own
}

// own is a figure, with the keys that it comes from: of none where it is counted of what
// is found.
type own struct {
	is   float64
	from record.Set
}

// has reports whether a ceiling that differs from the pattern in some keys has its figure
// of a column.
func (p *pattern) has(column int, differ record.Set) bool {
	return column < len(p.own) && !p.own[column].from.Empty() && p.own[column].from.And(differ).Empty()
}

// mostRows is how many rows have their patterns kept: those that some workers are at.
const mostRows = 16

// patterns are that of the spec, and those of the rows worked at last: a row is the
// options that differ in nothing but the last of what is varied.
type patterns struct {
	spec *pattern
	mu   sync.Mutex
	rows [mostRows]struct {
		row int // from 1
		is  *pattern
	}
}

// patternOf is the pattern of an option's row, or else that of the spec.
func (s *Study) patternOf(index int) *pattern {
	p, row := &s.patterns, s.row(index)
	p.mu.Lock()
	defer p.mu.Unlock()
	if at := &p.rows[row%mostRows]; at.row == row {
		return at.is
	}
	return p.spec
}

// keepPattern makes an option that is worked out the pattern of its row, if none is.
func (s *Study) keepPattern(o Option, figures []own) {
	p, row := &s.patterns, s.row(o.Index)
	p.mu.Lock()
	defer p.mu.Unlock()
	if at := &p.rows[row%mostRows]; at.row != row {
		at.row, at.is = row, &pattern{o.Assessment.Said, figures}
	}
}

// row is the number of an option's row, from 1.
func (s *Study) row(index int) int { return 1 + (index-1)/len(s.Vary[len(s.Vary)-1].Values) }

// ofSpec is the pattern of the spec itself.
func (s *Study) ofSpec() *pattern {
	assessment, faults := review.Tree(s.Base.Document.Tree, s.options)
	if len(faults) > 0 {
		return &pattern{}
	}
	p := &pattern{said: assessment.Said}
	p.own = s.figures(assessment, &pattern{})
	return p
}

package ruletest

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// What a shop cuts by can be had of every ceiling that can be resolved, whatever its
// feet, its layers and its sheets: closed outlines of places that are numbers.
func TestRandomCeilingsHaveTheirPatterns(t *testing.T) {
	for _, d := range random(t) {
		s, faults := review.Tree(d.tree, review.Options{Standards: standards.BuiltIn(), On: On})
		if len(faults) > 0 {
			continue
		}
		for _, p := range s.Results.Shop().Patterns() {
			for _, side := range p.Outline {
				assert.False(t, math.IsNaN(side.From[0]+side.From[1]+side.To[0]+side.To[1]+side.Bulge), "%s: %s", d.name, p.Name)
			}
		}
	}
}

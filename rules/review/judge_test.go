package review

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/layout"
	"dryfit/rules/result/carrying"
	"dryfit/rules/standards"
)

// A figure that could not be computed fails the spec, whatever its rule has said
// before or after.
func TestAFailedFigureCountsWhateverElseItsRuleSays(t *testing.T) {
	solve := errors.New("no solution")
	absent := func(p *rules.Pass) { p.Absent("strap.hole") }
	failed := func(p *rules.Pass) { p.Failed("strap.stations", solve) }
	for _, c := range []struct {
		name           string
		checks         []func(*rules.Pass)
		absent, failed int
	}{
		{"failed alone", []func(*rules.Pass){failed}, 0, 1},
		{"absent first", []func(*rules.Pass){absent, failed}, 0, 1},
		{"failed first", []func(*rules.Pass){failed, absent}, 0, 1},
		{"failed twice", []func(*rules.Pass){failed, absent, failed}, 0, 1},
		{"absent twice", []func(*rules.Pass){absent, absent}, 1, 0},
	} {
		rule := &rules.Rule{
			ID: "test.rule", Severity: rules.Note, Basis: rules.Basis{Source: cite.CommonPractice()},
			Check: func(p *rules.Pass) {
				for _, check := range c.checks {
					check(p)
				}
			},
		}
		out := rules.Run([]*rules.Rule{rule}, &layout.Ceiling{}, standards.BuiltIn(), carrying.Search{})
		s := &Sheet{NotChecked: out.NotChecked}
		s.judge(Options{})
		assert.Equal(t, c.absent, s.Counts.NotChecked, c.name)
		assert.Equal(t, c.failed, s.Counts.Uncomputed, c.name)
		assert.Equal(t, c.failed > 0, s.Verdict == rules.Failed, c.name)
	}
}

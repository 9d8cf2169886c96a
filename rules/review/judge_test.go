package review

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// A figure that could not be computed fails the spec, whatever its rule has said
// before or after.
func TestAFailedFigureCountsWhateverElseItsRuleSays(t *testing.T) {
	solve := errors.New("no solution")
	absent := func(p *engine.Pass) { p.Absent("strap.hole") }
	failed := func(p *engine.Pass) { p.Failed("strap.stations", solve) }
	for _, c := range []struct {
		name           string
		checks         []func(*engine.Pass)
		absent, failed int
	}{
		{"failed alone", []func(*engine.Pass){failed}, 0, 1},
		{"absent first", []func(*engine.Pass){absent, failed}, 0, 1},
		{"failed first", []func(*engine.Pass){failed, absent}, 0, 1},
		{"failed twice", []func(*engine.Pass){failed, absent, failed}, 0, 1},
		{"absent twice", []func(*engine.Pass){absent, absent}, 1, 0},
	} {
		rule := &engine.Rule{
			ID: "test.rule", Severity: engine.Note, Basis: engine.Basis{Source: cite.CommonPractice()},
			Check: func(p *engine.Pass) {
				for _, check := range c.checks {
					check(p)
				}
			},
		}
		out := engine.Run([]*engine.Rule{rule}, &layout.Ceiling{}, standards.BuiltIn(), engine.Means{})
		s := &Assessment{NotChecked: out.NotChecked}
		s.judge(Options{})
		assert.Equal(t, c.absent, s.Counts.NotChecked, c.name)
		assert.Equal(t, c.failed, s.Counts.Uncomputed, c.name)
		assert.Equal(t, c.failed > 0, s.Verdict == engine.Failed, c.name)
	}
}

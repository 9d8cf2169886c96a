package hanging_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
)

// Two layers of 1 3/4in make up 3 1/2in: half of it is one layer, and at its joint
// nothing is left. There is no stress then, not one of the last digit's round-off.
func TestNoStressWhereNothingCarries(t *testing.T) {
	for name, carries := range map[string]bool{"banking-hall": false, "chapter-house": true, sample.ReadingRoom: true} {
		c := sample.Ceiling(t, name, nil)
		assert.Equal(t, carries, !hanging.Jointed(c) || hanging.CarriesAtJoint(c), name)
		stresses := 0
		for _, f := range hanging.Of(c, nil).Figures(c) {
			if strings.HasSuffix(f.Key, ".stress") {
				stresses++
				assert.Less(t, f.Value.SI, 100e6, "%s: %s", name, f.Key)
			}
		}
		assert.Equal(t, carries, stresses > 0, name)
	}
}

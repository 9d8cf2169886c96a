package cite_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/cite"
)

func TestSourcePrintsItsStandingUnlessRead(t *testing.T) {
	place := cite.NDS.At("5.3.8")
	assert.Equal(t, "National Design Specification for Wood Construction, 5.3.8", place.String())
	assert.Equal(t, "National Design Specification for Wood Construction, 5.3.8 (from memory)", place.FromMemory().String())
	assert.Equal(t, "common practice", cite.CommonPractice().String())
	assert.Equal(t, "t/(2R) (derived)", cite.Derivation("t/(2R)").String())
	assert.Equal(t, "no source", cite.Source{}.String())
}

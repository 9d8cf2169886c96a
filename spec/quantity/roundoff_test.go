package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/quantity"
)

func TestRoundOffIsNotOver(t *testing.T) {
	tenth := 0.1
	assert.Greater(t, 3*tenth, 0.3)
	assert.False(t, quantity.Over(3*tenth, 0.3))
	assert.True(t, quantity.Over(0.3*(1+1e-8), 0.3))
	assert.False(t, quantity.Over(0.3, 0.3*(1+1e-8)))
	assert.True(t, quantity.Over(-0.3, -0.3*(1+1e-8)))
	assert.True(t, quantity.Over(1e-12, 0), "of nothing there is no share")
}

package section

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLevelsKeepApart(t *testing.T) {
	at := []float64{10, 11, 12, 100}
	apart(at)
	assert.InDeltaSlice(t, []float64{10, 10 + levelApart, 10 + 2*levelApart, 100}, at, 1e-9)
	at = []float64{10, 11, 12}
	apart(at)
	assert.InDeltaSlice(t, []float64{12 - 2*levelApart, 12 - levelApart, 12}, at, 1e-9, "the lowest keeps its place")
}

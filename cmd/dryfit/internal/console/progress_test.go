package console

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestProgressLine(t *testing.T) {
	assert.Equal(t, "500 of 2000 options, 250 a second, 6s left", progressLine("options", 500, 2000, 2*time.Second))
	assert.Equal(t, "0 of 2000 options, 0 a second, 0s left", progressLine("options", 0, 2000, 0))
}

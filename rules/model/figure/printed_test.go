package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/quantity"
)

// A sheet named 1/2in is sold at 15/32in; a figure that is worked out prints in
// sixteenths.
func TestSizesSoldPrintAsTheyAre(t *testing.T) {
	f := Figure{Value: quantity.Length(15.0 / 32 * 0.0254).Value()}
	assert.Equal(t, `1/2"`, f.Printed(quantity.Imperial))
	f.Sold = true
	assert.Equal(t, `15/32"`, f.Printed(quantity.Imperial))
	assert.Equal(t, "11.9mm", f.Printed(quantity.Metric))
}

package layout_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/sample"
)

// A round arch that is cut level stands with its feet on the line of the cut, and
// round-off has no corner beside them: the outline is its own mirror image.
func TestCutsMakeNoCornersOfRoundOff(t *testing.T) {
	for mm := 4000; mm < 4400; mm += 25 {
		for _, span := range []string{fmt.Sprintf("%dmm", mm), fmt.Sprintf("%.12fin", float64(mm)/25.4)} {
			c := sample.Room(t, map[string]any{
				"vault": map[string]any{"profile": "semicircular", "span": span, "length": "7080mm"}, "springing.cut": "level", "room.width": "5m",
			})
			outline := c.Panel.Outline.Get()
			left, right := 0, 0
			for _, p := range outline {
				switch d := p.Y - c.Vault.Span.Get()/2; {
				case d < -1e-6:
					left++
				case d > 1e-6:
					right++
				}
			}
			assert.Equal(t, left, right, span)
		}
	}
}

// Pieces that mirror each other weigh alike but for round-off: the panel is the
// first of them, in whatever unit the spec is written.
func TestThePanelIsTheFirstOfThoseThatWeighAlike(t *testing.T) {
	for mm := 4000; mm < 4400; mm += 25 {
		for _, span := range []string{fmt.Sprintf("%dmm", mm), fmt.Sprintf("%.12fin", float64(mm)/25.4)} {
			c := sample.Room(t, map[string]any{"vault.span": span, "panels.around": int64(2), "fitting": []any{}, "strap.stations": []any{"10%", "90%"}})
			low, _ := c.Panel.Outline.Get().Bounds()
			assert.InDelta(t, 0, low.Y, 1e-6, span)
		}
	}
}

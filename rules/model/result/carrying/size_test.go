package carrying_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
)

// With what all clear sizes of a corner are said to grow by the panel passes; with 6mm
// less the whole search finds no plain motion.
func TestAllSizesGrowByNoMoreThanTheyMust(t *testing.T) {
	for _, size := range []struct{ width, onward, height int }{{681, 990, 1036}, {704, 693, 1353}, {846, 956, 1161}, {919, 700, 1300}} {
		corner := func(more int) carrying.Way {
			mm := func(n int) string { return fmt.Sprintf("%dmm", n+more) }
			c := sample.Room(t, map[string]any{"route.3.width": mm(size.width), "route.3.onward": mm(size.onward), "route.3.height": mm(size.height)})
			return carrying.Of(c, carrying.Search{Only: "route.3"})[0].Way.Get()
		}
		way := corner(0)
		require.NotEqual(t, passage.Passes, way.Outcome)
		require.Positive(t, way.Size.More, "%v", size)
		more := int(1000*way.Size.More + 1)
		assert.Equal(t, passage.Passes, corner(more).Outcome, "%v and %dmm", size, more)
		less := corner(more - 6)
		assert.True(t, less.Outcome != passage.Passes || less.Tilted, "%v and %dmm", size, more-6)
	}
}

package opening

import (
	"math"
	"sync"

	"dryfit/rules/kernel/passage"
)

// known is what is worked out about a body for openings of any size, each once.
type known struct {
	bars    func() []plank // within the section
	ring    func() ring
	places  func() []slabPlace
	threads threads
	axis    axisTurns
}

// knownOf is what is worked out about a body so far.
func knownOf(b *passage.Body) *known {
	return passage.Kept(b, func(b *passage.Body) *known {
		return &known{
			bars:   sync.OnceValue(func() []plank { return planks(b) }),
			ring:   sync.OnceValue(func() ring { return ringOf(b) }),
			places: sync.OnceValue(func() []slabPlace { return placesInWall(b) }),
		}
	})
}

// none is less than any margin.
var none = math.Inf(-1)

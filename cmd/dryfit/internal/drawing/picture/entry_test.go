package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/sample"
)

// The crown is in the picture of every ceiling, from a third of its length on.
func TestTheCrownIsInThePicture(t *testing.T) {
	for _, name := range sample.Names(t) {
		for _, entry := range []string{"end", "side"} {
			c := sample.Ceiling(t, name, map[string]any{"room.entry": entry})
			eye := entryCamera(c)
			w := crowned(c, eye)
			crown := c.Vault.Behind(c.Vault.Arc.Get()/2, 0)
			at := space{c.BuiltLength() / 3, crown.Y, crown.Z}
			if eye.turns {
				at = space{eye.eye.x, crown.Y, crown.Z}
			}
			s := eye.see(at)
			if s.away < nearest { // nearer than the eye sees
				continue
			}
			assert.Less(t, s.up/s.away, w[2].y, name)
			assert.LessOrEqual(t, (w[2].y-w[0].y)/(w[2].x-w[0].x), mostUpright+1e-9, name)
		}
	}
}

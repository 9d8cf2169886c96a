package spec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec"
)

func TestUnnumbered(t *testing.T) {
	tree := map[string]any{
		"rib":    map[string]any{"depth": "60mm"},
		"route":  []any{map[string]any{"name": "street door", "width": "1m"}, map[string]any{"width": "2m"}},
		"accept": []any{map[string]any{"rule": "bend.grain", "at": "rib.depth"}},
		"strap":  map[string]any{"stations": []any{"10%", "90%"}},
	}
	for key, want := range map[string]string{
		"rib.depth":        "rib.depth",
		"route.1.width":    `route."street door".width`,
		"route.2.width":    "route.2.width",
		"route.3.width":    "route.3.width",
		"accept.1.rule":    `accept."bend.grain rib.depth".rule`,
		"strap.stations.2": "strap.stations.2",
		"crew.people":      "crew.people",
	} {
		assert.Equal(t, want, spec.Unnumbered(tree, key))
	}
}

package shop_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
)

// The right end of each edge is printed as a running dimension too, and is the whole
// of it: no other place of the edge lies further, so that chains close.
func TestRunningDimensionsCloseAtTheEnd(t *testing.T) {
	edges := map[string]int{"rib": 2, "skin": 1, "stick": 1, "layup": 1}
	for _, name := range []string{"reading-room", "music-room", "gallery-soffit", "lantern-hall"} {
		for _, p := range shop.Of(sample.Ceiling(t, name, nil)).Patterns() {
			kind, _, _ := strings.Cut(p.Name, "-")
			var ends []float64
			for _, r := range p.Runs {
				if last := r.Stations[len(r.Stations)-1]; last.Name == "end" {
					assert.Equal(t, r.Length, last.At, "%s, %s: %s", name, p.Name, r.Name)
					ends = append(ends, r.Length)
				}
			}
			assert.Len(t, ends, edges[kind], "%s, %s", name, p.Name)
			if kind == "form" || kind == "segment" { // their clamps end the form; a segment has none
				continue
			}
			for _, r := range p.Runs {
				assert.Contains(t, ends, r.Length, "%s, %s: %s has no end", name, p.Name, r.Name)
				assert.LessOrEqual(t, r.Stations[len(r.Stations)-1].At, r.Length+1e-9, "%s, %s: %s", name, p.Name, r.Name)
			}
		}
	}
}

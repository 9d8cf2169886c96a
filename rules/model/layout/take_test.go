package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// What a ceiling takes from another is what it would work out, from the same keys; it
// takes it where the two differ in nothing that it comes from.
func TestTakenIsAsWorkedOut(t *testing.T) {
	std, tree := standards.BuiltIn(), sample.Tree(t, "reading-room", nil)
	resolve := func(tree map[string]any, like *layout.Ceiling) *layout.Ceiling {
		c, faults := layout.Resolve(tree, std, like)
		require.Empty(t, faults)
		return c
	}
	base := resolve(tree, nil)
	base.Panel.Parts.Get()
	base.Vault.Figure.Get()
	for key, alike := range map[string]bool{
		"edge.cover": true, "strap.setting": true, "rib.lamination": true, // nothing weighs otherwise
		"rib.depth": false, "rib.species": false, "skin.thickness": false, "vault.rise": false, "panels.around": false,
		"grid.around": false, "strap.thickness": false, "strap.stations": false, "springing.cut": false, "climate.shop.humidity": false,
	} {
		changed, ok := spec.With(tree, key, map[string]any{
			"edge.cover": "66mm", "strap.setting": "2mm", "rib.lamination": "5mm",
			"rib.depth": "66mm", "rib.species": "red oak", "skin.thickness": "6mm", "vault.rise": "800mm", "panels.around": int64(2),
			"grid.around": int64(5), "strap.thickness": "2mm", "strap.stations": []any{"12%", "88%"}, "springing.cut": "radial", "climate.shop.humidity": "40%",
		}[key])
		require.True(t, ok, key)
		want, got := resolve(changed, nil), resolve(changed, base)
		got.Take(base.Done())
		assert.Equal(t, want.Vault.Figure.Get(), got.Vault.Figure.Get(), key)
		assert.Equal(t, want.Vault.Figure.From(), got.Vault.Figure.From(), key)
		assert.Equal(t, want.Panel.Parts.Get(), got.Panel.Parts.Get(), key)
		assert.Equal(t, want.Panel.Parts.From(), got.Panel.Parts.From(), key)
		is := &got.Panel.Parts.Get()[0] == &base.Panel.Parts.Get()[0]
		assert.Equal(t, alike, is, key)
	}
}

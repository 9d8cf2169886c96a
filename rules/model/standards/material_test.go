package standards_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

const psi = 4.4482216152605 / (0.0254 * 0.0254)

const ownOak = `dryfit = 1
name = "s"
[[material]]
name = "our oak"
kind = "timber"
source = "bench tests"
group = "hardwood"
specific_gravity = 0.6
modulus = "12GPa"
rupture = "100MPa"
radial = 0.002
tangential = 0.0036
[[material]]
name = "our board"
kind = "sheet"
source = "data sheet"
density = "600kg/m3"
least_radius = { long_bent = "300mm", short_bent = "200mm" }
`

// What no material can have is refused at its key; what is past all that is
// published, on the side where more passes, is kept to be said. The extremes are
// those of the tables that are built in: Douglas-fir's 1.95 million psi, ash's 15,800
// psi, white oak's 0.68, redcedar's 0.32, plywood's 33 pounds in a cubic foot, a
// radius of 2in and of 1.1in.
func TestFiguresOfOwnMaterials(t *testing.T) {
	for _, c := range []struct {
		from, to, key string
		refused       bool
		beyond        float64 // the extreme in SI, 0 for none
	}{
		{"12GPa", "12.5GPa", "material.1.modulus", false, 0},
		{"12GPa", "20GPa", "material.1.modulus", false, 1.95e6 * psi},
		{"12GPa", "1GPa", "material.1.modulus", false, 0}, // less passes with less
		{"12GPa", "51GPa", "material.1.modulus", true, 0},
		{"12GPa", "12MPa", "material.1.modulus", true, 0},
		{"100MPa", "300MPa", "material.1.rupture", false, 15800 * psi},
		{"100MPa", "500MPa", "material.1.rupture", true, 0},
		{"0.6", "1.2", "material.1.specific_gravity", false, 0.68},
		{"0.6", "0.2", "material.1.specific_gravity", false, 0.32},
		{"0.6", "1.6", "material.1.specific_gravity", true, 0},
		{"0.0036", "0.0001", "material.1.tangential", false, 0.00212},
		{"0.0036", "0.36", "material.1.tangential", true, 0}, // a percentage for a fraction
		{"= 0.002", "= 0.00001", "material.1.radial", false, 0.00071},
		{"600kg/m3", "100kg/m3", "material.2.density", false, 33 * 0.45359237 / (0.3048 * 0.3048 * 0.3048)},
		{"600kg/m3", "900kg/m3", "material.2.density", false, 0},
		{"600kg/m3", "6kg/m3", "material.2.density", true, 0},
		{"300mm", "30mm", "material.2.least_radius.long_bent", false, 2 * 0.0254},
		{"300mm", "1mm", "material.2.least_radius.long_bent", true, 0},
		{"200mm", "20mm", "material.2.least_radius.short_bent", false, 1.1 * 0.0254},
	} {
		src := strings.Replace(ownOak, c.from, c.to, 1)
		name := c.key + " " + c.to
		l, problems := catalog.ReadStandards("s", []byte(src))
		if c.refused {
			require.Len(t, problems, 1, name)
			assert.Equal(t, c.key, problems[0].Key, name)
			assert.Contains(t, problems[0].Message, "is outside the physical range, ", name)
			continue
		}
		require.Empty(t, problems, name)
		s := standards.With(l)
		got := append(s.BeyondPublished("Our Oak"), s.BeyondPublished("our board")...)
		if c.beyond == 0 {
			assert.Empty(t, got, name)
			continue
		}
		require.Len(t, got, 1, name)
		assert.Equal(t, c.key, got[0].Key, name)
		assert.InEpsilon(t, c.beyond, got[0].Published.SI, 1e-9, name)
	}
}

// Of one name in two files the nearest holds, with what is said of it.
func TestBeyondIsTheNearestFiles(t *testing.T) {
	sound, wild := layer(t, "sound", ownOak[len("dryfit = 1\nname = \"s\"\n"):]), layer(t, "wild", strings.Replace(ownOak[len("dryfit = 1\nname = \"s\"\n"):], "12GPa", "20GPa", 1))
	assert.Empty(t, standards.With(sound, wild).BeyondPublished("our oak"))
	assert.Len(t, standards.With(wild, sound).BeyondPublished("our oak"), 1)
}

package beginning

import (
	"fmt"
	"math"
	"strings"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// The sketch of a section, in the dots of two lines of braille, of which a character
// has two across and four down: as dots are about as far apart both ways, the section
// is true to scale.
const (
	sketchWide = 32
	sketchHigh = 8
)

// sketch is the intrados in two lines of text, with its sizes beside it.
func sketch(c *layout.Ceiling) [2]string {
	units := c.Units
	length := func(m float64) string { return units.Format(quantity.Length(m).Value()) }
	g := c.Grid
	return drawn(c.Vault.Intrados.Get().Polyline(200), c.Vault.Span.Get(), c.Vault.Rise.Get(), [2]string{
		fmt.Sprintf("%s, span %s, rise %s, length %s", c.Vault.Profile.Get(), length(c.Vault.Span.Get()), length(c.Vault.Rise.Get()), length(c.Vault.Length.Get())),
		fmt.Sprintf("%d by %d coffers of %s by %s, ratio %.2f; panels of %s", g.Around.Get(), g.Along.Get(),
			length(g.ModuleAround.Get()), length(g.ModuleAlong.Get()), g.Ratio(), units.Format(quantity.Mass(c.Panel.Mass.Get()).Value())),
	})
}

// braille are the dots of a character, from the left column's uppermost to the right
// one's lowest.
var braille = [2][4]rune{{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}

// drawn puts a curve into the dots, as large as it goes, before what is said of it.
func drawn(line []curve.Point, span, rise float64, said [2]string) [2]string {
	size := span / (sketchWide - 1)
	if rise > 0 {
		size = max(size, rise/(sketchHigh-1))
	}
	var dots [2][sketchWide / 2]rune
	wide := int(math.Round(span / size))
	for _, p := range line {
		x, y := min(wide, max(0, int(math.Round(p.Y/size)))), sketchHigh-1-min(sketchHigh-1, max(0, int(math.Round(p.Z/size))))
		dots[y/4][x/2] |= braille[x%2][y%4]
	}
	var out [2]string
	for i, row := range dots {
		var b strings.Builder
		for _, r := range row[:wide/2+1] {
			b.WriteRune(0x2800 + r)
		}
		out[i] = b.String() + "  " + said[i]
	}
	return out
}

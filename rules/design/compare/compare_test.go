package compare_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

func demo(t *testing.T) string { return string(sample.Source(t, sample.ReadingRoom)) }

// edit replaces pairs of texts, each of which must be there.
func edit(t *testing.T, src string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, src, pairs[i])
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return src
}

func sheet(t *testing.T, src string) *review.Assessment {
	s := review.Spec("x", []byte(src), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
	require.Empty(t, s.Problems)
	return s
}

const threshold = 0.005

func of(t *testing.T, a, b string) *compare.Comparison {
	return compare.Of(sheet(t, a), sheet(t, b), threshold)
}

func TestNothingChangesAgainstItself(t *testing.T) {
	for _, name := range sample.Names(t) {
		s := sheet(t, string(sample.Source(t, name)))
		c := compare.Of(s, s, threshold)
		assert.Empty(t, c.Keys, name)
		assert.Empty(t, c.Rewritten, name)
		assert.Empty(t, c.Figures, name)
		assert.Empty(t, c.Findings, name)
		assert.Empty(t, c.NotChecked, name)
		assert.False(t, c.Worse(engine.Query), name)
	}
}

// One ceiling against another is that other against the first, turned round.
func TestTheOtherWayRound(t *testing.T) {
	names := sample.Names(t)
	turned := map[compare.Kind]compare.Kind{compare.Added: compare.Removed, compare.Removed: compare.Added, compare.Changed: compare.Changed}
	before := sheet(t, string(sample.Source(t, names[len(names)-1])))
	for _, name := range names {
		after := sheet(t, string(sample.Source(t, name)))
		var there, back []string
		for _, f := range compare.Of(before, after, threshold).Findings {
			there = append(there, fmt.Sprint(f.Kind, f.Finding().Rule.ID, f.Finding().At))
		}
		for _, f := range compare.Of(after, before, threshold).Findings {
			f.Old, f.New = f.New, f.Old
			back = append(back, fmt.Sprint(turned[f.Kind], f.Finding().Rule.ID, f.Finding().At))
		}
		assert.ElementsMatch(t, there, back, name)
		before = after
	}
}

// What is written otherwise and means the same is no change.
func TestKeysAreComparedAsMeant(t *testing.T) {
	c := of(t, demo(t), edit(t, demo(t),
		`"4200mm"`, `"4.2m"`, `"2050mm"`, `"2.05m"`, `"10%"`, `"10.0%"`, `species = "spruce"`, `species = "white spruce"`, `"7080mm"`, `"708cm"`))
	assert.Empty(t, c.Keys)
	assert.Equal(t, []string{"lift.reach", "room.framing.species", "route.1.door.width", "strap.stations", "vault.length", "vault.span"}, c.Rewritten)
	assert.Empty(t, c.Figures)
	assert.Empty(t, c.Findings)

	c = of(t, demo(t), edit(t, demo(t), `"840mm"`, `"841mm"`))
	require.Len(t, c.Keys, 1)
	assert.Equal(t, compare.KeyChange{Kind: compare.Changed, Key: "vault.rise", Old: "840mm", New: "841mm"}, c.Keys[0])
	for _, f := range c.Figures {
		assert.Contains(t, f.Key, "hanging.", "a thousandth of the rise is under half a percent but where a small difference is left of large ones")
		assert.Greater(t, math.Abs(f.By()), threshold)
	}
}

// Elements are known by their names, whatever their number.
func TestElementsAreKnownByName(t *testing.T) {
	van := demo(t)[strings.Index(demo(t), "[[route]]"):]
	van = van[:strings.Index(van[1:], "[[route]]")+1]
	without := edit(t, demo(t), van, "", `width  = "900mm"`, `width  = "800mm"`)
	c := of(t, demo(t), without)
	require.Len(t, c.Keys, 2)
	assert.Equal(t, compare.Removed, c.Keys[0].Kind)
	assert.Equal(t, "box van", c.Keys[0].Name)
	assert.Equal(t, compare.KeyChange{Kind: compare.Changed, Key: "route.1.width", Old: "900mm", New: "800mm"}, c.Keys[1])
	assert.Equal(t, []compare.Renumbered{
		{Array: "route", Name: "street door", Old: 2, New: 1}, {Array: "route", Name: "lobby turn", Old: 3, New: 2},
	}, c.Renumbered)
	for _, f := range c.Figures {
		assert.NotContains(t, f.Name, "lobby turn", "its figures are the same under another number")
	}

	// A finding at an element that is gone is not one at its successor's number.
	narrow := edit(t, demo(t), `width = "2050mm", height = "2100mm"`, `width = "50mm", height = "50mm"`)
	shorter := edit(t, narrow, `name   = "box van"`, `name   = "cart"`, `name   = "lobby turn"`, `name   = "turn"`)
	require.NotEmpty(t, of(t, narrow, shorter).Keys)
	gone := of(t, narrow, edit(t, without, `width  = "800mm"`, `width  = "80mm"`))
	for _, f := range gone.Findings {
		assert.NotEqual(t, compare.Changed, f.Kind, "%s: the van's finding went, the door's came", f.Finding().Text)
	}

	c = of(t, demo(t), edit(t, demo(t), van, "")+"\n"+van)
	assert.Empty(t, c.Keys)
	require.NotEmpty(t, c.Renumbered)
	assert.Empty(t, c.Findings)
	assert.True(t, c.Renumbered[len(c.Renumbered)-1].Reordered)

	c = of(t, demo(t), edit(t, demo(t), `"street door"`, `"front door"`))
	require.Len(t, c.Keys, 1, "what is left over on both sides at one number is one element with another name")
	assert.Equal(t, "route.2.name", c.Keys[0].Key)
}

// A key that was left out stood for what was assumed.
func TestAssumedValuesAreSaid(t *testing.T) {
	c := of(t, edit(t, demo(t), "tolerance = \"4mm\"\n", ""), demo(t))
	require.Len(t, c.Keys, 1)
	assert.Equal(t, compare.KeyChange{Kind: compare.Added, Key: "room.tolerance", New: "4mm", Assumed: "12.4mm"}, c.Keys[0])
}

func TestFindingsComeGoAndMove(t *testing.T) {
	// With the mass of the light all is checked of the straps.
	good := edit(t, demo(t), `size   = { diameter = "90mm" }`, "size   = { diameter = \"90mm\" }\nmass   = \"0.4kg\"")
	worse := edit(t, good, `load = "0.9kN"`, `load = "0.05kN"`, `setting   = "1mm"`, `setting   = "2mm"`)
	c := of(t, good, worse)
	kinds := map[string]compare.Kind{}
	for _, f := range c.Findings {
		kinds[f.Finding().Rule.ID] = f.Kind
	}
	assert.Equal(t, compare.Added, kinds["strap.load"])
	assert.Equal(t, compare.Changed, kinds["strap.setting"])
	assert.True(t, c.Worse(engine.Hold))

	back := of(t, worse, good)
	assert.False(t, back.Worse(engine.Query), "it only got better")
	assert.Len(t, back.Findings, len(c.Findings), "what came one way goes the other")
	for _, f := range back.Findings {
		if f.Finding().Rule.ID == "strap.load" {
			assert.Equal(t, compare.Removed, f.Kind)
			assert.False(t, f.Unchecked)
		}
	}

	gone := of(t, worse, edit(t, worse, `allowable = { load = "0.05kN", source = "supplier's test report no. 7 (invented)" }`, ""))
	for _, f := range gone.Findings {
		if f.Finding().Rule.ID == "strap.load" {
			assert.True(t, f.Unchecked, "a hold that is no longer looked for is not one that was mended")
		}
	}
	require.NotEmpty(t, gone.NotChecked)
}

// A hold that is no longer accepted, and a note that became a query, came.
func TestAcceptancesCount(t *testing.T) {
	accepted := demo(t) + "\n[[accept]]\nrule = \"strap.setting\"\nreason = \"r\"\nby = \"b\"\nuntil = 2027-01-01\n"
	c := of(t, accepted, demo(t))
	assert.True(t, c.Worse(engine.Query))
	assert.False(t, c.Worse(engine.Hold))
	require.NotEmpty(t, c.Findings)
	assert.False(t, of(t, demo(t), accepted).Worse(engine.Query))
}

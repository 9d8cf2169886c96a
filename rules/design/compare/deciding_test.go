package compare_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// A decision hangs on what a rule compares whose finding came, and on the decisive
// figures: strips of 9mm are 6.67 of them, which was none of bend.strips' business
// before. Ten are listed at most.
func TestDecidingFigures(t *testing.T) {
	a := sheet(t, demo(t))
	b := sheet(t, edit(t, demo(t), `lamination   = "6mm"`, `lamination   = "9mm"`, `thickness = "9mm"`, `thickness = "8mm"`))
	few := compare.Of(a, b, 0.0001).Deciding()
	require.LessOrEqual(t, len(few), 10)
	crossed := map[string][]string{}
	for i, f := range few {
		if len(f.Crossed) > 0 {
			crossed[f.Key] = f.Crossed
		} else {
			assert.NotEmpty(t, crossed, "%d: those that crossed a limit come first", i)
		}
	}
	assert.Contains(t, crossed["rib.laminations"], "bend.strips")
	assert.NotContains(t, keysOf(few), "vault.radius")
	assert.Contains(t, keysOf(few), "panel.mass")
	assert.NotContains(t, crossed, "panel.mass", "no finding is of it")
}

func keysOf(list []compare.FigureChange) (out []string) {
	for _, f := range list {
		out = append(out, f.Key)
	}
	return out
}

// A figure that crosses its limit is listed however little it changed: 10 strips become
// 6.67, which is less than half.
func TestACrossingIsNoMatterOfTheThreshold(t *testing.T) {
	c := of(t, demo(t), edit(t, demo(t), `lamination   = "6mm"`, `lamination   = "9mm"`))
	large := compare.Of(c.Old, c.New, 0.5)
	assert.Contains(t, keysOf(large.Figures), "rib.laminations")
	assert.Contains(t, keysOf(large.Deciding()), "rib.laminations")
	assert.NotContains(t, keysOf(large.Figures), "panel.mass")
	assert.Subset(t, keysOf(c.Figures), keysOf(large.Figures))
}

// A leg that no longer lets the panel through has crossed the limit of its margin, and
// not the panel its own; an elevator that is rated for less, that of the panel's mass.
func TestALegCrosses(t *testing.T) {
	crossed := func(c *compare.Comparison) (out []string) {
		for _, f := range c.Deciding() {
			if len(f.Crossed) > 0 {
				out = append(out, f.Key)
			}
		}
		return out
	}
	narrow := of(t, demo(t), edit(t, demo(t), `width  = "900mm"`, `width  = "80mm"`))
	assert.Equal(t, []string{"carrying.2.margin"}, crossed(narrow))
	lift := func(capacity, width string) string {
		return edit(t, demo(t), "[[route]]\nname   = \"street door\"", `[[route]]
name     = "lift"
kind     = "elevator"
door     = { width = "2400mm", height = "2400mm" }
inside   = { length = "5000mm", width = "2600mm", height = "2600mm" }
capacity = "`+capacity+`"

[[route]]
name   = "street door"`, `width        = "90mm"`, `width        = "`+width+`"`)
	}
	heavy := of(t, lift("70kg", "60mm"), lift("70kg", "90mm"))
	assert.Contains(t, crossed(heavy), "panel.mass.most")
	assert.NotContains(t, crossed(heavy), "carrying.2.margin")
}

// Fourteen that crossed are all listed, and nothing else; of three that did the rest up
// to ten are decisive, in the order of these.
func TestNoCrossingIsDropped(t *testing.T) {
	c := compare.Comparison{}
	add := func(key string, crossed ...string) {
		c.Figures = append(c.Figures, compare.FigureChange{Kind: compare.Changed, Key: key, Old: &figure.Figure{}, New: &figure.Figure{}, Crossed: crossed})
	}
	for _, key := range []string{
		"close.last-gap.least", "joint.count", "takeoff.lumber", "takeoff.sheets", "hanging.worst", "vault.mass", "panel.mass", "grid.module-ratio",
		"carrying.1.margin", "hanging.raised.lift.1", "vault.radius",
	} {
		add(key)
	}
	assert.Equal(t, []string{
		"grid.module-ratio", "panel.mass", "vault.mass", "hanging.worst", "takeoff.sheets", "takeoff.lumber", "joint.count", "close.last-gap.least",
		"carrying.1.margin", "hanging.raised.lift.1",
	}, keysOf(c.Deciding()))
	for i := range 3 {
		add(fmt.Sprint("x", i), "a.rule")
	}
	assert.Equal(t, []string{"x0", "x1", "x2", "grid.module-ratio", "panel.mass", "vault.mass", "hanging.worst", "takeoff.sheets", "takeoff.lumber", "joint.count"}, keysOf(c.Deciding()))
	for i := range 11 {
		add(fmt.Sprint("y", i), "a.rule")
	}
	assert.Len(t, c.Deciding(), 14)
}

// What is bought is compared as the takeoff has it.
func TestWhatIsBoughtIsCompared(t *testing.T) {
	c := of(t, demo(t), edit(t, demo(t), `along  = 6`, `along  = 5`, `along     = 6`, `along     = 5`))
	for _, f := range c.Figures {
		if f.Key == "takeoff.lumber" {
			shop := c.New.Results.Shop()
			assert.InEpsilon(t, (shop.RibLumber.Get().BoardFeet+shop.RailLumber.Get().BoardFeet)*0.00235974, f.New.Value.SI, 1e-5, "a board foot is 144 cubic inches")
			assert.Less(t, f.New.Value.SI, f.Old.Value.SI)
		}
	}
	assert.Contains(t, keysOf(c.Figures), "takeoff.lumber")
}

// A finding is worse in a higher severity, no longer accepted, or farther past its limit.
func TestWorsened(t *testing.T) {
	length := func(m float64) quantity.Value { return quantity.Length(m).Value() }
	finding := func(s engine.Severity, measured, limit float64) *engine.Finding {
		return &engine.Finding{Severity: s, Measured: length(measured), Bound: engine.Bound{Value: length(limit)}}
	}
	accepted := finding(engine.Query, 12, 10)
	accepted.Accepted = &layout.Acceptance{}
	for _, x := range []struct {
		old, new *engine.Finding
		want     bool
	}{
		{finding(engine.Query, 12, 10), finding(engine.Hold, 12, 10), true},
		{finding(engine.Hold, 12, 10), finding(engine.Query, 15, 10), false},
		{finding(engine.Query, 12, 10), finding(engine.Query, 13, 10), true},
		{finding(engine.Query, 8, 10), finding(engine.Query, 7, 10), true},
		{finding(engine.Query, 12, 10), finding(engine.Query, 12, 11), false},
		{accepted, finding(engine.Query, 12, 10), true},
		{finding(engine.Query, 12, 10), accepted, false},
	} {
		assert.Equal(t, x.want, compare.FindingChange{Kind: compare.Changed, Old: x.old, New: x.new}.Worsened(), "%v", x)
	}
	assert.False(t, compare.FindingChange{Kind: compare.Added, New: accepted}.Worsened())
}

package raising

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
)

func planned(t *testing.T, c *layout.Ceiling) []Piece {
	t.Helper()
	limits, why := LimitsOf(c, shop.Of(c))
	require.Empty(t, why)
	pieces, err := Of(c, hanging.Of(c, nil), limits)
	require.NoError(t, err)
	return pieces
}

func sum(lists ...[]float64) (all float64) {
	for _, list := range lists {
		for _, f := range list {
			all += f
		}
	}
	return all
}

// At every step, and after every loss that it survives, the supports carry the
// weight: balance of the upright forces, to a thousandth.
func TestEachStepCarriesTheWeight(t *testing.T) {
	for name, changes := range map[string]map[string]any{
		"whole": {"strap.allowable.load": "3kN"},
		"split": {"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}, "strap.allowable.load": "3kN"},
		"five":  {"strap.stations": []any{"10%", "30%", "50%", "70%", "90%"}, "strap.allowable.load": "3kN"},
	} {
		changes["lift.stations"] = []any{"25%", "75%"}
		c := sample.Room(t, changes)
		for _, p := range planned(t, c) {
			for _, s := range p.Steps {
				require.False(t, s.Falls, "%s: %s", name, s.Name)
				assert.InEpsilon(t, p.Weight, sum(s.Lifts, s.Straps), 1e-3, "%s: %s", name, s.Name)
				for _, l := range s.Lost {
					if !l.Falls {
						assert.InEpsilon(t, p.Weight, sum(l.Lifts, l.Straps), 1e-3, "%s: %s without %s", name, s.Name, l.What)
					}
				}
			}
		}
	}
}

// The order, and what is carried with one lift down, as they were worked out
// beforehand by another program. On straps 1 and 4, 10% and 90% along an arc of
// 4634.6mm and 30mm behind it, a pull at a springing tips the panel by the balance
// of moments about the nearer strap.
func TestTheOrderOfTheReadingRoom(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", nil)
	p := planned(t, c)[0]
	assert.Equal(t, []int{1, 4, 2, 3}, p.Order)
	assert.Equal(t, 2, p.BalancedAfter)
	assert.Equal(t, 4, p.SecureAfter)
	strap := c.Vault.Behind(0.1*c.Vault.Arc.Get(), 0.03).Y
	assert.InEpsilon(t, c.Panel.Mass.Get()*9.80665*(2.1-strap)/strap, p.Pull, 1e-6)
	assert.InDelta(t, 3400, p.Pull, 50)
	inner := planner{Staging: p.Staging, ends: [2]float64{0, 4.2}}
	assert.InDelta(t, 290, inner.pull([]int{1, 2}), 5)
	one := p.Steps[5]
	assert.Equal(t, "lift 1 down alone", one.Name)
	assert.InDelta(t, 143, one.Lifts[1], 1)
	assert.InDelta(t, 116, one.Straps[1], 1)
	assert.Zero(t, one.Straps[2])
}

// The straps, over the panel, are not yet there when it is turned: weight and centre
// are without them. A panel on its edge tips about its feet, z below the mass centre,
// by a lift at the crown: W·z/H.
//
// By hand, of the demo: ribs 18.1kg on a centre line of R 3075mm whose chord is 4200mm
// over their plumb feet, their centre at 589mm; skin 25.4kg of R 3100.5mm at 617mm; five
// rails 18.5kg of R 3070.5mm at 0, ±14.53 and ±29.07 degrees, 671mm; halves at the
// springing 1.7kg at 26mm; tenons 0.1kg at 610mm, the downlight 0.4kg at 850mm: 39.23kg·m
// of 64.2kg, 611mm. 64.2·9.80665·0.611/0.9 = 427N; atan(611/590) = 46.0 degrees.
// An independent calculation, whose 66.3kg had the straps and no downlight and whose feet
// were not cut plumb, had 437N and 45.7 degrees.
func TestTurningItDown(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", nil)
	got := map[string]float64{}
	for _, f := range Figures(c) {
		got[f.Key] = f.Value.SI
	}
	assert.InDelta(t, 2.1, got["raise.centre.across"], 1e-9)
	assert.InDelta(t, 0.59, got["raise.centre.along"], 1e-9)
	z, weight := got["raise.centre.up"], got["raise.weight"]
	assert.Less(t, z, c.Panel.Centre.Get().Z)
	assert.Less(t, weight, c.Panel.Mass.Get()*9.80665)
	assert.InEpsilon(t, weight*z/0.9, got["raise.turn.lift"], 1e-6)
	assert.InEpsilon(t, math.Atan(z/0.59), got["raise.turn.balance"], 1e-6)
	assert.InEpsilon(t, weight*0.59/0.9, got["raise.turn.hold"], 1e-6)
	assert.InEpsilon(t, 437, got["raise.turn.lift"], 0.03)
	assert.InEpsilon(t, 45.7*math.Pi/180, got["raise.turn.balance"], 0.015)
}

// A flat panel has no crown to turn it by, and has no such figures.
func TestAFlatPanelHasNoCrown(t *testing.T) {
	c := sample.Room(t, map[string]any{"vault": map[string]any{"profile": "flat", "span": "4200mm", "length": "7080mm"}})
	var keys []string
	for _, f := range Figures(c) {
		keys = append(keys, f.Key)
	}
	assert.Contains(t, keys, "raise.blocks")
	assert.NotContains(t, keys, "raise.turn.hold")
}

// A pair that is overloaded is not begun with; where every pair is, balance alone
// chooses, and the state says what is over its limit.
func TestAPairOverItsAllowableIsNotBegunWith(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", nil)
	limits, _ := LimitsOf(c, shop.Of(c))
	limits.Strap = 100
	pieces, err := Of(c, hanging.Of(c, nil), limits)
	require.NoError(t, err)
	assert.True(t, pieces[0].ByBalance)
	assert.Zero(t, pieces[0].SecureAfter)
	last := pieces[0].Steps[len(pieces[0].Steps)-1]
	assert.Equal(t, "strap 2 is over its allowable load", last.Why)
	assert.True(t, last.Danger)
}

// Three straps are never secure: with one lost the panel falls.
func TestThreeStrapsAreNeverSecure(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", map[string]any{"strap.stations": []any{"10%", "50%", "90%"}})
	p := planned(t, c)[0]
	assert.Equal(t, []int{1, 3, 2}, p.Order)
	assert.Equal(t, 2, p.BalancedAfter)
	assert.Zero(t, p.SecureAfter)
}

// With straps 1 and 2 alone and lift 2 lost the panel falls: nothing is right of its
// mass centre.
func TestItFallsWithBothOfItsStrapsOnOneSide(t *testing.T) {
	staged := hanging.Of(sample.Ceiling(t, "reading-room", nil), nil).Staged.Get()
	require.NoError(t, staged.Err)
	s, err := staged.Is[0].With([]int{0, 1}, []int{0})
	require.NoError(t, err)
	assert.True(t, s.Falls)
}

// Without lifts there is nothing to raise it by, and lifts on one side do not hold it.
func TestWithoutLiftsThereIsNoOrder(t *testing.T) {
	for _, stations := range [][]any{{}, {"10%", "20%"}} {
		c := sample.Ceiling(t, "reading-room", map[string]any{"lift.stations": stations})
		_, err := Of(c, hanging.Of(c, nil), Limits{})
		var none *hanging.NoLiftsError
		require.ErrorAs(t, err, &none)
		assert.Equal(t, len(stations) == 0, none.None)
	}
}

// The order stands on the calculation sheet, as the plan has it.
func TestTheOrderIsOnTheSheet(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", map[string]any{"lift.stations": []any{"25%", "75%"}})
	got := map[string]float64{}
	for _, f := range OrderFigures(c, PlanOf(c, hanging.Of(c, nil), shop.Of(c))) {
		got[f.Key] = f.Value.SI
	}
	assert.Equal(t, map[string]float64{
		"raise.order.1": 1, "raise.order.2": 4, "raise.order.3": 2, "raise.order.4": 3,
		"raise.balanced-after": 2, "raise.secure-after": 4,
	}, got)
}

// Where one lift lowered before the other overloads a strap there is no plan, though
// the straps hold once both are down; where the rib alone is over its limit, which
// is a query, there is one, and it says so.
func TestADangerousStepIsNoPlan(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", nil)
	none := func(s Step) string { return (&Plan{Pieces: []Piece{{Steps: []Step{s}}}}).None(c) }
	step := Step{Name: "lift 1 down alone", State: State{Why: "strap 2 is over its allowable", Danger: true}}
	assert.Equal(t, "lift 1 down alone: strap 2 is over its allowable", none(step))
	step.Danger = false
	assert.Empty(t, none(step))
}

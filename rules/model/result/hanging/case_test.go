package hanging_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/hanging"
)

// Keys of figures are forever, and no two cases share one or their words.
func TestCasesAreToldApart(t *testing.T) {
	want := map[string]hanging.ID{
		"raised":               {Kind: hanging.Raised},
		"first-hung":           {Kind: hanging.FirstHung},
		"first-hung-alone":     {Kind: hanging.FirstHungAlone},
		"packed":               {Kind: hanging.Packed},
		"packed-panel-2":       {Kind: hanging.Seated, At: "panel 2"},
		"packed-arch-2":        {Kind: hanging.Seated, At: "arch 2"},
		"strap-lost-2":         {Kind: hanging.StrapLost, Strap: 2},
		"strap-lost-2-packed":  {Kind: hanging.StrapLostPacked, Strap: 2},
		"strap-set-1-longer":   {Kind: hanging.StrapSet, Strap: 1, Way: hanging.Longer},
		"strap-set-1-shorter":  {Kind: hanging.StrapSet, Strap: 1, Way: hanging.Shorter},
		"framing-moved-down":   {Kind: hanging.FramingMoved, Way: hanging.Longer},
		"framing-moved-up":     {Kind: hanging.FramingMoved, Way: hanging.Shorter},
		"feet-blocked":         {Kind: hanging.FeetBlocked},
		"strap-set-12-shorter": {Kind: hanging.StrapSet, Strap: 12, Way: hanging.Shorter},
		"season-dry-hung-shop": {Kind: hanging.InSeason, Season: "dry", Hung: "shop"},
		"season-wet-hung-shop": {Kind: hanging.InSeason, Season: "wet", Hung: "shop"},
		"season-wet-hung-dry":  {Kind: hanging.InSeason, Season: "wet", Hung: "dry"},
		"season-dry-hung-wet":  {Kind: hanging.InSeason, Season: "dry", Hung: "wet"},

		"season-dry-hung-shop-strap-set-2-longer":  {Kind: hanging.InSeason, Season: "dry", Hung: "shop", Strap: 2, Way: hanging.Longer},
		"season-dry-hung-wet-strap-set-2-shorter":  {Kind: hanging.InSeason, Season: "dry", Hung: "wet", Strap: 2, Way: hanging.Shorter},
		"season-wet-hung-shop-strap-set-2-longer":  {Kind: hanging.InSeason, Season: "wet", Hung: "shop", Strap: 2, Way: hanging.Longer},
		"season-wet-hung-dry-strap-set-12-shorter": {Kind: hanging.InSeason, Season: "wet", Hung: "dry", Strap: 12, Way: hanging.Shorter},
	}
	said := map[string]bool{}
	for key, id := range want {
		assert.Equal(t, key, id.Key())
		assert.False(t, said[id.Words()], id.Words())
		said[id.Words()] = true
	}
	assert.Panics(t, func() { _ = hanging.ID{}.Key() })
	assert.Panics(t, func() { _ = hanging.ID{}.Words() })
}

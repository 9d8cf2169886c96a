// Package result holds what several families, the calculation sheet and the
// drawings read of a ceiling beyond its layout. Each result is computed once,
// on first use.
package result

import (
	"slices"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/closing"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/result/survey"
	"dryfit/spec/record"
)

// Results are those of one ceiling, for one goroutine.
type Results struct {
	ceiling *layout.Ceiling
	seasons *seasons.Seasons
	hanging *hanging.Hanging
	legs    record.Value[[]carrying.Leg]
	room    record.Value[carrying.InRoom]
	closing *closing.Closing
	shop    *shop.Shop
	survey  *survey.Survey
	raising record.Value[raising.Plan]
	frames  record.Value[[]raising.Frame]
}

// Of is the results of a ceiling, none of them computed yet. The search is for the
// way in; frames that were solved before may be kept, or nil.
func Of(c *layout.Ceiling, search carrying.Search, frames *hanging.Memory) *Results {
	r := &Results{ceiling: c, seasons: seasons.Of(c), hanging: hanging.Of(c, frames), shop: shop.Of(c)}
	r.legs = layout.Derive(c, func() []carrying.Leg { return carrying.Of(c, search) })
	r.room = layout.Derive(c, func() carrying.InRoom { return carrying.Room(c, r.Carrying(), search) })
	r.closing = closing.Of(c, r.seasons)
	r.survey = survey.Of(c, r.seasons, r.closing)
	r.raising = raising.PlanOf(c, r.hanging, r.shop)
	r.frames = layout.Derive(c, r.framed)
	return r
}

// Seasons is what the wood does between the shop and the seasons.
func (r *Results) Seasons() *seasons.Seasons { return r.seasons }

// Hanging is what every strap may carry.
func (r *Results) Hanging() *hanging.Hanging { return r.hanging }

// Carrying is the panel's way, leg by leg.
func (r *Results) Carrying() []carrying.Leg { return r.legs.Get() }

// Room is how the panel comes to its bearing in the room.
func (r *Results) Room() carrying.InRoom { return r.room.Get() }

// Closing is how the row of panels closes.
func (r *Results) Closing() *closing.Closing { return r.closing }

// Shop is what the shop cuts by.
func (r *Results) Shop() *shop.Shop { return r.shop }

// Raising is the order from lifts to straps.
func (r *Results) Raising() raising.Plan { return r.raising.Get() }

// Frames are the moments of raising a panel; none where there is no plan.
func (r *Results) Frames() []raising.Frame { return r.frames.Get() }

func (r *Results) framed() []raising.Frame {
	if r.Raising().Err != nil {
		return nil
	}
	c, room := r.ceiling, r.Room()
	between, _ := r.survey.Beside()
	turn := func(wide, high float64) raising.Turning {
		b := carrying.BoxIn(c, wide, high)
		return raising.Turning{Tipped: b.Tipped, Passes: b.Down, Level: b.Level, OnEdge: room.Door != ""}
	}
	return raising.Frames(c, r.Raising(), raising.Site{Between: between, Turn: turn})
}

// Survey is the row of panels in the room as measured.
func (r *Results) Survey() *survey.Survey { return r.survey }

// Tables are those of the calculation sheet.
func (r *Results) Tables() []figure.Table {
	out := r.hanging.Tables()
	if t, ok := r.Closing().Table(); ok {
		out = append(out, t)
	}
	return append(out, r.survey.Tables()...)
}

// Figures is the whole calculation sheet: the layout's figures and the results'.
func (r *Results) Figures() []figure.Figure {
	return slices.Concat(
		calcs.Figures(r.ceiling), r.seasons.Figures(r.ceiling), r.hanging.Figures(r.ceiling),
		r.closing.Figures(r.ceiling, r.seasons), r.survey.Figures(), carrying.Figures(r.ceiling, r.Carrying()),
		raising.Figures(r.ceiling), raising.OrderFigures(r.ceiling, r.raising),
	)
}

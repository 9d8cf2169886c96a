package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var sheetEdge = engine.Rule{
	ID:       "bend.sheet-edge",
	Title:    "the sheet is one that is stocked, its edges the way round that the spec bends it",
	Why:      "Bendable sheets are made to bend one way or the other, and words for the two are mixed up: say which edge stays straight, of a sheet that can be had.",
	Severity: engine.Note,
	Basis:    engine.Basis{Valid: "sizes that mills list; others are made to order", Source: cite.RetailPlywood.At("sheet sizes")},
	Check:    checkSheetEdge,
}

func checkSheetEdge(p *engine.Pass) {
	s := p.Ceiling.Skin.Sheet
	short, long := min(s.Straight.Get(), s.Bent.Get()), max(s.Straight.Get(), s.Bent.Get())
	for _, stock := range stockSheets {
		if math.Abs(short-stock[0]) <= cutTolerance && math.Abs(long-stock[1]) <= cutTolerance {
			return
		}
	}
	p.Report(engine.Finding{
		At: "skin.sheet",
		Text: p.Textf("a sheet of %v with its %v edge bent is not a stock size; ask the mill, or take the next larger and say which of its edges stays straight",
			quantity.Length(s.Straight.Get()), quantity.Length(s.Bent.Get())),
	})
}

package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var sheetEdge = engine.Rule{
	ID:       "bend.sheet-edge",
	Title:    "the sheet is a stock size with the edge that the spec bends",
	Why:      "A bendable sheet bends one way only, and the trade's words for the two ways are often confused. State which edge of a stock sheet stays straight.",
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
		Text: p.Textf("a sheet of %v with its %v edge bent is not a stock size; ask the mill, or take the next larger and state which edge stays straight",
			quantity.Length(s.Straight.Get()), quantity.Length(s.Bent.Get())),
	})
}

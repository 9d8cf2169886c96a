package shop

import (
	"fmt"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

var stock = engine.Rule{
	ID:       "shop.stock",
	Title:    "every piece can be cut from a plank that the shop buys",
	Why:      "A piece slightly thicker than a surfaced plank needs the next size up, which takes about a quarter more wood. A piece thicker than the thickest plank must be glued up.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "past", Title: "excess of a piece's thickness over a plank's surfaced thickness that counts as slight", Value: quantity.Length(0.0015).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.05, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "ribs and rails by their smaller side, strips by their width, sawn layers by the plank that the spec names; surfaced thicknesses from published tables",
		Source: cite.CommonPractice(),
	},
	Check: checkStock,
}

func checkStock(p *engine.Pass) {
	ribs, rails := shop.Planks(p.Ceiling)
	seen := said{}
	for _, cut := range ribs {
		seen.report(p, "ribs", "rib.width", cut)
	}
	for i, cut := range rails {
		name, key := "rails", "rail.depth"
		if i > 0 {
			name = "half rails"
		}
		if cut.Finished < p.Ceiling.Rail.Depth.Get()-1e-9 {
			key = "rail.width"
		}
		seen.report(p, name, key, cut)
	}
}

// said are the sentences that were said already.
type said map[string]bool

func (s said) report(p *engine.Pass, name, key string, cut shop.CutSize) {
	text := planked(p, name, cut)
	if text == "" || s[text] {
		return
	}
	s[text] = true
	f := engine.Finding{At: key, Text: text}
	if cut.Stock > 0 && slices.Contains(p.Ceiling.Bench().Stock, cut.Stock) {
		f.Severity = engine.Note
	}
	p.Report(f)
}

// planked says of a cut size that no plank makes it, or that it is just past one.
func planked(p *engine.Pass, name string, cut shop.CutSize) string {
	bench, limit := p.Ceiling.Bench(), p.Limit("past")
	thickest, _ := timber.Surfaced(bench.Stock[len(bench.Stock)-1])
	switch {
	case cut.Stock == 0:
		return p.Textf("no plank that the shop buys is thick enough for %s of %v; the thickest, %d/4, is surfaced to %v", name, quantity.Length(cut.Finished), bench.Stock[len(bench.Stock)-1], quantity.Length(thickest))
	case !slices.Contains(bench.Stock, cut.Stock):
		return fmt.Sprintf("the shop does not buy %d/4 plank, which a layer of the %s is sawn of", cut.Stock, name)
	}
	for _, q := range bench.Stock {
		if t, err := timber.Surfaced(q); err == nil && cut.Finished > t+1e-9 && cut.Finished-t <= limit.SI {
			return p.Textf("%s of %v are slightly thicker than %d/4 plank, which is surfaced to %v", name, quantity.Length(cut.Finished), q, quantity.Length(t))
		}
	}
	return ""
}

var nest = engine.Rule{
	ID:       "shop.nest",
	Title:    "the skin is cut from the fewest sheets",
	Why:      "Pieces slightly larger than half a sheet waste the other half. A slightly smaller module or bay may need half the sheets.",
	Severity: engine.Note,
	Basis: engine.Basis{
		Valid:  "pieces that end on rails and ribs, not turned, a kerf apart; the least number follows from their area and from the pieces that can't lie beside each other",
		Source: cite.Derivation("rectangles laid on sheets"),
	},
	Check: func(p *engine.Pass) {
		n := p.Results.Shop().Sheets.Get()
		if n.Err != nil {
			p.NotChecked("grid.around", n.Err.Error())
			return
		}
		if !n.Fits {
			p.NotChecked("skin.sheet", "a piece is larger than its sheet")
			return
		}
		if n.Count > n.Least {
			p.Report(engine.Finding{
				At: "skin.sheet", Related: []string{"grid.around", "grid.along"},
				Text: p.Textf("%d sheets are needed for the %d pieces of the skin; the least number by their area and size is %d", n.Count, len(n.Pieces), n.Least),
			})
		}
	},
}

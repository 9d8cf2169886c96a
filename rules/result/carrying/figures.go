package carrying

import (
	"fmt"

	"dryfit/rules/figure"
	"dryfit/spec/quantity"
)

// Figures are the route's lines of the calculation sheet: each leg with the
// motion, the margin, and for a door the free depth that the motion takes.
func Figures(legs []Leg) []figure.Figure {
	var out []figure.Figure
	for _, l := range legs {
		add := func(key, symbol, name string, v quantity.Value, method string) {
			out = append(out, figure.Figure{
				Key: fmt.Sprintf("carrying.%d.%s", l.Index, key), Symbol: fmt.Sprintf("%s_%d", symbol, l.Index),
				Name: l.Name + ": " + name, Subject: "the way in", Value: v, Method: method,
			})
		}
		add("margin", "g", "clear on every side of the wrap", quantity.Length(l.Margin).Value(), l.Outcome.String()+", "+l.Motion)
		if l.Kind == "door" {
			add("depth", "d", "free depth on each side of the opening", quantity.Length(l.Depth).Value(), "what the motion takes, the wrap included")
		}
		if l.Kind == "vehicle" {
			add("loads", "n", "loads in all", quantity.Value{SI: float64(l.Loads), Unit: quantity.One}, fmt.Sprintf("%d panels a load, arches nested", l.Load))
		}
	}
	return out
}

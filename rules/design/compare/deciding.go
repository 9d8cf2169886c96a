package compare

import (
	"slices"
	"strings"
)

// decisive are the figures that a decision hangs on, in their order: proportion,
// weight, the worst strap, sheets and lumber to buy, joints, the last gap. The tightest
// leg and the lift that carries most come after them.
var decisive = []string{
	"grid.module-ratio", "panel.mass", "vault.mass", "hanging.worst", sheetsKey, lumberKey, "joint.count", "close.last-gap.least",
}

// most is how many figures are listed to decide by, unless more crossed a limit.
const most = 10

// Deciding are the changed figures that a decision hangs on: all that crossed a limit,
// in the order of the sheet, and then the decisive ones up to ten in all.
func (c *Comparison) Deciding() (few []FigureChange) {
	for _, f := range c.Figures {
		if len(f.Crossed) > 0 {
			few = append(few, f)
		}
	}
	keys := append(slices.Clone(decisive),
		c.worstOf("carrying.", ".margin", func(a, b float64) bool { return a < b }),
		c.worstOf("hanging.raised.lift.", "", func(a, b float64) bool { return a > b }))
	for _, key := range keys {
		i := slices.IndexFunc(c.Figures, func(f FigureChange) bool { return f.Key == key && len(f.Crossed) == 0 })
		if i >= 0 && len(few) < most {
			few = append(few, c.Figures[i])
		}
	}
	return few
}

// worstOf is the key, of the changed figures whose keys begin and end so, of the one
// that is or was the worst; "" where none changed.
func (c *Comparison) worstOf(prefix, suffix string, worse func(a, b float64) bool) (key string) {
	var worst float64
	for _, f := range c.Figures {
		if !strings.HasPrefix(f.Key, prefix) || !strings.HasSuffix(f.Key, suffix) {
			continue
		}
		at := f.worse(worse)
		if key == "" || worse(at, worst) {
			key, worst = f.Key, at
		}
	}
	return key
}

// worse is the worse of what a figure was and is.
func (f FigureChange) worse(worse func(a, b float64) bool) float64 {
	switch {
	case f.Old == nil:
		return f.New.Value.SI
	case f.New == nil || worse(f.Old.Value.SI, f.New.Value.SI):
		return f.Old.Value.SI
	default:
		return f.New.Value.SI
	}
}

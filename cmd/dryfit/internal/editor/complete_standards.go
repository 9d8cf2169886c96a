package editor

import (
	"math"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// defaulted is the key of a spec that a path of a standards file gives a default
// for; another path is as it was.
func defaulted(path string) string {
	rest, ok := strings.CutPrefix(path, `default."`)
	if !ok {
		return path
	}
	name, inside, _ := strings.Cut(rest, `"`)
	return name + inside
}

// builtIn adds the figure or the word that holds where no file of standards
// gives one.
func (c *completer) builtIn(path string, add adder) {
	parts := spec.SplitKey(path)
	if len(parts) < 2 {
		return
	}
	switch parts[0] {
	case "limit":
		if r, l, ok := limitOf(c.rules, parts[1]); ok {
			value, exact := settable(l.Value)
			switch {
			case exact && len(parts) == 2:
				add(kindValue, map[string]any{"value": value, "source": ""}, "built in; say whose it is", nil)
			case exact && parts[2] == "value":
				add(kindValue, value, "built in, of "+r.ID, nil)
			}
		}
	case "default":
		for _, d := range standards.BuiltIn().Defaults() {
			if d.Key == defaulted(path) {
				add(kindValue, d.Value, "built in", nil)
			}
		}
	}
}

// limitOf is a limit by its name, and its rule.
func limitOf(list []*engine.Rule, name string) (*engine.Rule, engine.Limit, bool) {
	for _, r := range list {
		for _, l := range r.Limits {
			if r.Full(l.Key) == name {
				return r, l, true
			}
		}
	}
	return nil, engine.Limit{}, false
}

// settable is a figure as a standards file gives it. It reports false of one
// that can't be printed exactly.
func settable(v quantity.Value) (any, bool) {
	if v.Unit == quantity.One {
		if whole := int64(v.SI); float64(whole) == v.SI {
			return whole, true
		}
		return v.SI, !math.IsNaN(v.SI)
	}
	for _, system := range []quantity.System{quantity.Metric, quantity.Imperial} {
		text := system.Format(v)
		if back, err := quantity.Parse(v.Unit, text); err == nil && math.Abs(back.SI-v.SI) <= 1e-9*math.Abs(v.SI) {
			return text, true
		}
	}
	return nil, false
}

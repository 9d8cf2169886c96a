package remedy

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// dial is one way to turn a key from the value that it has, in steps: upward,
// and downward where the values have an order.
type dial struct {
	key  string
	name string // where a key has several ways
	up   int    // how many steps there are each way
	down int
	each bool // every value is tried: counts and words, whose cures need not lie together
	at   func(steps int) (any, bool)
	now  float64 // in SI, of a quantity
	// guess is how many steps away a figure in SI of the dial's unit is.
	guess func(unit quantity.Unit, si float64) (int, bool)
}

// How far from its value a quantity is tried, as factors.
const (
	most  = 4
	least = 0.1
)

// knob is a key that may be changed.
type knob struct {
	key      string
	property schema.Property
	was      any
	assumed  bool
}

// knobs lists what may be turned in a spec, in the order of the schema.
func (b base) knobs(a allowed) []knob {
	var out []knob
	for _, p := range schema.Properties() {
		for _, key := range b.elements(p.Path) {
			value, assumed, ok := b.now(key)
			if !ok || !a.key(key) || len(dialsFor(key, value, p)) == 0 {
				continue
			}
			out = append(out, knob{key, p, value, assumed})
		}
	}
	return out
}

// elements are the keys that a path of the schema stands for in the spec.
func (b base) elements(path string) []string {
	head, rest, several := strings.Cut(path, ".*")
	if !several {
		return []string{path}
	}
	list, _, _ := b.now(head)
	elements, _ := list.([]any)
	var out []string
	for i := range elements {
		out = append(out, head+"."+spec.Key(i+1)+rest)
	}
	return out
}

func dialsFor(key string, value any, p schema.Property) []dial {
	switch v := value.(type) {
	case string:
		return textDials(key, v, p)
	case int64:
		return []dial{counts(key, v)}
	case bool:
		return []dial{{
			key: key, up: 1, each: true,
			at: func(int) (any, bool) { return !v, true },
		}}
	case []any:
		return lists(key, v, p)
	case map[string]any:
		if key == "skin.sheet" {
			return []dial{sheet(key, v)}
		}
		return nil
	default:
		return nil
	}
}

func textDials(key, v string, p schema.Property) []dial {
	switch {
	case under(key, "skin.sheet"):
		return nil // bought whole
	case p.Format == "stock":
		return []dial{words(key, v, stockNames)}
	case strings.HasSuffix(p.Path, ".kind"):
		return nil // it decides which other keys there are
	case len(p.Enum) > 0:
		return []dial{words(key, v, p.Enum)}
	default:
		return sized(key, v, p.Format)
	}
}

func words(key, now string, all []string) dial {
	others := slices.DeleteFunc(slices.Clone(all), func(w string) bool { return w == now })
	return oneOf(key, others)
}

// oneOf gives other values one after the other, in their order.
func oneOf[T any](key string, others []T) dial {
	return dial{
		key: key, up: len(others), each: true,
		at: func(steps int) (any, bool) {
			if steps < 1 || steps > len(others) {
				return nil, false
			}
			return others[steps-1], true
		},
	}
}

// sheet gives other stock sheets, each either way round: one is bought as a
// whole.
func sheet(key string, now map[string]any) dial {
	var others []map[string]any
	for _, s := range sheets[system(fmt.Sprint(now["straight"]))] {
		for _, v := range []map[string]any{{"straight": s[0], "bent": s[1]}, {"straight": s[1], "bent": s[0]}} {
			if !maps.Equal(v, now) {
				others = append(others, v)
			}
		}
	}
	return oneOf(key, others)
}

func counts(key string, now int64) dial {
	return dial{
		key: key, up: int(min(now+6, 24)), down: int(min(now-1, 24)), each: true,
		at: func(steps int) (any, bool) {
			n := now + int64(steps)
			return n, n >= 1
		},
	}
}

// system is the one that a quantity is written in.
func system(text string) quantity.System {
	if strings.ContainsAny(text, "\"'′″") {
		return quantity.Imperial
	}
	for _, unit := range []string{"in", "ft", "lb", "lbf"} {
		if strings.HasSuffix(text, unit) {
			return quantity.Imperial
		}
	}
	return quantity.Metric
}

// sized are the dials of a quantity as it is written.
func sized(key, now, format string) []dial {
	unit, ok := units[format]
	if !ok {
		return nil
	}
	v, err := quantity.Parse(unit, now)
	if err != nil {
		return nil
	}
	l, _ := ladderOf(key, format, system(now))
	return []dial{turned(key, v, unit, format, l)}
}

// turned is the dial that goes up and down a ladder from a value.
func turned(key string, v quantity.Value, unit quantity.Unit, format string, l ladder) dial {
	low, high := v.SI*least, v.SI*most
	if unit == quantity.Fraction {
		low, high = 0, 1
	}
	signed := format == "length-signed"
	switch {
	case signed:
		low, high = v.SI-100*l.size, v.SI+100*l.size
	case v.SI == 0:
		high = 100 * l.size
	}
	d := dial{
		key: key, now: v.SI,
		at: func(steps int) (any, bool) {
			r, ok := l.from(v.SI, steps)
			if !ok || !signed && r.si < 0 || r.si == 0 && !signed && format != "length-zero" && unit != quantity.Fraction {
				return nil, false
			}
			return r.text, true
		},
		guess: func(u quantity.Unit, si float64) (int, bool) {
			if u != unit || math.IsNaN(si) || math.IsInf(si, 0) || math.Abs(si) > 100*(v.SI+1) {
				return 0, false
			}
			return l.stepsTo(v.SI, si), true
		},
	}
	if l.list != nil {
		d.up, d.down = len(l.list), len(l.list)
	} else {
		d.up = int(math.Floor((high-v.SI)/l.size + onStep))
		d.down = int(math.Floor((v.SI-low)/l.size + onStep))
	}
	return d
}

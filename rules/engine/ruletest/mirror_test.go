package ruletest

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dryfit/spec"
	"dryfit/spec/quantity"
)

// mirrored is a spec with left and right exchanged. Each list keeps its order, so
// that the keys of what is found are the same.
func mirrored(tree map[string]any) map[string]any {
	m := eachText(tree, "", func(text, path string) string {
		switch path {
		case "strap.stations.*", "lift.stations.*":
			return fromRight(text)
		case "fitting.*.at.around":
			return opposite(text)
		case "room.door.wall":
			return strings.NewReplacer("left", "right", "right", "left").Replace(text)
		}
		return text
	}).(map[string]any)
	put := func(key string, v any) { m, _ = spec.With(m, key, v) }
	around, _ := spec.Lookup(m, "grid.around")
	for i := range list(m, "fitting") {
		key := spec.Key("fitting", i+1, "coffer", 1)
		at, _ := spec.Lookup(m, key)
		if n := around.(int64) + 1 - at.(int64); n > 0 { // one outside the grid stays outside
			put(key, n)
		}
	}
	for i := range list(m, "route") {
		leg := spec.Key("route", i+1)
		if left, ok := metres(m, leg+".door.left"); ok {
			inside, _ := metres(m, leg+".inside.width")
			door, _ := metres(m, leg+".door.width")
			put(leg+".door.left", plainly(inside-door-left)+"m")
		}
	}
	if runs, _ := spec.Lookup(m, "room.framing.runs"); runs == "along" {
		width, _ := metres(m, "room.width")
		offset, ok := metres(m, "room.framing.offset")
		if ok {
			put("room.framing.offset", plainly(width-offset)+"m")
		}
	}
	return m
}

func list(tree map[string]any, key string) []any {
	v, _ := tree[key].([]any)
	return v
}

func metres(tree map[string]any, key string) (float64, bool) {
	text, _ := spec.Lookup(tree, key)
	s, _ := text.(string)
	v, err := quantity.Parse(quantity.Metre, s)
	return v.SI, err == nil
}

// fromRight is what a share leaves of the whole, exactly.
func fromRight(share string) string {
	r, ok := new(big.Rat).SetString(strings.TrimSuffix(share, "%"))
	if !ok {
		return share
	}
	return r.Sub(big.NewRat(100, 1), r).FloatString(8) + "%"
}

func opposite(length string) string {
	if rest, ok := strings.CutPrefix(length, "-"); ok {
		return rest
	}
	return "-" + length
}

var (
	straps   = regexp.MustCompile(`(strap[. ]|strap-(?:lost|set)-|strap\.length\.|free\.)(\d+)`)
	lifts    = regexp.MustCompile(`(lift[-. ])(\d+)`)
	orders   = regexp.MustCompile(`^raise\.order\.`)
	settings = regexp.MustCompile(`^(hanging\.setting(?:-rate)?)(?:\.(\d+))?$`)
	framesOf = regexp.MustCompile(`(piece[- ])(\d+)`)
	columns  = regexp.MustCompile(`\.from-\d+`)
)

// counted is how many there are of what is numbered from the left.
type counted struct{ straps, lifts, pieces int }

// name is a key of the mirrored spec: what is numbered from the left is numbered
// from the right.
func (c counted) name(key string) string {
	if m := settings.FindStringSubmatch(key); m != nil {
		k := 1
		if m[2] != "" {
			k, _ = strconv.Atoi(m[2])
		}
		if k = c.straps + 1 - k; k == 1 {
			return m[1]
		}
		return m[1] + "." + strconv.Itoa(k)
	}
	if strings.HasPrefix(key, "panel.piece.") {
		return key
	}
	from := func(re *regexp.Regexp, n int) {
		key = re.ReplaceAllStringFunc(key, func(found string) string {
			m := re.FindStringSubmatch(found)
			k, _ := strconv.Atoi(m[2])
			return m[1] + strconv.Itoa(n+1-k)
		})
	}
	from(straps, c.straps)
	from(lifts, c.lifts)
	from(framesOf, c.pieces)
	return strings.NewReplacer(
		"left foot", "right foot", "right foot", "left foot", "left ledger", "right ledger", "right ledger", "left ledger",
	).Replace(key)
}

// reflected is a shot as it is of the mirrored spec.
func reflected(s shot, n counted, span float64) shot {
	out := shot{map[string]quantity.Value{}, s.found}
	for key, v := range s.figures {
		switch {
		case strings.HasSuffix(key, ": across"), key == "raise.centre.across":
			v.SI = span - v.SI
		case orders.MatchString(key):
			v.SI = float64(n.straps) + 1 - v.SI
		}
		out.figures[n.name(key)] = v
	}
	return out
}

// arranged is a shot with what is numbered from the left in no order that matters:
// the pieces of a panel by their masses, and the tables without their parts.
func arranged(s shot) shot {
	out := shot{map[string]quantity.Value{}, s.found}
	pieces := map[string][]float64{}
	for key, v := range s.figures {
		if strings.HasPrefix(key, "panel.piece.") {
			kind := key[:strings.LastIndex(key, ".")]
			pieces[kind] = append(pieces[kind], v.SI)
			continue
		}
		out.figures[columns.ReplaceAllString(key, "")] = v
	}
	for i := 1; ; i += 2 { // of a pair that is fixed together the left one comes first
		a, b := fmt.Sprint("raise.order.", i), fmt.Sprint("raise.order.", i+1)
		v, w := out.figures[a], out.figures[b]
		if _, pair := out.figures[b]; !pair {
			break
		}
		if v.SI > w.SI {
			out.figures[a], out.figures[b] = w, v
		}
	}
	for kind, masses := range pieces {
		slices.Sort(masses)
		for i, m := range masses {
			out.figures[fmt.Sprint(kind, ".", i+1)] = quantity.Value{SI: m, Unit: quantity.Kilogram}
		}
	}
	return out
}

// onASeam reports whether a strap is where two of so many pieces of the arch meet.
func onASeam(tree map[string]any, pieces int) bool {
	v, _ := spec.Lookup(tree, "strap.stations")
	list, _ := v.([]any)
	for _, share := range list {
		text, _ := share.(string)
		r, ok := new(big.Rat).SetString(strings.TrimSuffix(text, "%"))
		if !ok {
			continue
		}
		r.Mul(r, big.NewRat(int64(pieces), 100))
		if r.IsInt() && r.Sign() > 0 && r.Cmp(big.NewRat(int64(pieces), 1)) < 0 {
			return true
		}
	}
	return false
}

// A spec and its mirror image are one ceiling. A survey has tests in the mirror of its
// own.
func TestRandomMirrored(t *testing.T) {
	for _, d := range random(t) {
		t.Run(d.name, func(t *testing.T) {
			if fewer, ok := without(d.tree, "survey"); ok {
				d = drawn{d.name, fewer, func() shot { return shotOf(fewer) }}
			}
			stations := func(table string) int {
				v, _ := spec.Lookup(d.tree, table+".stations")
				l, _ := v.([]any)
				return len(l)
			}
			n := counted{straps: stations("strap"), pieces: 1}
			if v, ok := spec.Lookup(d.tree, "panels.around"); ok {
				n.pieces = int(v.(int64))
			}
			n.lifts = n.pieces * stations("lift")
			if onASeam(d.tree, n.pieces) {
				return // such a strap counts with the piece to its left, in the mirror with the other
			}
			span, _ := metres(d.tree, "vault.span")
			same(t, arranged(reflected(d.shot(), n, span)), arranged(shotOf(mirrored(d.tree))))
		})
	}
}

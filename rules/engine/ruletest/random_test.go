package ruletest

import (
	"flag"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// go test ./rules/engine/ruletest -run Random -specs 2000 looks further.
var (
	specs = flag.Int("specs", 60, "how many random specs have each property")
	seed  = flag.Uint64("seed", 26, "of the random specs")
)

// leastValid is the share of the draws that must be ceilings, in percent: with
// fewer the properties would be of next to nothing.
const leastValid = 40

// drawn is a random spec that is a ceiling.
type drawn struct {
	name string
	tree map[string]any
	shot func() shot
}

// random draws the specs that the properties are tried on. It fails where too
// few of its draws are ceilings.
func random(t *testing.T) []drawn {
	t.Helper()
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
	list, draws := drawAll()
	t.Logf("%d specs of %d draws, seed %d", len(list), draws, *seed)
	require.Len(t, list, *specs)
	require.GreaterOrEqual(t, 100*len(list), leastValid*draws)
	return list
}

var drawAll = sync.OnceValues(func() (list []drawn, draws int) {
	names, trees := sampleTrees()
	for len(list) < *specs && draws < 20**specs {
		r := rand.New(rand.NewPCG(*seed, uint64(draws)))
		i := draws % len(trees)
		d := &draft{Rand: r, tree: trees[i], inches: r.IntN(2) == 0}
		d.all()
		if c, faults := layout.Resolve(d.tree, standards.BuiltIn(), nil); len(faults) == 0 && c != nil {
			list = append(list, drawn{strconv.Itoa(draws) + " " + names[i], d.tree, sync.OnceValue(func() shot { return shotOf(d.tree) })})
		}
		draws++
	}
	return list, draws
})

func sampleTrees() (names []string, trees []map[string]any) {
	t := &testing.T{}
	for _, name := range sample.Names(t) {
		names, trees = append(names, name), append(trees, sample.Tree(t, name, nil))
	}
	return names, trees
}

// draft is a spec as it is changed at random.
type draft struct {
	*rand.Rand
	tree   map[string]any
	inches bool // what is drawn is written in inches
}

func (d *draft) all() {
	d.put("project.units", []string{"metric", "imperial"}[d.IntN(2)])
	if d.chance(2) {
		d.profile()
	}
	d.grid()
	d.leaves()
	d.stations("strap", 2+d.IntN(6))
	d.stations("lift", 1+d.IntN(3))
	d.fittings()
	for range d.IntN(3) {
		d.leg()
	}
	d.fewer()
}

// chance is one in n.
func (d *draft) chance(n int) bool { return d.IntN(n) == 0 }

// put gives a key a value, where the schema takes it.
func (d *draft) put(key string, v any) bool {
	changed, ok := spec.With(d.tree, key, v)
	if ok && schema.Fits(changed) {
		d.tree = changed
		return true
	}
	return false
}

// length is a length as a person writes it: a multiple of what suits its size.
func (d *draft) length(m float64) string {
	if d.inches {
		step := 2.0
		switch in := m / 0.0254; {
		case in < 1:
			step = 32
		case in < 10:
			step = 8
		}
		return strconv.FormatFloat(max(1, math.Round(m/0.0254*step))/step, 'f', -1, 64) + "in"
	}
	step := 10.0
	switch {
	case m < 0.02:
		step = 0.5
	case m < 0.2:
		step = 5
	}
	return strconv.FormatFloat(max(1, math.Round(m*1000/step))*step, 'f', -1, 64) + "mm"
}

func (d *draft) between(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }

// si is the length at a key of the draft, or another.
func (d *draft) si(key string, other float64) float64 {
	text, _ := spec.Lookup(d.tree, key)
	s, _ := text.(string)
	v, err := quantity.Parse(quantity.Metre, s)
	if err != nil {
		return other
	}
	return v.SI
}

// profile is another curve of about the same span.
func (d *draft) profile() {
	p := spec.Profiles()[d.IntN(len(spec.Profiles()))]
	span := d.si("vault.span", 4)
	vault := map[string]any{"profile": string(p), "span": d.length(span), "length": d.length(d.si("vault.length", 5))}
	rise := d.between(0.15, 0.45)
	switch p {
	case spec.Pointed:
		rise = d.between(0.55, 0.9)
	case spec.ThreeCentred:
		rise = d.between(0.28, 0.4)
		vault["haunch_radius"] = d.length(span * rise * 0.6)
	}
	if layout.ShapeOf(p).ChoosesRise {
		vault["rise"] = d.length(span * rise)
	}
	d.put("vault", vault)
}

// grid divides the vault, the panels at its ribs and now and then at its rails.
func (d *draft) grid() {
	pieces := 1
	if d.chance(3) {
		pieces = 2 + d.IntN(2)
	}
	each := 1 + d.IntN(4)
	if pieces == 1 {
		each += 2
	}
	per := 1 + d.IntN(2)
	panels := 2 + d.IntN(5)
	d.put("grid.around", int64(pieces*each))
	d.put("panels.around", int64(pieces))
	d.put("grid.along", int64(panels*per))
	d.put("panels.along", int64(panels))
}

// leaves changes one value in so many: lengths and masses by up to a quarter,
// words to others.
func (d *draft) leaves() {
	const oneIn = 5
	var walk func(v any, key, path string)
	walk = func(v any, key, path string) {
		switch v := v.(type) {
		case map[string]any:
			for _, name := range sortedKeys(v) {
				walk(v[name], strings.TrimPrefix(key+"."+name, "."), strings.TrimPrefix(path+"."+name, "."))
			}
		case []any:
			for i, x := range v {
				walk(x, key+"."+strconv.Itoa(i+1), path+".*")
			}
		case string:
			if d.chance(oneIn) {
				d.leaf(v, key, path)
			}
		case bool:
			if d.chance(oneIn) {
				d.put(key, !v)
			}
		}
	}
	walk(d.tree, "", "")
}

func (d *draft) leaf(text, key, path string) {
	p := properties()[path]
	if words := slices.Concat(p.Enum, otherWords[spec.Pattern(key)]); len(words) > 0 {
		d.put(key, words[d.IntN(len(words))])
		return
	}
	q, err := quantity.Parse(p.Unit, text)
	if err != nil || q.SI == 0 || path == "vault.profile" {
		return
	}
	switch by := d.between(0.8, 1.25); p.Unit {
	case quantity.Metre:
		if q.SI > 0 {
			d.put(key, d.length(q.SI*by))
		}
	case quantity.Kilogram:
		d.put(key, strconv.FormatFloat(math.Round(q.SI*by*2)/2, 'f', -1, 64)+"kg")
	case quantity.Newton:
		d.put(key, strconv.FormatFloat(math.Round(q.SI*by/10)*10, 'f', -1, 64)+"N")
	}
}

// stations are so many shares, now and then alike from both ends.
func (d *draft) stations(table string, n int) {
	if d.chance(3) {
		return
	}
	var out []any
	even := d.chance(2)
	for i := range n {
		at := (float64(i) + 0.5) / float64(n)
		if !even {
			at += d.between(-0.35, 0.35) / float64(n)
		}
		out = append(out, strconv.FormatFloat(math.Round(at*200)/2, 'f', -1, 64)+"%")
	}
	d.put(table+".stations", out)
}

func (d *draft) count(key string) int {
	v, _ := spec.Lookup(d.tree, key)
	n, _ := v.(int64)
	return int(n)
}

// fittings puts some into coffers.
func (d *draft) fittings() {
	if !d.chance(2) {
		return
	}
	around, along := d.count("grid.around"), d.count("grid.along")
	var out []any
	for i := range 1 + d.IntN(3) {
		at := map[string]any{"around": d.length(d.between(0, 0.1)), "along": d.length(d.between(0, 0.1))}
		if d.chance(2) {
			at["around"] = "-" + at["around"].(string)
		}
		f := map[string]any{
			"name": "fitting " + strconv.Itoa(i+1), "kind": []string{"luminaire", "sprinkler", "diffuser", "other"}[d.IntN(4)],
			"coffer": []any{int64(1 + d.IntN(around)), int64(1 + d.IntN(along))},
			"size":   map[string]any{"diameter": d.length(d.between(0.05, 0.3))}, "mass": d.pounds(d.between(0.5, 4)),
		}
		if d.chance(3) {
			f["size"] = map[string]any{"width": d.length(d.between(0.1, 0.3)), "length": d.length(d.between(0.1, 0.5))}
		}
		if d.chance(2) {
			f["at"] = at
		}
		out = append(out, f)
	}
	d.put("fitting", out)
}

func (d *draft) pounds(kg float64) string {
	if d.inches {
		return strconv.FormatFloat(math.Round(kg/0.45359237*4)/4, 'f', -1, 64) + "lb"
	}
	return strconv.FormatFloat(math.Round(kg*10)/10, 'f', -1, 64) + "kg"
}

// leg adds a leg to the way in.
func (d *draft) leg() {
	kinds := []string{"door", "corridor", "corner", "vehicle", "elevator", "stair"}
	kind := kinds[d.IntN(len(kinds))]
	if kind == "stair" && !d.chance(4) {
		kind = "door" // which are weighed much faster
	}
	between := func(lo, hi float64) any { return d.length(d.between(lo, hi)) }
	box := func(size float64) map[string]any {
		return map[string]any{"length": between(size, 2*size), "width": between(size/2, size), "height": between(2, 2.8)}
	}
	leg := map[string]any{"name": "drawn " + kind, "kind": kind}
	switch kind {
	case "door":
		leg["width"], leg["height"], leg["wall"] = between(0.7, 2), between(1.9, 2.6), between(0.1, 0.4)
		if d.chance(2) {
			leg["before"], leg["after"], leg["beside"] = between(2, 8), between(2, 8), between(0.5, 4)
		}
	case "corridor":
		leg["width"], leg["height"] = between(0.9, 2.5), between(2, 3)
	case "corner":
		leg["width"], leg["onward"], leg["height"] = between(1, 3), between(1, 3), between(2, 3)
	case "vehicle", "elevator":
		leg["door"] = map[string]any{"width": between(0.9, 2.2), "height": between(2, 2.4)}
		leg["inside"] = box(4)
		if d.chance(2) {
			leg["door"].(map[string]any)["left"] = between(0.05, 0.3)
		}
		if kind == "elevator" {
			leg["inside"], leg["capacity"] = box(1.8), d.pounds(d.between(300, 1600))
		}
	case "stair":
		leg["width"], leg["headroom"], leg["rise"], leg["going"] = between(0.9, 2), between(2, 2.8), between(0.15, 0.19), between(0.25, 0.32)
		leg["risers"] = int64(8 + d.IntN(12))
		leg["turn"] = []string{"none", "quarter", "half"}[d.IntN(3)]
		if d.chance(2) {
			leg["between"] = []string{"wall", "open"}[d.IntN(2)]
		}
		if d.chance(2) {
			leg["ends"] = []string{"corridor", "open"}[d.IntN(2)]
		}
		leg["landing"] = map[string]any{"width": between(0.9, 2.5), "length": between(0.9, 2.5)}
	}
	had, _ := d.tree["route"].([]any)
	d.put("route", append(slices.Clone(had), leg))
}

// fewer leaves out tables, and keys of tables.
func (d *draft) fewer() {
	for _, name := range sortedKeys(d.tree) {
		if d.chance(12) {
			d.drop(name)
		}
	}
	for _, name := range sortedKeys(d.tree) {
		table, ok := d.tree[name].(map[string]any)
		if !ok {
			continue
		}
		for _, key := range sortedKeys(table) {
			if d.chance(20) {
				d.drop(name + "." + key)
			}
		}
	}
}

func (d *draft) drop(key string) {
	if fewer, ok := without(d.tree, key); ok && schema.Fits(fewer) {
		d.tree = fewer
	}
}

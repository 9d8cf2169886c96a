package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec/quantity"
)

// turning are control, format and direction characters of every kind.
const turning = "\x1b[2J\a\x00\b\r\x7f\u009b31m\u202e\u2066\u200b\u200d\u2060\ufeff\u00ad\u061c\u2028\u2029\ue000\U000e0041\U0010fffd"

// freeTexts are the keys of a schema that any text may stand at, an element of a
// list as [].
func freeTexts(t *testing.T, text []byte) []string {
	var root map[string]any
	require.NoError(t, json.Unmarshal(text, &root))
	var out []string
	var walk func(node map[string]any, key string)
	walk = func(node map[string]any, key string) {
		if ref, ok := node["$ref"].(string); ok {
			node = root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		}
		bound := slices.ContainsFunc([]string{"enum", "const", "pattern", "format"}, func(k string) bool { return node[k] != nil })
		if node["type"] == "string" && !bound && !slices.Contains(out, key) {
			out = append(out, key)
		}
		properties, _ := node["properties"].(map[string]any)
		for name, under := range properties {
			walk(under.(map[string]any), strings.TrimPrefix(key+"\n"+name, "\n"))
		}
		if items, ok := node["items"].(map[string]any); ok {
			walk(items, key+"\n[]")
		}
		for _, several := range []string{"oneOf", "anyOf", "allOf"} {
			list, _ := node[several].([]any)
			for _, one := range list {
				walk(one.(map[string]any), key)
			}
		}
	}
	walk(root, "")
	slices.Sort(out)
	return out
}

// put puts a text at a key, in every element of a list that is there, and makes
// tables that are not.
func putText(tree map[string]any, key []string, text func() string) {
	if len(key) == 1 {
		tree[key[0]] = text()
		return
	}
	switch under := tree[key[0]].(type) {
	case map[string]any:
		putText(under, key[1:], text)
	case []map[string]any:
		for _, element := range under {
			putText(element, key[2:], text)
		}
	case []any:
		for i := range under {
			under[i] = text()
		}
	default:
		if key[1] == "[]" {
			tree[key[0]] = []any{text()}
			return
		}
		made := map[string]any{}
		tree[key[0]] = made
		putText(made, key[1:], text)
	}
}

// hostileFolder fills a folder with a spec and a standards file that
// have a hostile text at every key that takes one, and a second spec that differs.
func hostileFolder(t *testing.T, folder string, demo []byte, turn int) {
	n := turn
	text := func() string {
		n++
		var plain string
		require.NoError(t, json.Unmarshal([]byte(`"`+hostile[n%len(hostile)]+`"`), &plain))
		return fmt.Sprint(plain, turning, n)
	}
	wood, sheet := text(), text()
	var tree map[string]any
	require.NoError(t, toml.Unmarshal(demo, &tree))
	tree["align"] = []map[string]any{{"at": "1750mm"}}
	tree["accept"] = []map[string]any{{"until": "2027-06-30"}, {"until": "2027-06-30"}}
	for _, leg := range tree["route"].([]map[string]any) {
		leg["tried"] = map[string]any{"date": "2027-06-30", "until": "2027-06-30"}
	}
	sides := map[string]any{"left": "0mm", "right": "0mm"}
	tree["survey"] = map[string]any{
		"accuracy": "1mm", "near": sides, "far": map[string]any{"left": "7144mm", "right": "7144mm"},
		"station": []map[string]any{{"at": "0mm", "left": "2120mm", "right": "2120mm"}, {"at": "7144mm", "left": "2120mm", "right": "2120mm"}},
	}
	for _, key := range freeTexts(t, schema.SpecSchema()) {
		putText(tree, strings.Split(key, "\n"), text)
	}
	for _, table := range []string{"rib", "rail"} {
		tree[table].(map[string]any)["species"] = wood
	}
	tree["room"].(map[string]any)["framing"].(map[string]any)["species"] = wood
	tree["skin"].(map[string]any)["material"] = sheet
	good := tree["accept"].([]map[string]any)[0]
	good["rule"] = "strap.setting"
	delete(good, "at")
	door := tree["route"].([]map[string]any)[slices.IndexFunc(tree["route"].([]map[string]any), func(leg map[string]any) bool { return leg["kind"] == "door" })]
	wide := door["width"]
	door["width"] = "100mm" // to have a finding there
	writeTOML(t, folder+"/a.ceiling.toml", tree)
	door["width"] = wide
	project := tree["project"].(map[string]any)
	tree["project"] = map[string]any{"title": project["title"].(string) + "!"}
	writeTOML(t, folder+"/b.ceiling.toml", tree)
	writeTOML(t, folder+"/dryfit.toml", hostileStandards(t, text, wood, sheet))
}

func hostileStandards(t *testing.T, text func() string, wood, sheet string) map[string]any {
	house := map[string]any{
		"dryfit": 1,
		"default": map[string]any{
			"strap.allowable": map[string]any{"load": "0.9kN"},
			"route":           []map[string]any{{"name": "van", "kind": "door", "width": "3m", "height": "3m"}},
		},
		"severity": map[string]any{"close.cover": "note"},
		"material": []map[string]any{
			{"name": wood, "kind": "timber", "group": "hardwood", "specific_gravity": 0.6, "density": "680kg/m3", "modulus": "12GPa", "rupture": "100MPa", "radial": 0.0018, "tangential": 0.00365},
			{"name": sheet, "kind": "sheet", "density": "540kg/m3", "least_radius": map[string]any{"long_bent": "300mm", "short_bent": "300mm"}},
		},
	}
	limits := map[string]any{}
	for _, r := range catalog.Rules() {
		for _, l := range r.Limits {
			if r.ID == "strap.setting" { // to have a finding to accept
				l.Sense = 0
			}
			limits[r.Full(l.Key)] = map[string]any{"value": looser(l), "source": text()}
		}
	}
	house["limit"] = limits
	for _, key := range freeTexts(t, schema.StandardsSchema(catalog.Known())) {
		path := strings.Split(key, "\n")
		switch {
		case path[0] == "limit", key == "check\ndocs", key == "check\nexclude\n[]", strings.HasPrefix(key, "check\nrequire"):
		case path[0] == "material" && path[len(path)-1] == "name":
		case strings.HasSuffix(key, "species"):
			putText(house, path, func() string { return wood })
		default:
			putText(house, path, text)
		}
	}
	return house
}

// looser is a figure past a limit, where that is physical, so that it is printed
// as loosened.
func looser(l engine.Limit) any {
	v := l.Value
	by := map[engine.Sense]float64{0: 1, engine.AtMost: 1.25, engine.AtLeast: 0.8}[l.Sense]
	switch {
	case math.IsNaN(v.SI): // only standards give one
		v.SI = 250
	case l.Lowest <= v.SI*by && v.SI*by <= l.Most:
		v.SI *= by
	}
	if v.Unit == quantity.One {
		return v.SI
	}
	return quantity.Metric.Format(v)
}

func writeTOML(t *testing.T, path string, tree map[string]any) {
	var b bytes.Buffer
	require.NoError(t, toml.NewEncoder(&b).Encode(tree))
	require.NoError(t, os.WriteFile(path, bytes.ReplaceAll(b.Bytes(), []byte(`= "2027-06-30"`), []byte("= 2027-06-30")), 0o644))
}

// A patch, and a spec that remedy writes, keep the spec's own bytes.
func TestRemedyKeepsTheBytes(t *testing.T) {
	src, err := os.ReadFile("../../docs/examples/alder-quay/specs/map-gallery.ceiling.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	const remark = " # \u202egnirts\u200b\n"
	require.NoError(t, os.WriteFile("a.ceiling.toml", []byte(strings.ReplaceAll(string(src), "\n", remark)), 0o644))
	patch, _, status := printed(t, "dryfit remedy --answers 1 --format patch a.ceiling.toml")
	require.Zero(t, status)
	changed := 0
	for line := range strings.Lines(patch) {
		if !strings.HasPrefix(line, "diff") && !strings.HasPrefix(line, "---") && !strings.HasPrefix(line, "+++") && !strings.HasPrefix(line, "@@") {
			require.True(t, strings.HasSuffix(line, remark), "%q", line)
			changed++
		}
	}
	require.Positive(t, changed)
	_, _, status = printed(t, "dryfit remedy --answers 1 --write a.ceiling.toml")
	require.Zero(t, status)
	written, err := os.ReadFile("a.ceiling.toml")
	require.NoError(t, err)
	for line := range strings.Lines(string(written)) {
		require.True(t, strings.HasSuffix(line, remark), "%q", line)
	}
}

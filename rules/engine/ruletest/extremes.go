package ruletest

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"sync"

	"dryfit/schema"
	"dryfit/spec"
)

// extremes are values at the ends of what each format takes, as a spec writes
// them: an author's slip of the unit or of the decimal point, and worse.
var extremes = map[string][]string{
	"length":        {`"0.001mm"`, `"1mm"`, `"20mm"`, `"1m"`, `"30m"`, `"1000m"`, `"10000m"`},
	"length-zero":   {`"0mm"`, `"0.001mm"`, `"1mm"`, `"1m"`, `"1000m"`, `"10000m"`},
	"length-signed": {`"-10000m"`, `"-1m"`, `"-1mm"`, `"0mm"`, `"1mm"`, `"1m"`, `"10000m"`},
	"mass":          {`"0.000000001kg"`, `"1g"`, `"1000kg"`, `"900000000000kg"`},
	"force":         {`"0.000000001N"`, `"1N"`, `"1000kN"`, `"900000000kN"`},
	"stress":        {`"0.000000001Pa"`, `"1Pa"`, `"1MPa"`, `"900GPa"`},
	"density":       {`"0.000000001kg/m3"`, `"1kg/m3"`, `"900000000000kg/m3"`},
	"temperature":   {`"-273.14C"`, `"-100C"`, `"0C"`, `"100C"`, `"373C"`, `"374C"`, `"900000000000C"`},
	"angle":         {`"-360deg"`, `"-0.001deg"`, `"0deg"`, `"0.001deg"`, `"89.999deg"`, `"90deg"`, `"179.999deg"`, `"180deg"`, `"900000000000rad"`},
	"bearing":       {`"0deg"`, `"0.001deg"`, `"180deg"`, `"359.999deg"`, `"6.28rad"`},
	"share":         {`"0%"`, `"0.000001%"`, `"50%"`, `"99.999999%"`, `"100%"`},
	"humidity":      {`"0%"`, `"0.000001%"`, `"50%"`, `"99.999999%"`, `"100%"`},
	"hours":         {`"0h"`, `"0.0000001h"`, `"900000000000h"`},
	"stock":         {`"1/4"`, `"4/4"`, `"1000/4"`, `"999999999/4"`},
}

// counts are those of every whole number.
var counts = []string{"1", "2", "3", "20", "100", "1000", "10000"}

// Place is one value of a spec and what it may be put to.
type Place struct {
	Key    string
	Values []string
}

var properties = sync.OnceValue(func() map[string]schema.Property {
	out := map[string]schema.Property{}
	for _, p := range schema.Properties() {
		out[p.Path] = p
		if p.Element != nil {
			out[p.Element.Path] = *p.Element
		}
	}
	return out
})

// Places lists the values of a spec that extremes are known for, in the order
// of their keys.
func Places(d *spec.Document) []Place {
	var out []Place
	var walk func(v any, key, path string)
	walk = func(v any, key, path string) {
		p := properties()[path]
		switch v := v.(type) {
		case map[string]any:
			for name, x := range v {
				walk(x, strings.TrimPrefix(key+"."+spec.Key(name), "."), strings.TrimPrefix(path+"."+name, "."))
			}
			return
		case []any:
			for i, x := range v {
				walk(x, key+"."+strconv.Itoa(i+1), path+".*")
			}
			return
		}
		values := slices.Clone(extremes[p.Format])
		if p.Type == "integer" && path != "dryfit" {
			values = slices.Clone(counts)
		}
		for _, word := range p.Enum {
			values = append(values, strconv.Quote(word))
		}
		if len(values) > 0 {
			out = append(out, Place{key, values})
		}
	}
	walk(d.Tree, "", "")
	slices.SortFunc(out, func(a, b Place) int { return strings.Compare(a.Key, b.Key) })
	return out
}

// Put is a spec with the value of a key written otherwise, where the schema
// takes it.
func Put(d *spec.Document, key, value string) (*spec.Document, bool) {
	r, ok := d.ValueRange(key)
	if !ok {
		return nil, false
	}
	changed := string(d.Source[:r.Start]) + value + string(d.Source[r.End:])
	out, problems := spec.Parse(d.Path, []byte(changed))
	return out, len(problems) == 0 && len(schema.Check(out)) == 0
}

// Extreme is a spec with up to so many of its values put to an extreme that the
// schema takes, and what was put where.
func Extreme(random *rand.Rand, d *spec.Document, most int) (*spec.Document, []string) {
	var put []string
	for range 1 + random.IntN(most) {
		places := Places(d)
		p := places[random.IntN(len(places))]
		v := p.Values[random.IntN(len(p.Values))]
		if next, ok := Put(d, p.Key, v); ok {
			d, put = next, append(put, p.Key+" = "+v)
		}
	}
	return d, put
}

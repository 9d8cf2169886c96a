package standards

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Shop is what a shop has, and how it works. Lengths are in m.
type Shop struct {
	Blank, Press float64 // longest clear board; longest form and clamps, 0: not stated
	Pick         float64 // heaviest piece lifted by hand, kg; 0: not stated
	Kerf, Plane  float64 // of a saw; off each sawn face
	Joint        float64 // off a width that is jointed after glueing or ripping
	Trim         struct{ Strip, Rail, Segment float64 }
	Scarf        struct {
		Slope, Apart float64 // length by thickness; between neighbours' scarfs
		Allowed      bool
	}
	Clamp struct {
		Spacing, Hardwood, Softwood float64 // the last two are pressures, Pa
		Capacity                    float64 // N; 0: not stated
	}
	Defect struct{ Hardwood, Softwood float64 } // shares added to lumber
	Stock  []int                                // nominal thicknesses in quarters of an inch, thinnest first

	settings map[string]Setting
}

// Setting is a key of the shop that a file sets.
type Setting struct {
	Value  any // as in the file
	Source string
	Origin Origin
}

// shopKey is one key of the shop's table with a figure, and the built-in one; none
// where a shop alone can say.
type shopKey struct {
	key     string
	unit    quantity.Unit
	builtIn string
	at      func(*Shop) *float64
}

// The built-in figures are common practice.
var shopKeys = []shopKey{
	{"blank", quantity.Metre, "3660mm", func(s *Shop) *float64 { return &s.Blank }},
	{"press", quantity.Metre, "", func(s *Shop) *float64 { return &s.Press }},
	{"pick", quantity.Kilogram, "", func(s *Shop) *float64 { return &s.Pick }},
	{"kerf", quantity.Metre, "3.2mm", func(s *Shop) *float64 { return &s.Kerf }},
	{"plane", quantity.Metre, "0.8mm", func(s *Shop) *float64 { return &s.Plane }},
	{"joint", quantity.Metre, "6mm", func(s *Shop) *float64 { return &s.Joint }},
	{"trim.strip", quantity.Metre, "75mm", func(s *Shop) *float64 { return &s.Trim.Strip }},
	{"trim.rail", quantity.Metre, "25mm", func(s *Shop) *float64 { return &s.Trim.Rail }},
	{"trim.segment", quantity.Metre, "12mm", func(s *Shop) *float64 { return &s.Trim.Segment }},
	{"scarf.slope", quantity.One, "12", func(s *Shop) *float64 { return &s.Scarf.Slope }},
	{"scarf.apart", quantity.Metre, "300mm", func(s *Shop) *float64 { return &s.Scarf.Apart }},
	{"clamp.spacing", quantity.Metre, "150mm", func(s *Shop) *float64 { return &s.Clamp.Spacing }},
	{"clamp.hardwood", quantity.Pascal, "1.4MPa", func(s *Shop) *float64 { return &s.Clamp.Hardwood }},
	{"clamp.softwood", quantity.Pascal, "0.9MPa", func(s *Shop) *float64 { return &s.Clamp.Softwood }},
	{"clamp.capacity", quantity.Newton, "", func(s *Shop) *float64 { return &s.Clamp.Capacity }},
	{"defect.hardwood", quantity.Fraction, "20%", func(s *Shop) *float64 { return &s.Defect.Hardwood }},
	{"defect.softwood", quantity.Fraction, "10%", func(s *Shop) *float64 { return &s.Defect.Softwood }},
}

var builtInStock = []int{4, 5, 6, 8, 10, 12, 16}

// least slope of a scarf that is still one: a steeper joint holds next to nothing,
// by common practice.
const leastSlope = 4

// Shop is what the shop has by the nearest file that says, key by key.
func (s *Standards) Shop() *Shop {
	shop := &Shop{settings: s.shop, Stock: builtInStock}
	shop.Scarf.Allowed = true
	for _, k := range shopKeys {
		value := any(k.builtIn)
		if k.unit == quantity.One {
			value = float64(12)
		}
		if set, ok := s.shop[k.key]; ok {
			value = set.Value
		}
		if value != "" {
			*k.at(shop) = figure(k.unit, value).SI
		}
	}
	if set, ok := s.shop["scarf.allowed"]; ok {
		shop.Scarf.Allowed = set.Value.(bool)
	}
	if set, ok := s.shop["stock"]; ok {
		shop.Stock = nil
		for _, v := range list(set.Value) {
			n, _ := quantity.Stock(fmt.Sprint(v)).Quarters()
			shop.Stock = append(shop.Stock, n)
		}
		slices.Sort(shop.Stock)
	}
	return shop
}

// Set is where a file sets a key, and what it says the figure comes from.
func (s *Shop) Set(key string) (Setting, bool) {
	set, ok := s.settings[key]
	return set, ok
}

// Settings are the figures in force, by their keys, with what each comes from: a
// file's own word, or common practice.
func (s *Shop) Settings() []Default {
	practice := cite.CommonPractice().String()
	var out []Default
	add := func(key string, value any) {
		d := Default{Key: "shop." + key, Value: value, Source: practice}
		if set, ok := s.settings[key]; ok {
			d.Value, d.Source, d.Origin = set.Value, set.Source, set.Origin
		}
		if d.Value != "" {
			out = append(out, d)
		}
	}
	for _, k := range shopKeys {
		add(k.key, k.builtIn)
	}
	add("scarf.allowed", true)
	var stock []any
	for _, n := range s.Stock {
		stock = append(stock, fmt.Sprintf("%d/4", n))
	}
	add("stock", stock)
	return out
}

// readShop takes what a file says of its shop, and refuses what no shop can have.
func (r *reader) readShop() {
	table, _ := r.table("shop")
	if len(table) == 0 {
		return
	}
	source, _ := table["source"].(string)
	if _, given := table["source"]; given && strings.TrimSpace(source) == "" {
		r.refuse("shop.source", "state where the values come from, or leave the key out")
	}
	source = cmp.Or(strings.TrimSpace(source), r.layer.Name)
	take := func(key string) {
		if v, given := spec.Lookup(table, key); given {
			r.layer.shop[key] = Setting{Value: v, Source: source, Origin: r.origin("shop." + key)}
		}
	}
	for _, k := range shopKeys {
		take(k.key)
	}
	take("scarf.allowed")
	take("stock")
	for i, v := range list(table["stock"]) {
		n, _ := quantity.Stock(fmt.Sprint(v)).Quarters()
		if _, err := timber.Surfaced(n); err != nil {
			r.refuse(spec.Key("shop", "stock", i+1), "%v", err)
		}
	}
	r.sound()
}

// sound compares the figures of a shop with each other, those that the file leaves
// out as they are built in.
func (r *reader) sound() {
	s := (&Standards{shop: r.layer.shop}).Shop()
	if s.Scarf.Slope < leastSlope {
		r.refuse("shop.scarf.slope", "a scarf of 1 in %g is too steep; the minimum is 1 in %d", s.Scarf.Slope, leastSlope)
	}
	if s.Blank <= 2*s.Trim.Strip {
		r.refuse(r.said("blank", "trim.strip"), "a blank of %s is no longer than the trim of a strip's two ends, 2 × %s",
			lengthText(s.Blank), lengthText(s.Trim.Strip))
	}
	if s.Press > 0 && s.Press <= 2*s.Trim.Strip {
		r.refuse("shop.press", "a press of %s is no longer than the trim of a strip's two ends, 2 × %s", lengthText(s.Press), lengthText(s.Trim.Strip))
	}
	for _, d := range []struct {
		key string
		by  float64
	}{{"defect.hardwood", s.Defect.Hardwood}, {"defect.softwood", s.Defect.Softwood}} {
		if d.by >= 1 {
			r.refuse("shop."+d.key, "the allowance for defects is a share of the lumber, less than 100%%")
		}
	}
}

// said is the first of some keys of the shop that the file gives.
func (r *reader) said(keys ...string) string {
	for _, k := range keys {
		if _, given := r.layer.shop[k]; given {
			return "shop." + k
		}
	}
	return "shop"
}

func lengthText(m float64) string { return quantity.Metric.Format(quantity.Length(m).Value()) }

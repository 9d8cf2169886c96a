package standards

import (
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Beyond is a figure of a firm's own material past all that is published of wood,
// on the side where more passes.
type Beyond struct {
	Key       string // in the standards file
	Material  string
	Value     quantity.Value
	Published quantity.Value // the extreme
	Above     bool           // the extreme is the most, not the least
	Source    string
	Origin    Origin
}

// property is a figure of a material, in SI as the file states it.
type property struct {
	key  string
	unit quantity.Unit
	// What it may physically be, both ends allowed. The ranges are wide: the wall of
	// a wood cell has a specific gravity of about 1.5 (from memory, Wood Handbook,
	// 2010, ch. 4), and no wood reaches it; the other ends are common practice.
	lowest, most float64
	// Past which end of what is published more would pass.
	under, over bool
	published   func() (least, most float64)
}

var properties = map[string][]property{
	"timber": {
		{"specific_gravity", quantity.One, 0.05, 1.5, true, true, ofSpecies(func(s timber.Species) float64 { return s.SG12 })},
		{"modulus", quantity.Pascal, 0.5e9, 50e9, false, true, ofSpecies(func(s timber.Species) float64 { return s.MOE })},
		{"rupture", quantity.Pascal, 2e6, 400e6, false, true, ofSpecies(func(s timber.Species) float64 { return s.MOR })},
		{"radial", quantity.One, 1e-5, 0.01, true, false, ofSpecies(func(s timber.Species) float64 { return s.RadialChange / 100 })},
		{"tangential", quantity.One, 1e-5, 0.01, true, false, ofSpecies(func(s timber.Species) float64 { return s.TangentialChange / 100 })},
	},
	"sheet": {
		{"density", quantity.KilogramPerCubicMetre, 50, 3000, true, false, ofSheets(func(s timber.SheetMaterial) []float64 { return []float64{s.Density} })},
		{"least_radius.long_bent", quantity.Metre, 0.005, 100, true, false, ofSheets(func(s timber.SheetMaterial) []float64 { return radii(s.LongBent) })},
		{"least_radius.short_bent", quantity.Metre, 0.005, 100, true, false, ofSheets(func(s timber.SheetMaterial) []float64 { return radii(s.ShortBent) })},
	},
}

func ofSpecies(of func(timber.Species) float64) func() (least, most float64) {
	return func() (least, most float64) {
		return timber.Published(timber.All(), func(s timber.Species) []float64 { return []float64{of(s)} })
	}
}

func ofSheets(of func(timber.SheetMaterial) []float64) func() (least, most float64) {
	return func() (least, most float64) { return timber.Published(timber.AllSheets(), of) }
}

func radii(rows []timber.BendRow) (out []float64) {
	for _, r := range rows {
		out = append(out, r.Radius)
	}
	return out
}

// readProperties refuses what no material can have, and keeps what is past all that
// is published. Figures that are absent are passed over.
func (r *reader) readProperties(key, name string, entry map[string]any) bool {
	sound := true
	for _, p := range properties[entry["kind"].(string)] {
		stated, given := spec.Lookup(entry, p.key)
		if !given {
			continue
		}
		at, v := key+"."+p.key, figure(p.unit, stated)
		if !(p.lowest <= v.SI && v.SI <= p.most) {
			sound = false
			r.refuse(at, "%s is outside the physical range, %s to %s", quantity.Metric.Format(v),
				quantity.Metric.Format(quantity.Value{SI: p.lowest, Unit: p.unit}), quantity.Metric.Format(quantity.Value{SI: p.most, Unit: p.unit}))
			continue
		}
		least, most := p.published()
		b := Beyond{
			Key: at, Material: name, Value: v, Published: quantity.Value{SI: least, Unit: p.unit},
			Source: entry["source"].(string), Origin: r.origin(at),
		}
		if p.over && v.SI > most {
			b.Published.SI, b.Above = most, true
		}
		if b.Above || p.under && v.SI < least {
			r.layer.beyond[materialName(name)] = append(r.layer.beyond[materialName(name)], b)
		}
	}
	return sound
}

func (r *reader) readMaterials() {
	for i, m := range list(r.doc.Tree["material"]) {
		entry, key := m.(map[string]any), spec.Key("material", i+1)
		name := entry["name"].(string)
		if s, err := timber.LookupSheet(name); err == nil {
			r.refuse(key+".name", "%q is built in, as %s with a density of %s; give your material another name",
				name, s.Name, quantity.Metric.Format(quantity.Density(s.Density).Value()))
			continue
		}
		if s, err := timber.Lookup(name); err == nil {
			r.refuse(key+".name", "%q is built in, as the species %s; give your material another name", name, s.Name)
			continue
		}
		r.layer.materials[materialName(name)] = r.origin(key + ".name")
		if !r.readProperties(key, name, entry) {
			continue
		}
		switch entry["kind"] {
		case "sheet":
			r.sheet(key, name, entry)
		case "timber":
			r.timber(key, name, entry)
		}
	}
}

func (r *reader) needs(key string, entry map[string]any, names ...string) bool {
	for _, n := range names {
		if _, given := entry[n]; !given {
			r.refuse(key, "a %s material needs its %s", entry["kind"], n)
			return false
		}
	}
	return true
}

// source is a firm's own word for a figure, which a hold may rest on.
func (r *reader) source(entry map[string]any) cite.Source {
	return cite.Work{Title: entry["source"].(string)}.At(r.layer.Name)
}

func (r *reader) sheet(key, name string, entry map[string]any) {
	if !r.needs(key, entry, "density") {
		return
	}
	s := timber.SheetMaterial{
		Name: name, Density: figure(quantity.KilogramPerCubicMetre, entry["density"]).SI, DensityFrom: r.source(entry),
	}
	if radius, ok := entry["least_radius"].(map[string]any); ok {
		s.LongBentAny = figure(quantity.Metre, radius["long_bent"]).SI
		s.ShortBentAny = figure(quantity.Metre, radius["short_bent"]).SI
		s.BendFrom = r.source(entry)
	}
	r.layer.sheets = append(r.layer.sheets, s)
}

func (r *reader) timber(key, name string, entry map[string]any) {
	if !r.needs(key, entry, "group", "specific_gravity", "modulus", "rupture") {
		return
	}
	group := timber.Hardwood
	if entry["group"] == "softwood" {
		group = timber.Softwood
	}
	number := func(k string) float64 {
		if _, given := entry[k]; !given {
			return 0
		}
		return figure(quantity.One, entry[k]).SI
	}
	r.layer.species = append(r.layer.species, timber.Own(name, group, number("specific_gravity"),
		figure(quantity.Pascal, entry["modulus"]).SI, figure(quantity.Pascal, entry["rupture"]).SI,
		number("radial"), number("tangential"), r.source(entry)))
}

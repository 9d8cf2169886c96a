package schema

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"sync"

	"dryfit/spec/quantity"
)

// Known is what a standards file may speak of: the limits and the rules of the
// catalogue. The keys that may have a default are the spec's own.
type Known struct {
	Limits []KnownLimit
	Rules  []KnownRule
}

// KnownLimit is a limit of the catalogue.
type KnownLimit struct {
	Name  string // in full: "bend.lamination.ratio"
	Title string
	Unit  quantity.Unit
}

// KnownRule is a rule of the catalogue.
type KnownRule struct {
	ID, Title string
	Refers    bool // no standards can change that
}

// object is a JSON object; its keys are written in their alphabetical order.
type object = map[string]any

func table(title, description string, properties object, required ...string) object {
	t := object{
		"title": title, "description": description, "type": "object",
		"properties": properties, "additionalProperties": false,
	}
	if len(required) > 0 {
		t["required"] = required
	}
	return t
}

func property(title, description string, more object) object {
	if f, ok := more["format"].(string); ok {
		description += " " + formats[f].written
	}
	p := object{"title": title, "description": description}
	for k, v := range more {
		p[k] = v
	}
	return p
}

// formatOf is how a figure of each unit is written.
var formatOf = map[quantity.Unit]string{
	quantity.Metre: "length-zero", quantity.Newton: "force", quantity.Pascal: "stress",
	quantity.Fraction: "share", quantity.Hour: "hours", quantity.Kilogram: "mass", quantity.Radian: "angle",
}

func figure(u quantity.Unit) object {
	if u == quantity.One {
		return object{"type": "number"}
	}
	return object{"type": "string", "format": formatOf[u]}
}

// StandardsSchema is the JSON Schema of a standards file, as it is published. It
// is made from the catalogue, so that a new rule's limit is known at once.
func StandardsSchema(k Known) []byte { return withPatterns(marshalled(standardsSchema(k))) }

func standardsSchema(k Known) object {
	source := property("Source", "Source of the value.", object{"type": "string", "minLength": 1})
	limits, severities, ids := object{}, object{}, []string{}
	for _, l := range k.Limits {
		limits[l.Name] = table("Limit", "Replaces the built-in limit: "+l.Title+".", object{
			"value":  property("Value", "The value of the limit.", figure(l.Unit)),
			"source": source,
		}, "value", "source")
	}
	for _, r := range k.Rules {
		if !r.Refers {
			ids = append(ids, r.ID)
			severities[r.ID] = property("Severity", "Highest severity of a finding of this rule, which checks that "+r.Title+".",
				object{"enum": []string{"note", "query", "hold"}})
		}
	}
	root := table("Standards", "Limits, defaults and materials of a firm or a shop, format version 1.", object{
		"dryfit": property("Format", "Version of the format that the file is written for.", object{"type": "integer", "const": 1}),
		"name":   property("Name", "Firm or shop that sets these standards.", object{"type": "string", "minLength": 1}),
		"check": table("Check", "What is checked.", object{
			"folders": property("Folders", "Folders to check if the command names no path, relative to this file.",
				object{"type": "array", "items": property("Folder", "A path.", object{"type": "string", "minLength": 1})}),
			"exclude": property("Exclude", "Specs that are not checked, as patterns relative to this file's folder: archive/**. A path that a command names is always checked.",
				object{"type": "array", "items": property("Pattern", "A path; * stands for any part of a name, ** for any folders.", object{"type": "string", "minLength": 1})}),
			"require": table("Require", "Rules that must be checked and keys that must be given. If one is missing, the spec gets a hold.", object{
				"rules": property("Rules", "Rules that must be checked, as patterns such as strap.*.",
					object{"type": "array", "items": property("Pattern", "The id of a rule; * stands for any part of it.", object{"type": "string", "minLength": 1})}),
				"keys": property("Keys", "Keys that a spec must give. A default does not count as given.",
					object{"type": "array", "items": property("Key", "A key of the format, such as lift.stations.", object{"type": "string", "minLength": 1})}),
			}),
			"docs": property("Docs", "Absolute address at which the pages of dryfit are published. Findings in SARIF link to it.",
				object{"type": "string", "minLength": 1}),
		}),
		"limit":    table("Limits", "Limits, by rule and name.", limits),
		"severity": table("Severities", "Highest severity of each rule. The severity of refer findings can't be changed.", severities),
		"accept": table("Acceptances", "Findings that a spec may accept.", object{
			"holds": property("Holds", "Rules with holds that a spec may accept.",
				object{"type": "array", "items": property("Rule", "Its id.", object{"enum": ids})}),
			"tried": property("Tried", "Whether a trial that a spec states clears a leg of the route that the check does not decide.", object{"type": "boolean"}),
		}),
		"default":  table("Defaults", "Values for keys that a spec leaves out.", defaultable()),
		"material": materials(source),
		"remedy":   order(),
		"shop":     shop(source),
	}, "dryfit", "name")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = standardsID
	return root
}

func marshalled(schema object) []byte {
	text, err := json.MarshalIndent(schema, "", "  ")
	if err != nil {
		panic(err) // nothing in it but text and numbers
	}
	return append(text, '\n')
}

const standardsID = "https://dryfit.example/schema/standards-1.json"

// StandardsShape checks standards files.
func StandardsShape(k Known) *Shape {
	root := sync.OnceValue(func() object { return standardsSchema(k) })
	return newShape(standardsID, func() []byte { return marshalled(root()) }, root)
}

func materials(source object) object {
	text := func(title, description string) object {
		return property(title, description, object{"type": "string", "minLength": 1})
	}
	number := func(title, description string) object {
		return property(title, description, object{"type": "number", "exclusiveMinimum": 0})
	}
	of := func(format, title, description string) object {
		return property(title, description, object{"type": "string", "format": format})
	}
	m := table("Material", "A sheet material or a species that is not built in.", object{
		"name":    text("Name", "Name that specs use. It must differ from all built-in names."),
		"kind":    property("Kind", "Kind of material: a sheet, or a timber.", object{"enum": []string{"sheet", "timber"}}),
		"source":  source,
		"density": of("density", "Density", "Density of a sheet material."),
		"least_radius": table("Least radius", "Least radius to which a dry sheet bends, on its concave face.", object{
			"long_bent":  of("length", "Long edge bent", "Least radius with the long edge bent; the face grain of plywood is then bent."),
			"short_bent": of("length", "Short edge bent", "Least radius with the short edge bent, across the face grain of plywood."),
		}, "long_bent", "short_bent"),
		"group":            property("Group", "Group of a species: hardwood or softwood.", object{"enum": []string{"hardwood", "softwood"}}),
		"specific_gravity": number("Specific gravity", "Specific gravity of a species at 12% moisture."),
		"modulus":          of("stress", "Modulus of elasticity", "Modulus of elasticity at 12% moisture, measured on a beam loaded at the centre."),
		"rupture":          of("stress", "Modulus of rupture", "Modulus of rupture at 12% moisture."),
		"radial":           number("Radial change", "Radial change for one percentage point of moisture content, as a fraction: 0.0018."),
		"tangential":       number("Tangential change", "Tangential change for one percentage point of moisture content, as a fraction: 0.00365."),
	}, "name", "kind", "source")
	return object{"title": "Materials", "description": "Materials that are not built in.", "type": "array", "items": m}
}

// shop is what the shop has, and how it works.
func shop(source object) object {
	of := func(format, title, description string) object {
		return property(title, description, object{"type": "string", "format": format})
	}
	return table("Shop", "Stock and equipment of the shop. Strips, forms, lumber and sheets are computed from them.", object{
		"blank": of("length", "Blank", "Longest clear board."),
		"press": of("length", "Press", "Longest form and clamps. If it is absent, the length of forms is not checked."),
		"pick":  of("mass", "Pick", "Heaviest blank or rib that is lifted by hand in the shop. If it is absent, their mass is not checked."),
		"kerf":  of("length", "Kerf", "Width of a saw cut."),
		"plane": of("length", "Plane", "Thickness planed off each sawn face."),
		"joint": of("length", "Joint", "Width jointed off an edge."),
		"trim": table("Trim", "Length trimmed off each end.", object{
			"strip":   of("length", "Strip", "Length trimmed off each end of a bent strip."),
			"rail":    of("length", "Rail", "Length trimmed off each end of a rail."),
			"segment": of("length", "Segment", "Length trimmed off each end of a sawn segment."),
		}),
		"scarf": table("Scarf", "Scarfs of strips that are longer than a blank.", object{
			"slope":   property("Slope", "Length of a scarf divided by its thickness.", object{"type": "number", "exclusiveMinimum": 0}),
			"apart":   of("length", "Apart", "Least distance along the rib between the scarfs of adjacent strips."),
			"allowed": property("Allowed", "Whether strips may be scarfed.", object{"type": "boolean"}),
		}),
		"clamp": table("Clamp", "Clamps that press the strips of a rib.", object{
			"spacing":  of("length", "Spacing", "Greatest distance between clamps."),
			"hardwood": of("stress", "Hardwood", "Pressure on the glue of hardwood."),
			"softwood": of("stress", "Softwood", "Pressure on the glue of softwood."),
			"capacity": of("force", "Capacity", "Force of one clamp. If it is absent, the required force is only noted."),
		}),
		"defect": table("Defects", "Allowance for defects, added to the lumber to buy.", object{
			"hardwood": of("share", "Hardwood", "Allowance for hardwood, as a share of the lumber."),
			"softwood": of("share", "Softwood", "Allowance for softwood, as a share of the lumber."),
		}),
		"stock": property("Stock", "Nominal thicknesses of plank that the shop buys.",
			object{"type": "array", "minItems": 1, "items": of("stock", "Plank", "Nominal thickness of a plank.")}),
		"source": source,
	})
}

// order is how remedies are ranked.
func order() object {
	entries := []string{"*"}
	for _, p := range Properties() {
		if p.Path != "dryfit" && p.Path != "project" && p.Path != "accept" && !strings.HasPrefix(p.Path, "project.") && !strings.HasPrefix(p.Path, "accept.") {
			entries = append(entries, p.Path)
		}
	}
	entry := property("Key", "A key or table of the spec. * stands for every key that no group names, or for every element of a list.", object{"enum": entries})
	return table("Remedies", "How the values that would pass, and remedies, are ranked.", object{
		"order": property("Order", "Groups of keys and tables, the cheapest to change first. The most specific entry applies to a key. Keys that no group names come last.",
			object{"type": "array", "minItems": 1, "items": object{"title": "Group", "description": "Keys and tables that are equally cheap to change.", "type": "array", "minItems": 1, "items": entry}}),
	})
}

// defaultable are the optional keys of a spec that belong to no list, each with
// its own part of the spec's schema, and the legs that come before a spec's.
func defaultable() object {
	out := object{}
	var walk func(path string, part object)
	walk = func(path string, part object) {
		properties, _ := part["properties"].(object)
		for name, v := range properties {
			child := v.(object)
			if path == "" {
				if name != "vault" && name != "accept" {
					walk(name, child)
				}
				continue
			}
			key := path + "." + name
			if !slices.Contains(anys(part["required"]), any(name)) {
				out[key] = child
			}
			walk(key, child)
		}
	}
	walk("", decodedSpec())
	out["route"] = ownRoute()
	return out
}

// ownRoute are legs as a spec has them, but for their trials: these are of one
// ceiling's panels.
func ownRoute() object {
	leg := maps.Clone(decodedSpec()["properties"].(object)["route"].(object)["items"].(object))
	parts := maps.Clone(leg["properties"].(object))
	delete(parts, "tried")
	leg["properties"] = parts
	return object{
		"title": "Route", "description": "The shop's own vehicle, doors and corridors. These legs come before the legs of each spec.",
		"type": "array", "minItems": 1, "items": leg,
	}
}

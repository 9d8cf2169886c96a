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
	source := property("Source", "Where the figure comes from.", object{"type": "string", "minLength": 1})
	limits, severities, ids := object{}, object{}, []string{}
	for _, l := range k.Limits {
		limits[l.Name] = table("Limit", "Set in place of the built-in figure: "+l.Title+".", object{
			"value":  property("Value", "The figure.", figure(l.Unit)),
			"source": source,
		}, "value", "source")
	}
	for _, r := range k.Rules {
		if !r.Refers {
			ids = append(ids, r.ID)
			severities[r.ID] = property("Severity", "The most that a finding of this rule may say: that "+r.Title+".",
				object{"enum": []string{"note", "query", "hold"}})
		}
	}
	root := table("Standards", "The limits that a firm or a shop works to, format version 1.", object{
		"dryfit": property("Format", "Version of the format that the file is written for.", object{"type": "integer", "const": 1}),
		"name":   property("Name", "Whose standards they are.", object{"type": "string", "minLength": 1}),
		"check": table("Check", "What is checked.", object{
			"folders": property("Folders", "Checked where the command names no path; relative to this file.",
				object{"type": "array", "items": property("Folder", "A path.", object{"type": "string", "minLength": 1})}),
			"exclude": property("Exclude", "Specs under a folder that are not checked, as patterns from this file's folder: archive/**. What a command names is checked all the same.",
				object{"type": "array", "items": property("Pattern", "A path; * stands for any part of a name, ** for any folders.", object{"type": "string", "minLength": 1})}),
			"require": table("Require", "What must be checked, and given: its absence holds a spec.", object{
				"rules": property("Rules", "That must be checked, as patterns such as strap.*.",
					object{"type": "array", "items": property("Pattern", "The id of a rule; * stands for any part of it.", object{"type": "string", "minLength": 1})}),
				"keys": property("Keys", "That a spec must give; no default stands for them.",
					object{"type": "array", "items": property("Key", "As the format has it, such as lift.stations.", object{"type": "string", "minLength": 1})}),
			}),
			"docs": property("Docs", "Absolute address that these pages are published under; findings in SARIF link there.",
				object{"type": "string", "minLength": 1}),
		}),
		"limit":    table("Limits", "By rule and name.", limits),
		"severity": table("Severities", "By rule; what is referred stays referred.", severities),
		"accept": table("Acceptances", "What a spec may accept.", object{
			"holds": property("Holds", "Rules whose hold a spec may accept.",
				object{"type": "array", "items": property("Rule", "Its id.", object{"enum": ids})}),
			"tried": property("Tried", "Whether a trial that a spec states lifts what is not decided of the way in.", object{"type": "boolean"}),
		}),
		"default":  table("Defaults", "What is taken for keys that a spec leaves out, by those keys.", defaultable()),
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
	m := table("Material", "A sheet material or a species of a firm's own.", object{
		"name":    text("Name", "As specs name it; not one that is built in."),
		"kind":    property("Kind", "What it is.", object{"enum": []string{"sheet", "timber"}}),
		"source":  source,
		"density": of("density", "Density", "Of a sheet material."),
		"least_radius": table("Least radius", "That a sheet bends to dry, on its concave face.", object{
			"long_bent":  of("length", "Long edge bent", "Which bends the face grain of plywood."),
			"short_bent": of("length", "Short edge bent", "Across the face grain of plywood."),
		}, "long_bent", "short_bent"),
		"group":            property("Group", "Of a species.", object{"enum": []string{"hardwood", "softwood"}}),
		"specific_gravity": number("Specific gravity", "At 12% moisture."),
		"modulus":          of("stress", "Modulus of elasticity", "At 12% moisture, of a centre-loaded beam."),
		"rupture":          of("stress", "Modulus of rupture", "At 12% moisture."),
		"radial":           number("Radial change", "By one percent of moisture, as a fraction: 0.0018."),
		"tangential":       number("Tangential change", "By one percent of moisture, as a fraction: 0.00365."),
	}, "name", "kind", "source")
	return object{"title": "Materials", "description": "Materials that are not built in.", "type": "array", "items": m}
}

// shop is what the shop has, and how it works.
func shop(source object) object {
	of := func(format, title, description string) object {
		return property(title, description, object{"type": "string", "format": format})
	}
	return table("Shop", "What the shop has, and how it works: what strips, forms, lumber and sheets are worked out by.", object{
		"blank": of("length", "Blank", "Longest clear board."),
		"press": of("length", "Press", "Longest form and clamps; without it none is too long."),
		"pick":  of("mass", "Pick", "Heaviest blank or rib that is lifted by hand in the shop; without it none is too heavy."),
		"kerf":  of("length", "Kerf", "Of a saw."),
		"plane": of("length", "Plane", "Off each sawn face."),
		"joint": of("length", "Joint", "Off a width that is jointed."),
		"trim": table("Trim", "Off each end.", object{
			"strip":   of("length", "Strip", "Off each end of a bent strip."),
			"rail":    of("length", "Rail", "Off each end of a rail."),
			"segment": of("length", "Segment", "Off each end of a sawn segment."),
		}),
		"scarf": table("Scarf", "How strips are made longer than a blank.", object{
			"slope":   property("Slope", "Length of a scarf by its thickness.", object{"type": "number", "exclusiveMinimum": 0}),
			"apart":   of("length", "Apart", "From a scarf to those of the strips beside it, along them."),
			"allowed": property("Allowed", "Whether strips may be scarfed.", object{"type": "boolean"}),
		}),
		"clamp": table("Clamp", "How strips are pressed.", object{
			"spacing":  of("length", "Spacing", "From clamp to clamp, the most."),
			"hardwood": of("stress", "Hardwood", "Pressure on the glue of hardwood."),
			"softwood": of("stress", "Softwood", "Pressure on the glue of softwood."),
			"capacity": of("force", "Capacity", "Of one clamp; without it the force on each is only noted."),
		}),
		"defect": table("Defects", "Added to the lumber that is bought.", object{
			"hardwood": of("share", "Hardwood", "Share of the lumber."),
			"softwood": of("share", "Softwood", "Share of the lumber."),
		}),
		"stock": property("Stock", "Nominal thicknesses of plank that the shop buys.",
			object{"type": "array", "minItems": 1, "items": of("stock", "Plank", "Its nominal thickness.")}),
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
	entry := property("Key", "A key or table of the spec; * for all that no group names, or for the number of an element of a list.", object{"enum": entries})
	return table("Remedies", "What offers and remedies go by.", object{
		"order": property("Order", "Groups of keys and tables, in the order in which the shop would rather change them, the cheapest first. What is named most closely holds; what is not named comes last.",
			object{"type": "array", "minItems": 1, "items": object{"title": "Group", "description": "Keys and tables that are as cheap to change.", "type": "array", "minItems": 1, "items": entry}}),
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
		"title": "Route", "description": "The shop's own vehicle, doors and corridors, leg by leg: they come before the legs of each spec.",
		"type": "array", "minItems": 1, "items": leg,
	}
}

package schema

import (
	"encoding/json"
	"slices"
)

// Output is the schema of what a command writes as JSON.
type Output struct {
	Name    string // as the schema command takes it
	Command string
	File    string // of what it writes; "" for --format json
	text    func() []byte
}

// Text is the JSON Schema.
func (o Output) Text() []byte { return o.text() }

// Outputs lists the published schemas of JSON output.
func Outputs() []Output {
	return []Output{
		{"output", "check", "", OutputSchema},
		{"compare", "compare", "", CompareSchema},
		{"calcs", "calcs", "", func() []byte { return published("calcs", "Calcs", calcs()) }},
		{"takeoff", "takeoff", "", func() []byte { return published("takeoff", "Takeoff", takeoff()) }},
		{"study", "study", "", func() []byte { return publishedStudy() }},
		{"remedy", "remedy", "", func() []byte { return published("remedy", "Remedy", remedies()) }},
		{"in-force", "standards", "", func() []byte { return published("in-force", "In force", inForce(), "standards") }},
		{"shop", "shop", "shop.json", shopIndex},
		{"raise", "raise", "", func() []byte { return published("raise", "Raise", raise()) }},
	}
}

// field is one key of a document.
type field struct {
	name     string
	part     object
	optional bool
}

func must(name string, part object) field { return field{name, part, false} }
func may(name string, part object) field  { return field{name, part, true} }

// record is an object with these keys and no others.
func record(title, description string, fields []field) object {
	properties, required := object{}, []string{}
	for _, f := range fields {
		properties[f.name] = f.part
		if !f.optional {
			required = append(required, f.name)
		}
	}
	return table(title, description, properties, required...)
}

func text(title, description string) object {
	return property(title, description, object{"type": "string"})
}

func count(title, description string) object {
	return property(title, description, object{"type": "integer", "minimum": 0})
}

func flag(title, description string) object {
	return property(title, description, object{"type": "boolean"})
}

func number(title, description string) object {
	return property(title, description, object{"type": "number"})
}

// maybe is a number that there may be none of.
func maybe(title, description string) object {
	return property(title, description, object{"type": []string{"number", "null"}})
}

func listOf(title, description string, item object) object {
	return property(title, description, object{"type": "array", "items": item})
}

func word(title, description string, words ...string) object {
	return property(title, description, object{"enum": words})
}

// value is a value of a spec.
func value(title, description string, more ...string) object {
	kinds := append([]string{"string", "integer", "number", "boolean", "array", "object"}, more...)
	return property(title, description, object{"type": kinds})
}

// partOf is a part of the schema of check's output, which others share.
func partOf(name string) object {
	var root object
	if err := json.Unmarshal(outputSchema, &root); err != nil {
		panic(err) // it is embedded
	}
	file := root["$defs"].(object)["file"].(object)
	return file["properties"].(object)[name].(object)
}

func findings(title, description string) object { return listOf(title, description, finding()) }
func finding() object                           { return partOf("findings")["items"].(object) }
func counts() object                            { return partOf("counts") }
func loosened() object                          { return partOf("loosened") }

func pathField() field { return must("path", text("Path", "Path of the spec, as given.")) }
func onField() field {
	return must("on", text("On", "Date on which acceptances are judged."))
}

var verdicts = []string{"PASS", "PASS WITH NOTES", "FAIL"}

// published is a whole schema of what a command writes.
func published(name, title string, fields []field, command ...string) []byte {
	by := append(slices.Clone(command), name)[0]
	return written(name, record(title, "What dryfit "+by+" --format json writes, version 1; figures in SI.", fields))
}

func written(name string, root object) []byte {
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = "https://dryfit.example/schema/" + name + "-1.json"
	out, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic(err) // nothing in it but text and numbers
	}
	return append(out, '\n')
}

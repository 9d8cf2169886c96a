package standards

import (
	"fmt"
	"maps"
	"net/url"
	"path/filepath"
	"slices"
	"strings"

	"github.com/bmatcuk/doublestar/v4"

	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// FileName is the name of a standards file in a repository.
const FileName = "dryfit.toml"

// Range is what a limit may physically be, both ends allowed, in SI.
type Range struct {
	Unit         quantity.Unit
	Lowest, Most float64
}

// Layer is one standards file.
type Layer struct {
	File       string
	Name       string
	Folders    []Pattern // to check where no path is named
	Require    []Requirement
	Exclude    []Pattern
	Docs       string // address of the docs, absolute, without a stroke at its end
	limits     map[string]Limit
	severities map[string]Severity
	holds      map[string]Origin
	trials     *Trials
	defaults   []Default
	route      *Route // nil where the file has none
	sheets     []timber.SheetMaterial
	species    []timber.Species
	materials  map[string]Origin   // by name
	beyond     map[string][]Beyond // by name of a material
	order      *Order
	shop       map[string]Setting // by key of its table
}

// Pattern is one of specs that are not checked, by their paths from the folder of
// the file that has it.
type Pattern struct {
	Text   string
	Origin Origin
}

// Severity is the most that a file lets a rule say.
type Severity struct {
	Word   string // "note", "query", "hold"
	Origin Origin
}

// Trials is whether a trial lifts what is not decided.
type Trials struct {
	May    bool
	Origin Origin
}

// reader collects what a standards document says, and what is wrong with it.
type reader struct {
	doc      *spec.Document
	layer    *Layer
	problems []spec.Problem
}

// Read takes a standards document that satisfies its schema. Ranges are those
// of the limits by their full names, ids those of the rules. Where the document says something that
// can't hold, the problems say what, at its place.
func Read(doc *spec.Document, ranges map[string]Range, ids []string) (*Layer, []spec.Problem) {
	r := &reader{doc: doc, layer: &Layer{
		File: doc.Path, limits: map[string]Limit{}, severities: map[string]Severity{}, holds: map[string]Origin{},
		materials: map[string]Origin{}, beyond: map[string][]Beyond{}, shop: map[string]Setting{},
	}}
	r.layer.Name, _ = doc.Tree["name"].(string)
	check, _ := r.table("check")
	for i, folder := range list(check["folders"]) {
		r.readFolder(spec.Key("check", "folders", i+1), folder.(string))
	}
	for i, pattern := range list(check["exclude"]) {
		r.readExclude(spec.Key("check", "exclude", i+1), pattern.(string))
	}
	if docs, given := check["docs"].(string); given {
		r.readDocs(docs)
	}
	r.readRequire(ids)
	r.readLimits(ranges)
	r.readSeverities()
	r.readDefaults()
	r.readRoute()
	r.readMaterials()
	r.readOrder()
	r.readShop()
	return r.layer, r.problems
}

// readFolder takes a folder that is checked where no path is named.
func (r *reader) readFolder(key, folder string) {
	if !filepath.IsLocal(filepath.FromSlash(folder)) {
		r.refuse(key, "%q leaves the folder of this file", folder)
		return
	}
	r.layer.Folders = append(r.layer.Folders, Pattern{folder, r.origin(key)})
}

// readExclude takes a pattern of specs that are not checked.
func (r *reader) readExclude(key, pattern string) {
	switch {
	case !doublestar.ValidatePattern(pattern):
		r.refuse(key, "%q is no pattern that a path can match; write \"archive/**\"", pattern)
	case !filepath.IsLocal(filepath.FromSlash(pattern)):
		r.refuse(key, "%q leaves the folder of this file", pattern)
	default:
		r.layer.Exclude = append(r.layer.Exclude, Pattern{pattern, r.origin(key)})
	}
}

func list(v any) []any {
	l, _ := v.([]any)
	return l
}

func (r *reader) refuse(key, format string, args ...any) {
	r.problems = append(r.problems, r.doc.Problem("file.value", key, fmt.Sprintf(format, args...)))
}

func (r *reader) origin(key string) Origin {
	return Origin{File: r.doc.Path, Line: r.doc.Position(r.doc.Locate(key).Start).Line}
}

// table is a table of the document, with its keys in order.
func (r *reader) table(name string) (map[string]any, []string) {
	t, _ := r.doc.Tree[name].(map[string]any)
	return t, slices.Sorted(maps.Keys(t))
}

// readDocs takes an address that pages may be named under, and nothing that a
// reader would not see in it.
func (r *reader) readDocs(docs string) {
	u, err := url.Parse(docs)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Hostname() == "" || u.User != nil || u.RawQuery+u.Fragment != "" || u.String() != docs {
		r.refuse("check.docs", "%q is not the absolute address of a page; write https://docs.example/dryfit", docs)
		return
	}
	r.layer.Docs = strings.TrimRight(docs, "/")
}

func (r *reader) readLimits(ranges map[string]Range) {
	table, names := r.table("limit")
	for _, name := range names {
		entry := table[name].(map[string]any)
		source := entry["source"].(string)
		if strings.TrimSpace(source) == "" {
			r.refuse(spec.Key("limit", name, "source"), "a limit needs a source; state where the value comes from")
			continue
		}
		value := figure(ranges[name].Unit, entry["value"])
		if within := ranges[name]; !(within.Lowest <= value.SI && value.SI <= within.Most) {
			r.refuse(spec.Key("limit", name, "value"), "%s is outside the physical range, %s to %s",
				quantity.Metric.Format(value),
				quantity.Metric.Format(quantity.Value{SI: within.Lowest, Unit: within.Unit}),
				quantity.Metric.Format(quantity.Value{SI: within.Most, Unit: within.Unit}))
			continue
		}
		r.layer.limits[name] = Limit{Value: value, Source: source, Origin: r.origin(spec.Key("limit", name))}
	}
}

// figure is a number, or a quantity that the schema has seen to.
func figure(u quantity.Unit, v any) quantity.Value {
	switch v := v.(type) {
	case int64:
		return quantity.Value{SI: float64(v), Unit: u}
	case float64:
		return quantity.Value{SI: v, Unit: u}
	default:
		q, err := quantity.Parse(u, fmt.Sprint(v))
		if err != nil {
			panic(err) // the schema has seen to its form
		}
		return q
	}
}

func (r *reader) readSeverities() {
	table, ids := r.table("severity")
	for _, id := range ids {
		r.layer.severities[id] = Severity{Word: table[id].(string), Origin: r.origin(spec.Key("severity", id))}
	}
	accept, _ := r.table("accept")
	for i, id := range list(accept["holds"]) {
		r.layer.holds[id.(string)] = r.origin(spec.Key("accept", "holds", i+1))
	}
	if may, given := accept["tried"].(bool); given {
		r.layer.trials = &Trials{may, r.origin("accept.tried")}
	}
}

// optionalTables are those of which nothing is assumed where the spec leaves
// them out.
var optionalTables = []string{"room.framing", "room.door", "grid.reveal", "strap", "ledger", "lift"}

func (r *reader) readDefaults() {
	table, paths := r.table("default")
	for _, path := range paths {
		if path == "route" {
			continue
		}
		d := Default{Key: path, Value: table[path], Source: r.layer.Name, Origin: r.origin(spec.Key("default", path))}
		for _, t := range optionalTables {
			if strings.HasPrefix(path, t+".") {
				d.Within = t
			}
		}
		r.layer.defaults = append(r.layer.defaults, d)
	}
}

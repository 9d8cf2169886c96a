package editor

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"sync"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
)

// vocabulary is what a schema says of the keys of one kind of file.
type vocabulary struct {
	list []schema.Property
	at   map[string]schema.Property
	// written is the description with how a value is written.
	written map[string]string
	// barred are the keys that a leg of a kind does not have.
	barred map[string]map[string]bool
}

// part is a part of the schema's text.
type part struct {
	Description string          `json:"description"`
	Properties  map[string]part `json:"properties"`
	Items       *part           `json:"items"`
	AllOf       []struct {
		If struct {
			Properties struct {
				Kind struct {
					Const string `json:"const"`
				} `json:"kind"`
			} `json:"properties"`
		} `json:"if"`
		Then struct {
			Properties map[string]json.RawMessage `json:"properties"`
		} `json:"then"`
	} `json:"allOf"`
}

// The vocabularies of a spec and of a standards file.
var (
	specKeys = sync.OnceValue(func() *vocabulary { return newVocabulary(schema.Properties(), schema.SpecSchema()) })

	standardsKeys = sync.OnceValue(func() *vocabulary {
		return newVocabulary(catalog.StandardsShape().Properties(), schema.StandardsSchema(catalog.Known()))
	})
)

func newVocabulary(list []schema.Property, text []byte) *vocabulary {
	k := &vocabulary{
		list: list, at: map[string]schema.Property{}, written: map[string]string{}, barred: map[string]map[string]bool{},
	}
	for _, p := range k.list {
		k.at[p.Path] = p
	}
	var root part
	if err := json.Unmarshal(text, &root); err != nil {
		panic(err) // our own
	}
	k.read("", root)
	return k
}

func (k *vocabulary) read(path string, p part) {
	k.written[path] = p.Description
	for name, child := range p.Properties {
		k.read(outline.Under(path, spec.Key(name)), child)
	}
	if p.Items != nil {
		k.read(path+".*", *p.Items)
	}
	for _, kind := range p.AllOf {
		name := path + "=" + kind.If.Properties.Kind.Const
		k.barred[name] = map[string]bool{}
		for key, allowed := range kind.Then.Properties {
			k.barred[name][key] = string(allowed) == "false"
		}
	}
}

// number is the number of an element in a key.
var number = regexp.MustCompile(`\.\d+(\.|$)`)

// pattern is a key with a star for each number, as the schema has it.
func pattern(key string) string {
	if !strings.ContainsAny(key, "0123456789") {
		return key // nearly all, and matching is slow
	}
	for {
		starred := number.ReplaceAllString(key, ".*$1")
		if starred == key {
			return key
		}
		key = starred
	}
}

// tabular reports whether a key is a table, or an array of tables.
func (k *vocabulary) tabular(p schema.Property) bool {
	if p.Type == "array" {
		return slices.ContainsFunc(k.list, func(q schema.Property) bool { return strings.HasPrefix(q.Path, p.Path+".*.") })
	}
	return p.Type == "object"
}

// child is the name of a key directly in a table, as it is written.
func child(table, path string) (string, bool) {
	if table != "" {
		inside, ok := strings.CutPrefix(path, table+".")
		if !ok {
			return "", false
		}
		path = inside
	}
	return path, path != "*" && spec.Parent(path) == ""
}

package schema

import (
	"errors"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/spec"
	"dryfit/spec/nearest"
)

// Check says what is wrong with the shape of a document: each mistake once, at
// its place, in the order of the file.
func (s *Shape) Check(d *spec.Document) []spec.Problem {
	if s.sketch().says(d.Tree) == yes {
		return nil
	}
	c := checker{doc: d, tree: s.tree(), gone: map[string]bool{}}
	c.fractions(make([]string, 0, 8), c.tree, d.Tree)
	if err := s.schema().Validate(d.Tree); err != nil {
		var invalid *jsonschema.ValidationError
		if !errors.As(err, &invalid) {
			return []spec.Problem{d.Problem("file.shape", "", err.Error())}
		}
		c.leaves(invalid)
	}
	return c.problems()
}

// Fits reports whether a tree that is not from a file has the shape of a spec.
func Fits(tree map[string]any) bool { return FitsAsDoes(nil, tree) }

// FitsAsDoes is Fits, of a tree that shares tables and lists with one that fits: these
// are not looked at again. Nothing is known to fit if that one is nil.
func FitsAsDoes(sound, tree map[string]any) bool {
	s := specShape()
	return s.sketch().beside(tree, sound) == yes || s.schema().Validate(tree) == nil
}

// checker collects what is wrong with one document.
type checker struct {
	doc    *spec.Document
	tree   *node
	faults []fault
	gone   map[string]bool // keys that belong to another kind of their table
}

// fractions reports whole numbers that are written as fractions, 6.0: TOML
// tells the two apart, and JSON Schema does not.
func (c *checker) fractions(path []string, n *node, value any) {
	if n == nil {
		return
	}
	switch v := value.(type) {
	case map[string]any:
		for name, x := range v {
			c.fractions(append(path, name), n.Properties.nodes[name], x)
		}
	case []any:
		for i, x := range v {
			c.fractions(append(path, strconv.Itoa(i)), n.Items, x)
		}
	case float64:
		if n.Type == "integer" && v == math.Trunc(v) {
			key, _ := c.find(path)
			c.add(key, "%s is written as a fraction; write %.0f", c.written(key, v), v)
		}
	}
}

// leaves visits the failures that have no further cause.
func (c *checker) leaves(e *jsonschema.ValidationError) {
	if len(e.Causes) == 0 {
		c.leaf(e)
		return
	}
	for _, cause := range e.Causes {
		c.leaves(cause)
	}
}

// leaf turns one failure into a sentence about its key.
func (c *checker) leaf(e *jsonschema.ValidationError) {
	path := pointer(e.InstanceLocation)
	key, n := c.find(path)
	var value any = c.doc.Tree
	if len(path) > 0 {
		value, _ = spec.Lookup(c.doc.Tree, key)
	}
	slash := strings.LastIndexByte(e.KeywordLocation, '/')
	within, keyword := e.KeywordLocation[:slash], e.KeywordLocation[slash+1:]
	switch {
	case strings.HasSuffix(within, "/then/properties"):
		c.stranded(path)
	case keyword == "required":
		c.missing(key, n, within, value)
	case keyword == "additionalProperties":
		c.strangers(path, n, value)
	default:
		c.add(key, "%s", c.sentence(keyword, key, n, value, e.Message))
	}
}

// missing reports the required keys that a table lacks. One that an unknown
// key was probably meant to be is not missing, but misspelt.
func (c *checker) missing(key string, n *node, within string, value any) {
	table, _ := value.(map[string]any)
	meant := misspelt(n, table)
	lacks := func(name string) bool {
		_, given := table[name]
		return !given && !meant[name]
	}
	names, instead := requiredBy(n, within, table)
	if instead != nil && all(names, lacks) {
		if all(instead, lacks) {
			c.add(key, "needs %s, or %s", strings.Join(instead, " and "), strings.Join(names, " and "))
		}
		return
	}
	for _, name := range names {
		if !lacks(name) {
			continue
		}
		at := name
		if key != "" {
			at = key + "." + name
		}
		c.add(at, "is missing%s", n.Properties.nodes[name].purpose())
	}
}

func all(names []string, is func(string) bool) bool {
	return !slices.ContainsFunc(names, func(s string) bool { return !is(s) })
}

// requiredBy lists the keys that the failing rule asks for: every such table's,
// those of its kind, or those that it may have instead of others.
func requiredBy(n *node, within string, table map[string]any) (names, instead []string) {
	switch {
	case strings.HasSuffix(within, "/then"):
		for _, v := range n.AllOf {
			if v.If.Properties.Kind.Const == table["kind"] {
				return v.Then.Required, nil
			}
		}
		return nil, nil
	case strings.HasSuffix(within, "/else"):
		return n.Else.Required, n.If.Required
	default:
		return n.Required, nil
	}
}

// misspelt are the known keys that the unknown ones of a table are nearest to.
func misspelt(n *node, table map[string]any) map[string]bool {
	known := map[string]bool{}
	for name := range table {
		if n.Properties.nodes[name] != nil {
			continue
		}
		if near, ok := nearest.Word(name, n.Properties.names); ok {
			known[near] = true
		}
	}
	return known
}

// listed is how many names a message lists before it points to the schema.
const listed = 25

// strangers reports the keys of a table that nothing knows.
func (c *checker) strangers(path []string, n *node, value any) {
	table, _ := value.(map[string]any)
	for name := range table {
		if n.Properties.nodes[name] != nil {
			continue
		}
		key, _ := c.find(append(path[:len(path):len(path)], name))
		says := "there is no such key here; "
		if near, ok := nearest.Word(name, n.Properties.names); ok {
			says += "is it " + near + "?"
		} else if len(n.Properties.names) <= listed {
			says += "known are " + strings.Join(n.Properties.names, ", ")
		} else {
			says += "dryfit schema prints the keys"
		}
		c.addStray(key, says)
	}
}

// stranded reports a key that belongs to another kind of its table.
func (c *checker) stranded(path []string) {
	key, _ := c.find(path)
	in, _ := c.find(path[:len(path)-1])
	table, _ := spec.Lookup(c.doc.Tree, in)
	of := "round fitting"
	if kind, ok := table.(map[string]any)["kind"].(string); ok {
		of = "leg of kind " + kind
	}
	c.gone[key] = true
	c.addStray(key, "does not belong to a "+of)
}

// pointer splits a JSON pointer, which the validator percent-encodes as well.
func pointer(p string) []string {
	if p == "" {
		return nil
	}
	parts := strings.Split(p[1:], "/")
	for i, s := range parts {
		if plain, err := url.PathUnescape(s); err == nil {
			s = plain
		}
		parts[i] = strings.NewReplacer("~1", "/", "~0", "~").Replace(s)
	}
	return parts
}

// find is the key of a path, whose arrays count from 0, and its part of the
// schema, which is empty where there is none.
func (c *checker) find(path []string) (string, *node) {
	parts := make([]any, len(path))
	n := c.tree
	for i, p := range path {
		parts[i] = p
		if n != nil && n.Items != nil {
			if k, err := strconv.Atoi(p); err == nil {
				parts[i] = k + 1
			}
		}
		n = n.child(p)
	}
	if n == nil {
		n = new(node)
	}
	return spec.Key(parts...), n
}

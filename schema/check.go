package schema

import (
	"cmp"
	"errors"
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/spec"
	"dryfit/spec/nearest"
	"dryfit/spec/quantity"
)

// Check says what is wrong with the shape of a document: each mistake once, at
// its place, in the order of the file.
func (s *Shape) Check(d *spec.Document) []spec.Problem {
	err := s.schema.Validate(d.Tree)
	if err == nil {
		return nil
	}
	var invalid *jsonschema.ValidationError
	if !errors.As(err, &invalid) {
		return []spec.Problem{d.Problem("file.shape", "", err.Error())}
	}
	c := checker{doc: d, tree: s.tree}
	c.leaves(invalid)
	slices.SortFunc(c.problems, func(a, b spec.Problem) int {
		return cmp.Or(
			cmp.Compare(a.Range.Start, b.Range.Start),
			cmp.Compare(a.Key, b.Key),
			cmp.Compare(a.Message, b.Message),
		)
	})
	return slices.CompactFunc(c.problems, func(a, b spec.Problem) bool {
		return a.Key == b.Key && a.Range == b.Range
	})
}

type checker struct {
	doc      *spec.Document
	tree     *node
	problems []spec.Problem
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

// addKey is of a key that should not be there, whatever its value.
func (c *checker) addKey(key, format string, args ...any) {
	c.problems = append(c.problems, c.doc.KeyProblem("file.shape", key, fmt.Sprintf(format, args...)))
}

func (c *checker) add(key, format string, args ...any) {
	c.problems = append(c.problems, c.doc.Problem("file.shape", key, fmt.Sprintf(format, args...)))
}

// leaf turns one failure into a sentence about the key.
func (c *checker) leaf(e *jsonschema.ValidationError) {
	path := pointer(e.InstanceLocation)
	key := c.keyOf(path)
	n := c.find(path)
	value, _ := spec.Lookup(c.doc.Tree, key)
	if len(path) == 0 {
		value = c.doc.Tree
	}
	keyword := e.KeywordLocation[strings.LastIndexByte(e.KeywordLocation, '/')+1:]
	if strings.Contains(e.KeywordLocation, "/then/properties/") {
		keyword = "foreign" // a key that another kind has
	}
	switch keyword {
	case "required":
		c.missing(key, n, e, value)
	case "additionalProperties":
		c.strangers(path, n, value)
	case "foreign":
		c.foreign(path)
	case "enum", "const":
		c.add(key, "%s is not %s%s", written(value), oneOf(n.Enum), suggestion(value, n.Enum))
	case "type":
		c.add(key, "%s", wrongType(n, value))
	case "format":
		c.add(key, "%s", wrongFormat(n.Format, value))
	case "minimum":
		c.add(key, "%s is less than %d", written(value), n.Minimum)
	case "maximum":
		c.add(key, "%s is more than %d, the most there may be", written(value), n.Maximum)
	case "exclusiveMinimum":
		c.add(key, "%s must be greater than zero", written(value))
	case "minLength":
		c.add(key, "is empty")
	case "minItems":
		c.add(key, "has %d of at least %d", length(value), n.MinItems)
	case "maxItems":
		c.add(key, "has %d of at most %d", length(value), n.MaxItems)
	default:
		c.add(key, "%s", e.Message)
	}
}

// missing reports each required key that is absent, as far as it can be said
// which: a fitting without any size lacks one of two.
func (c *checker) missing(key string, n *node, e *jsonschema.ValidationError, value any) {
	table, _ := value.(map[string]any)
	for _, name := range requiredBy(n, e, table) {
		if _, given := table[name]; given {
			continue
		}
		what := ""
		if p := n.Properties.nodes[name]; p != nil {
			what = ": " + lowerFirst(strings.TrimSuffix(p.Description, "."))
		}
		at := name
		if key != "" {
			at = key + "." + name
		}
		c.add(at, "is missing%s", what)
	}
}

// requiredBy lists what the failing rule asks for: by the kind of a leg, by
// whether a fitting is round, or of every such table.
func requiredBy(n *node, e *jsonschema.ValidationError, table map[string]any) []string {
	switch {
	case strings.Contains(e.KeywordLocation, "/then/required"):
		for _, v := range n.AllOf {
			if v.If.Properties.Kind.Const == table["kind"] {
				return v.Then.Required
			}
		}
		return nil
	case strings.Contains(e.KeywordLocation, "/else/required"):
		return n.Else.Required
	default:
		return n.Required
	}
}

// listed is how many names a message lists before it points to the schema.
const listed = 24

// strangers reports the keys of a table that nothing knows.
func (c *checker) strangers(path []string, n *node, value any) {
	table, _ := value.(map[string]any)
	for name := range table {
		if n.Properties.nodes[name] != nil {
			continue
		}
		key := c.keyOf(append(path[:len(path):len(path)], name))
		near, ok := nearest.Word(name, n.Properties.names)
		switch {
		case ok:
			c.addKey(key, "there is no such key here; is it %s?", near)
		case len(n.Properties.names) <= listed:
			c.addKey(key, "there is no such key here; known are %s", strings.Join(n.Properties.names, ", "))
		default:
			c.addKey(key, "there is no such key here; dryfit schema prints those that are")
		}
	}
}

// foreign reports a key that belongs to another kind of its table.
func (c *checker) foreign(path []string) {
	kind := "round fitting"
	in, _ := spec.Lookup(c.doc.Tree, c.keyOf(path[:len(path)-1]))
	if table, ok := in.(map[string]any); ok {
		if k, ok := table["kind"].(string); ok {
			kind = "leg of kind " + k
		}
	}
	c.addKey(c.keyOf(path), "does not belong to a %s", kind)
}

func wrongType(n *node, value any) string {
	if u, ok := unitOf[n.Format]; ok {
		switch value.(type) {
		case int64, float64:
			return fmt.Sprintf("%s has no unit; write %s", written(value), quantity.Accepted(u))
		}
		return fmt.Sprintf("%s is not a quantity; write %s", written(value), quantity.Accepted(u))
	}
	switch n.Type {
	case "number":
		return fmt.Sprintf("%s is not a number", written(value))
	case "integer":
		return fmt.Sprintf("%s is not a whole number", written(value))
	case "boolean":
		return fmt.Sprintf("%s is not true or false", written(value))
	case "array":
		return fmt.Sprintf("%s is not a list", written(value))
	case "object":
		return fmt.Sprintf("%s is not a table", written(value))
	default:
		return fmt.Sprintf("%s is not a text; put it in quotes", written(value))
	}
}

func wrongFormat(format string, value any) string {
	text, _ := value.(string)
	if check, ok := formats[format]; ok {
		err := check(text)
		var bound boundError
		if errors.As(err, &bound) {
			return fmt.Sprintf("%s %s", written(value), bound)
		}
		if err != nil {
			return fmt.Sprintf("%s: %v", written(value), err)
		}
	}
	return fmt.Sprintf("%s is not a date; write 2027-06-30", written(value))
}

// written is a value as its author wrote it, or what kind of thing it is.
func written(v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(v)
	case map[string]any:
		return "a table"
	case []any:
		return "a list"
	default:
		return fmt.Sprint(v)
	}
}

func oneOf(enum []any) string {
	if len(enum) == 0 {
		return strconv.Itoa(spec.FormatVersion)
	}
	words := make([]string, len(enum))
	for i, v := range enum {
		words[i] = written(v)
	}
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

func suggestion(value any, enum []any) string {
	word, ok := value.(string)
	if !ok || len(enum) < 3 {
		return ""
	}
	var words []string
	for _, v := range enum {
		words = append(words, v.(string))
	}
	if near, ok := nearest.Word(word, words); ok {
		return fmt.Sprintf("; is it %q?", near)
	}
	return ""
}

func length(v any) int {
	list, _ := v.([]any)
	return len(list)
}

func lowerFirst(s string) string {
	if len(s) > 1 && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
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

// keyOf is the key of a path in the schema's terms, whose arrays count from 0.
func (c *checker) keyOf(path []string) string {
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
	return spec.Key(parts...)
}

func (c *checker) find(path []string) *node {
	n := c.tree
	for _, p := range path {
		n = n.child(p)
	}
	if n == nil {
		return &node{}
	}
	return n
}

func (n *node) child(name string) *node {
	switch {
	case n == nil:
		return nil
	case n.Items != nil:
		return n.Items
	default:
		return n.Properties.nodes[name]
	}
}

package schema

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"dryfit/spec"
	"dryfit/spec/nearest"
	"dryfit/spec/quantity"
)

// sentence says what is wrong with a value, as its author wrote it. Otherwise
// is for a keyword that our schemas do not use.
func (c *checker) sentence(keyword, key string, n *node, value any, otherwise string) string {
	switch keyword {
	case "enum", "const":
		return fmt.Sprintf("%s is %s%s", c.written(key, value), notOneOf(n.Enum), suggestion(value, n.Enum))
	case "type":
		return c.written(key, value) + " " + wrongType(key, n, value)
	case "format":
		return c.written(key, value) + wrongFormat(n.Format, value)
	case "minimum":
		return fmt.Sprintf("%s is less than the minimum of %d", c.written(key, value), n.Minimum)
	case "maximum":
		return fmt.Sprintf("%s is more than the maximum of %d", c.written(key, value), n.Maximum)
	case "exclusiveMinimum":
		return c.written(key, value) + " must be greater than zero"
	case "minLength":
		return "is empty"
	case "minItems", "maxItems":
		return wrongLength(n, value)
	default:
		return otherwise
	}
}

// types are the words for the types of a schema.
var types = map[string]string{
	"string": "a text", "boolean": "true or false", "integer": "a whole number", "number": "a number",
	"array": "a list", "object": "a table",
}

func wrongType(key string, n *node, value any) string {
	if f := formats[n.Format]; f.unit != 0 {
		says := "is not a quantity"
		if isNumber(value) {
			says = "has no unit"
		}
		return says + "; write " + quantity.Accepted(f.unit)
	}
	return "is not " + types[n.Type] + remedy(key, n, value)
}

// remedy says how to write a value of the wrong type, where that is plain.
func remedy(key string, n *node, value any) string {
	text, isText := value.(string)
	_, isBool := value.(bool)
	_, isTable := value.(map[string]any)
	_, isList := value.([]any)
	_, err := strconv.ParseFloat(text, 64)
	switch {
	case n.Type == "string" && (isBool || isNumber(value)):
		return "; put it in quotes"
	case n.Type == "boolean" && (text == "true" || text == "false"),
		(n.Type == "integer" || n.Type == "number") && isText && err == nil:
		return "; write it without quotes"
	case n.Type == "array" && n.Items.Type == "object" && isTable:
		return fmt.Sprintf("; begin each with [[%s]]", key)
	case n.Type == "array" && n.Items.Type != "object" && (isText || isNumber(value)):
		return "; put it in brackets"
	case n.Type == "object" && isList && !strings.Contains(key, "."):
		return fmt.Sprintf("; there is one, which begins with [%s]", key)
	default:
		return ""
	}
}

func isNumber(value any) bool {
	switch value.(type) {
	case int64, float64:
		return true
	default:
		return false
	}
}

func wrongFormat(format string, value any) string {
	text, _ := value.(string)
	err := formats[format].check(text)
	var is unfit
	if errors.As(err, &is) {
		return fmt.Sprintf(" %s", is)
	}
	return fmt.Sprintf(": %v", err)
}

func wrongLength(n *node, value any) string {
	list, _ := value.([]any)
	switch {
	case n.MinItems == n.MaxItems:
		return fmt.Sprintf("lists %d, and needs %d", len(list), n.MinItems)
	case len(list) == 0:
		return "lists nothing"
	case len(list) < n.MinItems:
		return fmt.Sprintf("lists %d, and needs %d or more", len(list), n.MinItems)
	default:
		return fmt.Sprintf("lists %d; the maximum is %d", len(list), n.MaxItems)
	}
}

// purpose is what a key is for, to follow "is missing".
func (n *node) purpose() string {
	if n == nil {
		return ""
	}
	sentence, _, _ := strings.Cut(n.meaning(), ". ")
	return ": " + lowerFirst(strings.TrimSuffix(sentence, "."))
}

func lowerFirst(s string) string {
	if len(s) > 1 && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}

// longest is how many bytes of a value a message shows.
const longest = 80

// written is a value as its author wrote it, or what kind of thing it is where
// that would be long.
func (c *checker) written(key string, value any) string {
	switch value.(type) {
	case map[string]any:
		return "a table"
	case []any:
		return "a list"
	}
	if r, ok := c.doc.ValueRange(key); ok && r.End-r.Start <= longest {
		if text := string(c.doc.Source[r.Start:r.End]); !strings.Contains(text, "\n") {
			return text
		}
	}
	if text, ok := value.(string); ok {
		if runes := []rune(text); len(runes) > longest/2 {
			return strconv.Quote(string(runes[:longest/2])) + "..."
		}
		return strconv.Quote(text)
	}
	return fmt.Sprint(value)
}

// notOneOf names the words that there may be, unless they are too many to read.
func notOneOf(enum []any) string {
	const most = 24
	if len(enum) > most {
		return fmt.Sprintf("none of the %d permitted words", len(enum))
	}
	return "not " + oneOf(enum)
}

func oneOf(enum []any) string {
	if len(enum) == 0 {
		return strconv.Itoa(spec.FormatVersion)
	}
	words := make([]string, len(enum))
	for i, v := range enum {
		words[i] = strconv.Quote(v.(string))
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

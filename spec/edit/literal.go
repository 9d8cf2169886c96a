package edit

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Literal writes a value in TOML. It is an error to have one that TOML has not:
// no number, or a text that is not UTF-8.
func Literal(v any) (string, error) { return literal(v, "") }

// literal writes a value in TOML. A text keeps the kind of quotes that it had,
// where it can.
func literal(v any, had string) (string, error) {
	switch v := v.(type) {
	case string:
		return quoted(v, had)
	case int64:
		return strconv.FormatInt(v, 10), nil
	case bool:
		return strconv.FormatBool(v), nil
	case float64:
		return number(v)
	case []any:
		var parts []string
		for _, x := range v {
			text, err := literal(x, had)
			if err != nil {
				return "", err
			}
			parts = append(parts, text)
		}
		return "[" + strings.Join(parts, ", ") + "]", nil
	case map[string]any:
		pairs, err := pairs(v)
		if err != nil || len(pairs) == 0 {
			return "{}", err
		}
		return "{ " + strings.Join(pairs, ", ") + " }", nil
	default:
		return "", fmt.Errorf("a value of type %T can't be written", v)
	}
}

func number(v float64) (string, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "", fmt.Errorf("%v is not a finite number", v)
	}
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text, nil
}

// pairs are the keys of a table with their values, in the order of the keys.
func pairs(table map[string]any) ([]string, error) {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(table)) {
		text, err := pair(name, table[name])
		if err != nil {
			return nil, err
		}
		out = append(out, text)
	}
	return out, nil
}

func pair(name string, value any) (string, error) {
	text, err := literal(value, "")
	if err != nil {
		return "", err
	}
	key, err := bare(name)
	return key + " = " + text, err
}

// bare is a name as TOML takes it: without quotes where it can be.
func bare(name string) (string, error) {
	plain := name != ""
	for _, c := range []byte(name) {
		plain = plain && ('0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c == '_' || c == '-')
	}
	if plain {
		return name, nil
	}
	return quoted(name, "")
}

func quoted(s, had string) (string, error) {
	if !utf8.ValidString(s) {
		return "", fmt.Errorf("%q is not UTF-8", s)
	}
	literally := strings.HasPrefix(had, "'") && !strings.ContainsRune(s, '\'') && !strings.ContainsFunc(s, control)
	if literally {
		return "'" + s + "'", nil
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case control(r):
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String(), nil
}

// control reports whether TOML takes a character only as an escape.
func control(r rune) bool { return r < ' ' || r == 0x7f }

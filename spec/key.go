package spec

import (
	"fmt"
	"strconv"
	"strings"
)

// A key names a place in a document: TOML's dotted keys, quoted where TOML
// would quote them, and an element of an array by its number from 1:
//
//	rib.depth   route.2.width   limit."strap.load.share".value

// Key joins parts into a key: a string is a name, an int the number of an
// element from 1.
func Key(parts ...any) string {
	var b strings.Builder
	for i, p := range parts {
		if i > 0 {
			b.WriteByte('.')
		}
		switch p := p.(type) {
		case int:
			b.WriteString(strconv.Itoa(p))
		case string:
			b.WriteString(quotedName(p))
		default:
			panic(fmt.Sprintf("spec: a key of %T", p))
		}
	}
	return b.String()
}

// quotedName quotes what would not be read back as one name.
func quotedName(name string) string {
	if isBare(name) {
		return name
	}
	return strconv.Quote(name)
}

// isBare reports whether TOML takes a name without quotes, and nobody takes it
// for the number of an element.
func isBare(name string) bool {
	digits := true
	for _, c := range []byte(name) {
		switch {
		case '0' <= c && c <= '9':
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', c == '_', c == '-':
			digits = false
		default:
			return false
		}
	}
	return !digits
}

// SplitKey is the inverse of Key; numbers come back as digits.
func SplitKey(key string) []string {
	parts := writtenParts(key)
	for i, p := range parts {
		if !strings.HasPrefix(p, `"`) {
			continue
		}
		if name, err := strconv.Unquote(p); err == nil {
			parts[i] = name
		}
	}
	return parts
}

// writtenParts are the parts of a key with their quotes.
func writtenParts(key string) []string {
	if !strings.Contains(key, `"`) {
		return strings.Split(key, ".")
	}
	var parts []string
	for key != "" {
		part, _, _ := strings.Cut(key, ".")
		if strings.HasPrefix(key, `"`) {
			if quoted, err := strconv.QuotedPrefix(key); err == nil {
				part = quoted
			}
		}
		parts = append(parts, part)
		key = strings.TrimPrefix(key[len(part):], ".")
	}
	return parts
}

// Parent is the key of the table or array that a key is in, "" at the top.
func Parent(key string) string {
	parts := writtenParts(key)
	return strings.Join(parts[:len(parts)-1], ".")
}

package spec

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// A key names a place in a document: TOML's dotted keys, quoted where TOML
// would quote them, and an element of an array by its number from 1:
//
//	rib.depth   route.2.width   limit."strap.load.share".value

var bare = regexp.MustCompile(`^[A-Za-z0-9_-]*[A-Za-z_-][A-Za-z0-9_-]*$`)

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
	if bare.MatchString(name) {
		return name
	}
	return strconv.Quote(name)
}

// SplitKey is the inverse of Key; numbers come back as digits.
func SplitKey(key string) []string {
	if !strings.Contains(key, `"`) {
		return strings.Split(key, ".")
	}
	var parts []string
	for key != "" {
		if q, err := strconv.QuotedPrefix(key); err == nil {
			name, _ := strconv.Unquote(q)
			parts = append(parts, name)
			key = strings.TrimPrefix(key[len(q):], ".")
			continue
		}
		name, rest, _ := strings.Cut(key, ".")
		parts = append(parts, name)
		key = rest
	}
	return parts
}

// parent is the key of the table or array that a key is in, "" at the top.
func parent(key string) string {
	parts := SplitKey(key)
	joined := make([]string, len(parts)-1)
	for i := range joined {
		joined[i] = parts[i]
		if _, err := strconv.Atoi(parts[i]); err != nil {
			joined[i] = quotedName(parts[i])
		}
	}
	return strings.Join(joined, ".")
}

package study

import (
	"fmt"
	"regexp"
	"strings"

	"dryfit/rules/review"
	"dryfit/schema"
	"dryfit/spec"
)

// Dimension is one key and the values that a study gives it in turn.
type Dimension struct {
	Key    string
	Values []any  // as in a spec's tree: text for a quantity or a word, int64 for a count, bool
	Text   string // KEY=VALUES, as it was given; of those that are linked the first has it
	Linked bool   // it changes with the one before it
}

// VaryError is what is wrong with one KEY=VALUES, in its own words.
type VaryError struct {
	Text string // as it was given
	Err  error
}

// Error repeats the flag as it was given, since one command may have several.
func (e *VaryError) Error() string { return fmt.Sprintf("--vary %s: %v", e.Text, e.Err) }

// Unwrap gives what is wrong.
func (e *VaryError) Unwrap() error { return e.Err }

// dimension reads the values of one key and holds each against the schema and
// the materials that the standards know.
func dimension(base *review.Assessment, key, list string) (Dimension, error) {
	key, err := numbered(base.Document.Tree, key)
	if err != nil {
		return Dimension{}, err
	}
	p, err := variable(key)
	if err != nil {
		return Dimension{}, err
	}
	values, ends, err := parseValues(p, list)
	if err != nil {
		return Dimension{}, err
	}
	d := Dimension{Key: spec.Key(keyParts(key)...), Values: values}
	for _, v := range ends {
		if err := d.fits(base, v); err != nil {
			return Dimension{}, err
		}
	}
	return d, nil
}

var number = regexp.MustCompile(`^\d+$`)

// keyParts are the parts of a key, its numbers as numbers.
func keyParts(key string) []any {
	var parts []any
	for _, p := range spec.SplitKey(key) {
		n := 0
		if _, err := fmt.Sscan(p, &n); err == nil && number.MatchString(p) {
			parts = append(parts, n)
			continue
		}
		parts = append(parts, p)
	}
	return parts
}

// variable is what the format says of a key, if a study can vary it.
func variable(key string) (schema.Property, error) {
	p, err := schema.PropertyAt(key, func(p schema.Property) bool { return refusal(p, key) == nil })
	if err != nil {
		return p, err
	}
	return p, refusal(p, key)
}

// freeText reports whether a key takes any text: neither a quantity nor one of
// some words, nor a material that the standards list.
func freeText(p schema.Property) bool {
	return p.Type == "string" && p.Format == "" && len(p.Enum) == 0 && !isMaterial(p.Path)
}

// isMaterial reports whether a key names a wood or a sheet.
func isMaterial(path string) bool {
	return strings.HasSuffix(path, ".species") || path == "skin.material"
}

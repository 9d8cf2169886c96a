package study

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"dryfit/rules/review"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/nearest"
)

// dimensions reads one of what is varied: KEY=VALUES; several keys that change
// together, KEY,KEY=A/B,C/D; or several keys of one table, TABLE={…},{…}.
func dimensions(base *review.Assessment, text string) ([]Dimension, error) {
	out, err := linked(base, text)
	if err != nil {
		return nil, &VaryError{text, err}
	}
	out[0].Text = text
	return out, nil
}

func linked(base *review.Assessment, text string) ([]Dimension, error) {
	key, list, found := strings.Cut(text, "=")
	key, list = strings.TrimSpace(key), strings.TrimSpace(list)
	switch {
	case !found || key == "":
		return nil, errors.New("write KEY=VALUES, as in grid.along=3..6")
	case strings.HasPrefix(list, "{"):
		return tables(base, key, list)
	}
	keys := splitKeys(key)
	if len(keys) == 1 {
		d, err := dimension(base, key, list)
		return []Dimension{d}, err
	}
	return together(base, keys, list)
}

// splitKeys cuts a list of keys at its commas, but for those in quotes.
func splitKeys(text string) []string {
	var out []string
	quoted, from := false, 0
	for i, r := range text {
		switch {
		case r == '"':
			quoted = !quoted
		case r == ',' && !quoted:
			out = append(out, strings.TrimSpace(text[from:i]))
			from = i + 1
		}
	}
	return append(out, strings.TrimSpace(text[from:]))
}

// together reads keys that change together: each item of the list has a value for
// every one of them, with slashes between.
func together(base *review.Assessment, keys []string, list string) ([]Dimension, error) {
	var out []Dimension
	var of []schema.Property
	words := true // none is a quantity, whose quotes are inches
	for i, key := range keys {
		key, err := inFull(base.Document.Tree, key, out)
		if err != nil {
			return nil, err
		}
		p, err := variable(key)
		if err != nil {
			return nil, err
		}
		words = words && p.Unit == 0
		of, out = append(of, p), append(out, Dimension{Key: spec.Key(keyParts(key)...), Linked: i > 0})
	}
	for _, item := range split(list, words) {
		values := shares(of, item)
		if len(values) != 1 {
			return nil, fmt.Errorf("%s is not one value for each of %d keys; write them with a slash between, without fractions", item, len(keys))
		}
		for i, text := range values[0] {
			if err := out[i].add(base, of[i], text); err != nil {
				return nil, err
			}
		}
	}
	return out, distinct(out)
}

// shares are the ways to part a text at slashes into one value for each key: of
// several slashes, some may be those of fractions.
func shares(of []schema.Property, text string) (out [][]string) {
	if len(of) == 1 {
		text = strings.TrimSpace(text)
		if _, err := parseValue(of[0], text); err != nil || text == "" {
			return nil
		}
		return [][]string{{text}}
	}
	for i, r := range text {
		if r != '/' || len(shares(of[:1], text[:i])) == 0 {
			continue
		}
		for _, rest := range shares(of[1:], text[i+1:]) {
			out = append(out, append([]string{strings.TrimSpace(text[:i])}, rest...))
		}
	}
	return out
}

// add holds one value of a key that changes with others, and takes it.
func (d *Dimension) add(base *review.Assessment, p schema.Property, text string) error {
	v, err := parseValue(p, text)
	if err == nil {
		err = d.fits(base, v)
	}
	if d.Values = append(d.Values, v); len(d.Values) > mostValues {
		return fmt.Errorf("more than %d values", mostValues)
	}
	return err
}

// distinct is an error where keys that change together have the same values twice.
func distinct(linked []Dimension) error {
	had := map[string]bool{}
	for i := range linked[0].Values {
		var row []any
		for _, d := range linked {
			row = append(row, d.Values[i])
		}
		text := fmt.Sprintf("%q", row)
		if had[text] {
			return fmt.Errorf("%v is given twice", row)
		}
		had[text] = true
	}
	return nil
}

// inFull is a key with its table: that of the key before it, where it names none, or
// of the first the only one that has such a key.
func inFull(tree map[string]any, key string, before []Dimension) (string, error) {
	switch {
	case key == "":
		return "", errors.New("a key is empty")
	case strings.Contains(key, "."):
		return numbered(tree, key)
	case len(before) > 0:
		return spec.Parent(before[len(before)-1].Key) + "." + key, nil
	}
	var in []string
	for _, p := range schema.Properties() {
		if table, name, _ := strings.Cut(p.Path, "."); name == key && refusal(p, p.Path) == nil {
			in = append(in, table+"."+name)
		}
	}
	if len(in) > 1 {
		return "", fmt.Errorf("%s is a key of several tables: write %s", key, strings.Join(in, " or "))
	}
	return append(in, key)[0], nil
}

// tables reads the values of several keys of a table as TOML has them; what the
// table has besides stays.
func tables(base *review.Assessment, table, list string) ([]Dimension, error) {
	table, err := numbered(base.Document.Tree, table)
	if err != nil {
		return nil, err
	}
	d, problems := spec.Parse("", []byte("v = ["+list+"]"))
	rows, _ := d.Tree["v"].([]any)
	if len(problems) > 0 || len(rows) == 0 {
		return nil, fmt.Errorf(`%s can't be read; write %s={material="bendable plywood",thickness="9mm"},{…}`, list, table)
	}
	var out []Dimension
	for _, row := range rows {
		set, ok := row.(map[string]any)
		if !ok || len(set) == 0 {
			return nil, fmt.Errorf("%v is no table with keys", row)
		}
		names := slices.Sorted(maps.Keys(set))
		for i, name := range names {
			if key := spec.Key(append(keyParts(table), name)...); len(out) < len(names) {
				out = append(out, Dimension{Key: key, Linked: i > 0})
			} else if out[i].Key != key {
				return nil, fmt.Errorf("%s is in one table and not in all", key)
			}
			p, err := variable(out[i].Key)
			if err == nil {
				err = out[i].add(base, p, fmt.Sprint(set[name]))
			}
			if err != nil {
				return nil, fmt.Errorf("%s: %w", out[i].Key, err)
			}
		}
		if len(names) != len(out) || len(out[0].Values) != len(out[len(out)-1].Values) {
			return nil, errors.New("each table has the same keys")
		}
	}
	return out, distinct(out)
}

// numbered is a key with the number of an element in place of its name.
func numbered(tree map[string]any, key string) (string, error) {
	parts := keyParts(key)
	for i, p := range parts {
		name, ok := p.(string)
		if !ok || i == 0 {
			continue
		}
		in, _ := spec.Lookup(tree, spec.Key(parts[:i]...))
		rows, ok := in.([]any)
		if !ok {
			continue
		}
		n, err := rowNamed(rows, name)
		if err != nil {
			return "", fmt.Errorf("%s: %w", spec.Key(parts[:i]...), err)
		}
		parts[i] = n
	}
	return spec.Key(parts...), nil
}

// rowNamed is the number of the one element with a name.
func rowNamed(rows []any, name string) (int, error) {
	found := 0
	var names []string
	for i, row := range rows {
		table, _ := row.(map[string]any)
		switch is, _ := table["name"].(string); {
		case is != name:
			names = append(names, is)
		case found > 0:
			return 0, fmt.Errorf("%q is the name of %d and of %d; write a number", name, found, i+1)
		default:
			found = i + 1
		}
	}
	if found > 0 {
		return found, nil
	}
	if near, ok := nearest.Word(name, names); ok {
		return 0, fmt.Errorf("none is named %q; is it %q?", name, near)
	}
	return 0, fmt.Errorf("none is named %q; there are %d", name, len(rows))
}

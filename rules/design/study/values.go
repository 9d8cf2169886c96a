package study

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"dryfit/schema"
	"dryfit/spec/quantity"
)

// mostValues is how many values one key may have, and mostOptions how many
// options a study. Past them a range was mistyped.
const (
	mostValues  = 10_000
	mostOptions = 1_000_000_000
)

// parseValues reads the VALUES of a key: items with commas between, each a
// value or a range FROM..TO with its step after a slash. Ends are those of the
// ranges and all other values: what is in between, a key may have if it may have
// the ends.
func parseValues(p schema.Property, text string) (out, ends []any, err error) {
	had := map[any]bool{}
	for _, item := range split(text, p.Unit == 0) {
		if item == "" {
			return nil, nil, errors.New("a value is empty")
		}
		from, rest, isRange := strings.Cut(item, "..")
		numeric := p.Unit != 0 || p.Type == "integer"
		var values []any
		if isRange && numeric {
			values, err = parseRange(p, strings.TrimSpace(from), strings.TrimSpace(rest))
		} else {
			var v any
			v, err = parseValue(p, item)
			values = []any{v}
		}
		if err != nil {
			return nil, nil, err
		}
		ends = append(ends, values[0])
		if last := values[len(values)-1]; len(values) > 1 {
			ends = append(ends, last)
		}
		for _, v := range values {
			if had[v] {
				return nil, nil, fmt.Errorf("%v is given twice", v)
			}
			had[v] = true
			if out = append(out, v); len(out) > mostValues {
				return nil, nil, fmt.Errorf("more than %d values", mostValues)
			}
		}
	}
	return out, ends, nil
}

// split cuts a list at its commas. A word that has a comma itself stands in
// double quotes; those of a quantity are inches.
func split(text string, words bool) []string {
	var out []string
	var item strings.Builder
	quoted := false
	for _, r := range text {
		switch {
		case r == '"' && words:
			quoted = !quoted
		case r == ',' && !quoted:
			out = append(out, strings.TrimSpace(item.String()))
			item.Reset()
		default:
			item.WriteRune(r)
		}
	}
	return append(out, strings.TrimSpace(item.String()))
}

// parseValue reads one value as a spec's tree holds it. Whether the key may
// have it is the schema's to say.
func parseValue(p schema.Property, text string) (any, error) {
	switch {
	case p.Unit != 0:
		if _, err := quantity.Parse(p.Unit, text); err != nil {
			return nil, fmt.Errorf("%s: %w", text, err)
		}
		return text, nil
	case p.Type == "integer":
		n, err := strconv.ParseInt(text, 10, 32)
		if err != nil {
			return nil, fmt.Errorf("%s is not a whole number", text)
		}
		return n, nil
	case p.Type == "boolean":
		switch text {
		case "true":
			return true, nil
		case "false":
			return false, nil
		}
		return nil, fmt.Errorf("%s is not true or false", text)
	default:
		return text, nil
	}
}

// parseRange reads TO, or TO/STEP, after FROM, and gives what it passes
// through: from FROM by steps to TO, and not past it.
func parseRange(p schema.Property, from, rest string) ([]any, error) {
	to, step := cutStep(p, rest)
	for _, text := range []string{from, to, step} {
		if text == "" {
			continue
		}
		if p.Unit == quantity.Celsius {
			break // read by its numerals: a step in F is not a temperature
		}
		if _, err := parseValue(p, text); err != nil {
			return nil, err
		}
	}
	switch {
	case from == "" || to == "":
		return nil, errors.New("a range lacks an end; write FROM..TO/STEP")
	case p.Type == "integer":
		return countRange(from, to, step)
	case step == "":
		return nil, fmt.Errorf("the range %s..%s has no step; write %s..%s/STEP", from, to, from, to)
	default:
		return quantityRange(p.Unit, from, to, step)
	}
}

// cutStep parts TO from its step. Fractions of an inch have slashes too: the
// whole is TO if it reads as a value, and else the first slash that leaves a
// value on either side divides it.
func cutStep(p schema.Property, rest string) (to, step string) {
	reads := func(text string) bool {
		_, err := parseValue(p, strings.TrimSpace(text))
		return err == nil
	}
	if reads(rest) {
		return rest, ""
	}
	for i, r := range rest {
		if r == '/' && reads(rest[:i]) && reads(rest[i+1:]) {
			return strings.TrimSpace(rest[:i]), strings.TrimSpace(rest[i+1:])
		}
	}
	to, step, _ = strings.Cut(rest, "/")
	return strings.TrimSpace(to), strings.TrimSpace(step)
}

func countRange(from, to, step string) ([]any, error) {
	var n [3]int64
	for i, text := range []string{from, to, cmp.Or(step, "1")} {
		v, err := strconv.ParseInt(text, 10, 32)
		if err != nil {
			return nil, fmt.Errorf("%s is not a whole number", text)
		}
		n[i] = v
	}
	if err := sensible(from, to, step, float64(n[0]), float64(n[1]), float64(n[2])); err != nil {
		return nil, err
	}
	var out []any
	for v := n[0]; v <= n[1]; v += n[2] {
		out = append(out, v)
	}
	return out, nil
}

// sensible refuses a range that leads nowhere, or too far.
func sensible(from, to, step string, a, b, by float64) error {
	slash := ""
	if step != "" {
		slash = "/" + step
	}
	switch {
	case by <= 0:
		return fmt.Errorf("the step %s is not greater than zero", step)
	case a > b:
		return fmt.Errorf("the range is reversed; write %s..%s%s", to, from, slash)
	case (b-a)/by >= mostValues:
		return fmt.Errorf("%s..%s%s has more than %d values", from, to, slash, mostValues)
	default:
		return nil
	}
}

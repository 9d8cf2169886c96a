package begin

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/edit"
)

// Take reads one KEY=VALUE. The value of a quantity or a word stands as it is; one
// of a number, a list or a table as a spec writes it.
func Take(text string) (edit.Change, error) {
	key, value, found := strings.Cut(text, "=")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	if !found || key == "" || value == "" {
		return edit.Change{}, errors.New("write KEY=VALUE, as in rib.species=ash")
	}
	p, err := schema.PropertyAt(key, nil)
	if err != nil {
		return edit.Change{}, err
	}
	if p.Type == "string" || len(p.Enum) > 0 {
		return edit.Change{Key: key, Value: bared(value)}, nil
	}
	doc, problems := spec.Parse("", []byte("value = "+value))
	if len(problems) > 0 || len(doc.Tree) != 1 {
		return edit.Change{}, fmt.Errorf("%s is not a value as a spec writes it", value)
	}
	return edit.Change{Key: key, Value: doc.Tree["value"]}, nil
}

// bared is a text without the quotes that it may be written in.
func bared(value string) string {
	if text, err := strconv.Unquote(value); err == nil && value[0] == '"' {
		return text
	}
	return value
}

// take gives a written spec the values that are taken as given, whose lines are no
// longer to be confirmed.
func take(text string, changes []edit.Change) (string, error) {
	out, err := edit.Apply([]byte(text), changes)
	if err != nil {
		return text, err
	}
	lines := strings.Split(string(out), "\n")
	doc, problems := spec.Parse("draft", out)
	if len(problems) > 0 {
		return text, errors.New(problems[0].Message)
	}
	for _, c := range changes {
		if r, ok := doc.ValueRange(c.Key); ok {
			at := doc.Position(r.Start).Line
			lines[at-1] = strings.Replace(lines[at-1], "# "+confirm, "# ", 1)
		}
	}
	return strings.Join(lines, "\n"), nil
}

// takeable refuses values that no spec can have.
func (d *drafter) takeable() error {
	if len(d.wanted.Take) == 0 {
		return nil
	}
	bare := d.wanted
	bare.Take = nil
	text, _ := write(bare, d.provisional(choice{around: 1, along: 1, haunch: d.haunch}), nil, d.sizes)
	for i, c := range d.wanted.Take {
		out, err := take(text, d.wanted.Take[:i+1])
		if err != nil {
			return &ImpossibleError{Key: "take", Text: c.Key + ": " + err.Error()}
		}
		doc, _ := spec.Parse("draft", []byte(out))
		problems := schema.Check(doc)
		if i := slices.IndexFunc(problems, func(p spec.Problem) bool { return strings.HasPrefix(p.Key, c.Key) }); i >= 0 {
			return &ImpossibleError{Key: "take", Text: problems[i].Key + ": " + problems[i].Message}
		}
	}
	return nil
}

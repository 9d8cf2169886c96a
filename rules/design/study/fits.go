package study

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/review"
	"dryfit/schema"
	"dryfit/spec"
)

// refusal says why a key can't be varied.
func refusal(p schema.Property, key string) error {
	table, name, _ := strings.Cut(p.Path, ".")
	switch {
	case p.Type == "object":
		return fmt.Errorf("%s is a table; vary one of its keys", key)
	case p.Type == "array":
		return fmt.Errorf("%s is a list; vary one of its elements, %s.1", key, key)
	case table == "dryfit", table == "project", table == "accept":
		return fmt.Errorf("%s does not change what is built", key)
	case freeText(p):
		return fmt.Errorf("%s is free text, on which no figure depends", name)
	default:
		return nil
	}
}

// missingElement is the element of an array that a key leads through and that a
// tree does not have; empty if it has all.
func missingElement(tree map[string]any, key string) string {
	parts := keyParts(key)
	for i, p := range parts {
		if _, isNumber := p.(int); !isNumber {
			continue
		}
		if at := spec.Key(parts[:i+1]...); !has(tree, at) {
			return at
		}
	}
	return ""
}

func has(tree map[string]any, key string) bool {
	_, ok := spec.Lookup(tree, key)
	return ok
}

// misshapen is what the schema says of a tree that no file was written for.
func misshapen(tree map[string]any) []spec.Problem {
	d, _ := spec.Parse("", []byte("dryfit = 1"))
	d.Tree = tree
	return schema.Check(d)
}

// fits holds one value against the schema, and a material against those that
// are known.
func (d Dimension) fits(base *review.Assessment, v any) error {
	tree, ok := spec.With(base.Document.Tree, d.Key, v)
	if absent := missingElement(base.Document.Tree, d.Key); absent != "" || !ok {
		return fmt.Errorf("the spec has no %s", cmp.Or(absent, d.Key))
	}
	problems := misshapen(tree)
	if i := slices.IndexFunc(problems, func(p spec.Problem) bool { return p.Key == d.Key }); i >= 0 {
		said := problems[i].Message
		if strings.HasPrefix(said, "does not belong") {
			said = d.Key + " " + said
		}
		return errors.New(said)
	}
	name, _ := v.(string)
	var err error
	switch {
	case d.Key == "skin.material":
		_, err = base.Standards.SheetMaterial(name)
	case isMaterial(d.Key):
		_, err = base.Standards.Species(name)
	}
	return err
}

package main

import (
	"bytes"
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// format is the table of all keys.
func format(seen map[string]record.Set) []byte {
	var b bytes.Buffer
	b.WriteString(generated + "# The spec's keys\n\n" +
		"A star in a key stands for any element of an array. In findings elements are numbered from 1: `route.2.width`. " +
		"A key that is neither required nor has a default may be left out: the rules that need it are then not checked.\n\n" +
		"| key | means | written | required or default | read by |\n| --- | --- | --- | --- | --- |\n")
	for _, p := range schema.Properties() {
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s | %s |\n", p.Path, p.Description, form(p), standing(p), readers(p.Path, seen))
	}
	return b.Bytes()
}

// units of the formats that are quantities, to show how they are written.
var units = map[string]quantity.Unit{
	"length": quantity.Metre, "length-zero": quantity.Metre, "length-signed": quantity.Metre, "mass": quantity.Kilogram,
	"force": quantity.Newton, "temperature": quantity.Celsius, "share": quantity.Fraction, "humidity": quantity.Fraction,
	"bearing": quantity.Radian,
}

func form(p schema.Property) string {
	switch {
	case len(p.Enum) > 0:
		return "`" + strings.Join(p.Enum, "`, `") + "`"
	case units[p.Format] != 0:
		return quantity.Accepted(units[p.Format])
	case p.Format == "stock":
		return `"4/4" or "8/4"`
	case p.Format == "date":
		return "2027-06-30"
	case p.Type == "object":
		return "table"
	case p.Type == "array":
		return "list"
	case p.Type == "integer":
		return "whole number"
	case p.Type == "boolean":
		return "true or false"
	default:
		return "text"
	}
}

func standing(p schema.Property) string {
	if p.Required {
		return "required"
	}
	for _, d := range standards.BuiltIn().Defaults() {
		if d.Key == p.Path {
			return "default " + show.Written(d.Value)
		}
	}
	return ""
}

// readers are the rules that read a key; of a table, those that read one in it.
func readers(path string, seen map[string]record.Set) string {
	keys := spec.IDs(path)
	var ids []string
	for _, r := range catalog.Rules() {
		if !keys.And(seen[r.ID]).Empty() {
			ids = append(ids, r.ID)
		}
	}
	return strings.Join(ids, ", ")
}

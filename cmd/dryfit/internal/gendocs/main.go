// Command gendocs writes the pages of docs that follow from the code: the table
// of all keys of a spec, a page for each rule, and the picture of the demo. Run it
// in cmd/dryfit by go generate.
package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

func main() {
	if err := write("../.."); err != nil {
		fmt.Fprintln(os.Stderr, "gendocs:", err)
		os.Exit(1)
	}
}

const generated = "<!-- Written by go generate; edit the code instead. -->\n\n"

func write(root string) error {
	made, err := pages(root)
	if err != nil {
		return err
	}
	folder := filepath.Join(root, "docs", "rules")
	if err := os.RemoveAll(folder); err != nil { // pages of rules that are gone
		return err
	}
	if err := os.Mkdir(folder, 0o755); err != nil {
		return err
	}
	for name, page := range made {
		if err := os.WriteFile(filepath.Join(root, name), page, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// pages are what is written, by the path from the root.
func pages(root string) (map[string][]byte, error) {
	seen, err := reads(root)
	if err != nil {
		return nil, err
	}
	section, err := picture(root)
	if err != nil {
		return nil, err
	}
	made := map[string][]byte{
		"rules/review/catalog/reads.txt": []byte(catalog.ReadsText(seen)), "docs/format.md": format(seen), "docs/section.svg": section,
	}
	var index bytes.Buffer
	index.WriteString(generated + "# The rules\n")
	for _, f := range catalog.Families() {
		fmt.Fprintf(&index, "\n## %s\n\n", f.Title)
		for _, r := range f.List() {
			fmt.Fprintf(&index, "- [%s](%s.md): %s\n", r.ID, r.ID, r.Title)
			if made["docs/rules/"+r.ID+".md"], err = rulePage(f, r, seen[r.ID]); err != nil {
				return nil, err
			}
		}
	}
	made["docs/rules/README.md"] = index.Bytes()
	return made, nil
}

// reads are the keys that each rule is seen to read, in the cases of all rules and
// in the examples.
func reads(root string) (map[string]record.Set, error) {
	specs := map[string][]byte{}
	for _, folder := range ruletest.Examples {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".ceiling.toml") {
				return err
			}
			specs[path], err = os.ReadFile(path)
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return ruletest.Reads(catalog.Families(), specs)
}

func rulePage(f engine.Family, r *engine.Rule, reads record.Set) ([]byte, error) {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s# %s\n\n```text\n", generated, r.ID)
	if err := report.Basis(&b, f, r, reads); err != nil {
		return nil, err
	}
	b.WriteString("```\n")
	return b.Bytes(), nil
}

// format is the table of all keys.
func format(seen map[string]record.Set) []byte {
	var b bytes.Buffer
	b.WriteString(generated + "# The spec's keys\n\n" +
		"A star in a key stands for any element of an array. In findings elements are numbered from 1: `route.2.width`. " +
		"A key that is neither required nor has a default may be left out: the rules that need it are then not checked.\n\n" +
		"| key | means | written | | read by |\n| --- | --- | --- | --- | --- |\n")
	for _, p := range schema.Properties() {
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s | %s |\n", p.Path, p.Description, form(p), standing(p), readers(p.Path, seen))
	}
	return b.Bytes()
}

// units of the formats that are quantities, to show how they are written.
var units = map[string]quantity.Unit{
	"length": quantity.Metre, "length-zero": quantity.Metre, "length-signed": quantity.Metre, "mass": quantity.Kilogram,
	"force": quantity.Newton, "temperature": quantity.Celsius, "share": quantity.Fraction, "humidity": quantity.Fraction,
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

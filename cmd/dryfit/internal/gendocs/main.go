// Command gendocs writes the pages of docs that follow from the code: the table
// of all keys of a spec, a page for each rule, and the picture of the demo. Run it
// in cmd/dryfit by go generate.
package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"dryfit/rules/review/catalog"
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

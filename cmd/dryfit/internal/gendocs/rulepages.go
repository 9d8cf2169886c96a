package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/report/rulebook"
	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/review/catalog"
	"dryfit/spec/record"
)

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
	if err := rulebook.Basis(&b, f, r, reads); err != nil {
		return nil, err
	}
	b.WriteString("```\n")
	return b.Bytes(), nil
}

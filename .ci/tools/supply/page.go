package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// targets are the systems that releases are made for. What a program is made
// of depends on the system and not on the processor.
var targets = []string{"darwin", "linux", "windows"}

const head = `<!-- Written by go generate; edit the code instead. -->

# What dryfit is made of

dryfit is under the [MIT licence](../LICENSE). The texts of all licences come with each release, in ` + "`licences.txt`" + `, and a bill of materials in CycloneDX's format beside it. go.mod has the exact versions and go.sum their checksums; package-lock.json has both for the npm packages of the tests. A dependency without a purpose in this table, or with a licence that was not agreed to, stops the build.

`

// writePage writes a table of what is in a program on any system, one of what
// only the tests use, and one of what they get from npm.
func writePage(b *bytes.Buffer, root string) error {
	shipped := map[string]*module{}
	all := map[string]*module{}
	for _, system := range targets {
		p := program{os: system, arch: "amd64"}
		linked, err := linkedInto(root, p)
		if err != nil {
			return err
		}
		maps.Copy(shipped, linked)
		tested, err := modulesOf(root, p, "-test", "./...")
		if err != nil {
			return err
		}
		maps.Copy(all, tested)
	}
	delete(all, ours)
	tests := maps.Clone(all)
	maps.DeleteFunc(tests, func(path string, _ *module) bool { return shipped[path] != nil })
	delete(shipped, ours)

	b.WriteString(head)
	b.WriteString("## In the program\n\n")
	err := table(b, shipped, true)
	b.WriteString("\n## In its tests only\n\n")
	err = errors.Join(err, table(b, tests, false))
	for path := range reasons {
		if all[path] == nil {
			err = errors.Join(err, fmt.Errorf("%s has a reason and is not used", path))
		}
	}
	b.WriteString("\n## Validators of its output, from npm\n\n")
	return errors.Join(err, validators(b, filepath.Join(root, ".ci", "validators", "package-lock.json")))
}

func table(b *bytes.Buffer, modules map[string]*module, shipped bool) error {
	var err error
	b.WriteString("| module | version | licence | purpose |\n| --- | --- | --- | --- |\n")
	for _, path := range slices.Sorted(maps.Keys(modules)) {
		m := modules[path]
		err = errors.Join(err, m.agree(shipped))
		reason, known := reasons[path]
		if !known {
			err = errors.Join(err, fmt.Errorf("%s is used and has no reason", path))
		}
		version := m.version
		if path == standard {
			path, version = "Go's standard library", "that of the build"
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s |\n", path, version, m.licence, reason)
	}
	return err
}

// validators lists what the lock of npm's packages asks for itself.
func validators(b *bytes.Buffer, lock string) error {
	src, err := os.ReadFile(lock)
	if err != nil {
		return err
	}
	var locked struct {
		Packages map[string]struct {
			Version, License string
			Dependencies     map[string]string
		}
	}
	if err := json.Unmarshal(src, &locked); err != nil {
		return fmt.Errorf("%s: %w", lock, err)
	}
	b.WriteString("| package | version | licence |\n| --- | --- | --- |\n")
	for _, name := range slices.Sorted(maps.Keys(locked.Packages[""].Dependencies)) {
		p := locked.Packages["node_modules/"+name]
		fmt.Fprintf(b, "| %s | %s | %s |\n", name, p.Version, p.License)
	}
	return nil
}

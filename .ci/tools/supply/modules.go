package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/google/licensecheck"
)

// module is one that dryfit uses. The standard library is the module std.
type module struct {
	path, version, dir string

	licence string   // as SPDX names it
	files   []string // the texts of the licence, and notices, within dir
	uses    []string // the paths of the modules whose packages it imports
}

// listed is what go list says of a package.
type listed struct {
	ImportPath, Dir string
	Standard        bool
	Imports         []string
	Module          *struct{ Path, Version, Dir string }
}

const ours, standard = "dryfit", "std"

// linkedInto are the modules in a program, by their path.
func linkedInto(root string, p program) (map[string]*module, error) {
	return modulesOf(root, p, "./cmd/dryfit")
}

// modulesOf are the modules of all that some packages are built from, with
// their licences.
func modulesOf(root string, p program, what ...string) (map[string]*module, error) {
	packages, err := list(root, p, what...)
	if err != nil {
		return nil, err
	}
	home := map[string]string{} // the module of a package
	modules := map[string]*module{}
	for _, pkg := range packages {
		m := module{path: standard, dir: goRoot()}
		if !pkg.Standard {
			if pkg.Module == nil {
				return nil, fmt.Errorf("%s is in no module", pkg.ImportPath)
			}
			m = module{path: pkg.Module.Path, version: pkg.Module.Version, dir: pkg.Module.Dir}
		}
		home[pkg.ImportPath] = m.path
		if modules[m.path] == nil {
			modules[m.path] = &m
		}
		if !pkg.Standard {
			modules[m.path].take(pkg.Dir)
		}
	}
	modules[standard].take(goRoot())
	for _, pkg := range packages {
		from := modules[home[pkg.ImportPath]]
		for _, i := range pkg.Imports {
			if to := home[i]; to != "" && to != from.path && !slices.Contains(from.uses, to) {
				from.uses = append(from.uses, to)
			}
		}
	}
	for _, path := range slices.Sorted(maps.Keys(modules)) {
		m := modules[path]
		slices.Sort(m.uses)
		slices.Sort(m.files)
		err = errors.Join(err, m.license())
	}
	return modules, err
}

// list is go list of packages and all that they import.
func list(root string, p program, what ...string) ([]listed, error) {
	command := exec.Command("go", append([]string{"list", "-deps", "-json=ImportPath,Dir,Standard,Imports,Module"}, what...)...)
	command.Dir = root
	command.Env = append(os.Environ(), "GOOS="+p.os, "GOARCH="+p.arch, "CGO_ENABLED=0")
	command.Stderr = os.Stderr
	out, err := command.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var all []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var one listed
		switch err := d.Decode(&one); {
		case errors.Is(err, io.EOF):
			return all, nil
		case err != nil:
			return nil, fmt.Errorf("go list: %w", err)
		}
		all = append(all, one)
	}
}

var goRoot = sync.OnceValue(func() string {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return ""
	}
	return string(bytes.TrimSpace(out))
})

var legal = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([-.].*)?$`)

// take adds the legal files between a package's folder and its module's.
func (m *module) take(dir string) {
	for {
		entries, err := os.ReadDir(dir)
		if err != nil {
			return
		}
		for _, e := range entries {
			name := filepath.Join(dir, e.Name())
			if legal.MatchString(e.Name()) && e.Type().IsRegular() && filepath.Ext(name) != ".go" && !slices.Contains(m.files, name) {
				m.files = append(m.files, name)
			}
		}
		if dir == m.dir {
			return
		}
		dir = filepath.Dir(dir)
	}
}

// agreed are the licences that dryfit may be shipped with, and its tests run
// with.
var agreed = map[bool][]string{
	true:  {"Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "MIT"},
	false: {"Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "MIT", "MPL-2.0"},
}

// patents is a promise that comes with Go's own modules, beside their licence.
const patents = "GooglePatentsFile"

// license reads which licences the files give.
func (m *module) license() error {
	var names []string
	for _, f := range m.files {
		text, err := os.ReadFile(f)
		if err != nil {
			return err
		}
		for _, match := range licensecheck.Scan(text).Match {
			if !match.IsURL && match.ID != patents && !slices.Contains(names, match.ID) {
				names = append(names, match.ID)
			}
		}
	}
	if len(names) == 0 {
		return fmt.Errorf("%s: no licence is known of %q", m.path, m.files)
	}
	slices.Sort(names)
	m.licence = strings.Join(names, " AND ")
	return nil
}

// agree refuses a licence that was not agreed to.
func (m *module) agree(shipped bool) error {
	for _, name := range strings.Split(m.licence, " AND ") {
		if !slices.Contains(agreed[shipped], name) {
			return fmt.Errorf("%s: its licence %s is none of %s", m.path, name, strings.Join(agreed[shipped], ", "))
		}
	}
	return nil
}

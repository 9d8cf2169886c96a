package main

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	cdx "github.com/CycloneDX/cyclonedx-go"
)

// writeBill writes the bill of materials of a program: its modules with their
// licences, the sums that go.sum holds them to, and what needs what. Its time
// is SOURCE_DATE_EPOCH's, and it has no serial number: both would differ between
// two bills of the same thing.
func writeBill(b *bytes.Buffer, root string, linked map[string]*module, p program) error {
	sums, err := sumsOf(filepath.Join(root, "go.sum"))
	if err != nil {
		return err
	}
	version, err := exec.Command("go", "env", "GOVERSION").Output()
	if err != nil {
		return fmt.Errorf("go env: %w", err)
	}
	linked[standard].version = string(bytes.TrimSpace(version))
	linked[ours].version = p.release

	bill := cdx.NewBOM()
	bill.Metadata = &cdx.Metadata{Component: component(linked[ours], sums), Lifecycles: &[]cdx.Lifecycle{{Phase: cdx.LifecyclePhaseBuild}}}
	bill.Metadata.Component.Type = cdx.ComponentTypeApplication
	bill.Metadata.Component.Properties = &[]cdx.Property{{Name: "GOOS", Value: p.os}, {Name: "GOARCH", Value: p.arch}}
	if epoch, err := strconv.ParseInt(os.Getenv("SOURCE_DATE_EPOCH"), 10, 64); err == nil {
		bill.Metadata.Timestamp = time.Unix(epoch, 0).UTC().Format(time.RFC3339)
	}
	bill.Components, bill.Dependencies = &[]cdx.Component{}, &[]cdx.Dependency{}
	for _, path := range slices.Sorted(maps.Keys(linked)) {
		m := linked[path]
		if path != ours {
			*bill.Components = append(*bill.Components, *component(m, sums))
		}
		needs := []string{}
		for _, used := range m.uses {
			needs = append(needs, linked[used].url())
		}
		*bill.Dependencies = append(*bill.Dependencies, cdx.Dependency{Ref: m.url(), Dependencies: &needs})
	}
	return cdx.NewBOMEncoder(b, cdx.BOMFileFormatJSON).SetPretty(true).EncodeVersion(bill, cdx.SpecVersion1_6)
}

func component(m *module, sums map[string]string) *cdx.Component {
	c := &cdx.Component{
		BOMRef: m.url(), Type: cdx.ComponentTypeLibrary, Name: m.path, Version: m.version, PackageURL: m.url(),
		Licenses: &cdx.Licenses{{Expression: m.licence}},
	}
	if !strings.Contains(m.licence, " AND ") {
		c.Licenses = &cdx.Licenses{{License: &cdx.License{ID: m.licence}}}
	}
	if sum := sums[m.path+" "+m.version]; sum != "" {
		c.Hashes = &[]cdx.Hash{{Algorithm: cdx.HashAlgoSHA256, Value: sum}}
	}
	return c
}

// url names a module as a package URL, with which bills are compared.
func (m *module) url() string {
	return "pkg:golang/" + strings.ToLower(m.path) + "@" + strings.ReplaceAll(m.version, "+", "%2B")
}

// sumsOf reads the SHA-256 of each module in a go.sum, in hexadecimal.
func sumsOf(path string) (map[string]string, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	sums := map[string]string{}
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		name, sum, found := strings.Cut(lines.Text(), " h1:")
		raw, err := base64.StdEncoding.DecodeString(sum)
		if !found || err != nil {
			return nil, fmt.Errorf("%s: %q is no sum", path, lines.Text())
		}
		sums[name] = hex.EncodeToString(raw)
	}
	return sums, lines.Err()
}

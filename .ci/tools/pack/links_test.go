package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

func TestBrokenLinks(t *testing.T) {
	for _, c := range []struct{ name, page, says string }{
		{"a file", "[a](docs/a.md) and ![b](docs/a.md \"title\")", ""},
		{"a place in a file", "[a](docs/a.md#part)", ""},
		{"a folder", "[docs](docs/)", ""},
		{"a place in the page, and the web", "[a](#part) [b](https://x.example/y.md) [c](mailto:a@x.example)", ""},
		{"what is shown and not meant", "`[a](gone.md)`\n\n```md\n[a](gone.md)\n```\n", ""},
		{"by reference", "[a]\n\n[a]: docs/a.md\n", ""},
		{"gone", "[a](docs/gone.md)", "README.md links to docs/gone.md, which is not there"},
		{"gone, by reference", "[a]\n\n[a]: gone.md\n", "README.md links to gone.md"},
		{"out of the archive", "[a](../a.md)", "README.md links to ../a.md"},
		{"after a fenced block", "```sh\nx\n```\n[a](gone.md)\n", "README.md links to gone.md"},
	} {
		err := broken(fstest.MapFS{"README.md": {Data: []byte(c.page)}, "docs/a.md": {Data: []byte("[up](../README.md)")}})
		if c.says == "" && err != nil || c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.says)
		}
	}
}

// shipped is the pages that the release script puts into an archive.
func shipped(t *testing.T, root string) fs.FS {
	script, err := os.ReadFile(filepath.Join(root, ".ci/release"))
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`(?m)^pages=\((.*)\)$`).FindSubmatch(script)
	if m == nil {
		t.Fatal("the release script names no pages")
	}
	archive := fstest.MapFS{}
	for _, page := range strings.Fields(string(m[1])) {
		err := filepath.WalkDir(filepath.Join(root, page), func(file string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := os.ReadFile(file)
			if err != nil {
				return err
			}
			name, err := filepath.Rel(root, file)
			archive[filepath.ToSlash(name)] = &fstest.MapFile{Data: text}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return archive
}

func TestWhatIsShippedLinksToWhatIsShipped(t *testing.T) {
	archive := shipped(t, "../../..")
	if err := broken(archive); err != nil {
		t.Error(err)
	}
	if _, err := fs.Stat(archive, "README.md"); err != nil {
		t.Error(err)
	}
}

// What people read on the forge leads somewhere too.
func TestForgePagesLinkToFiles(t *testing.T) {
	root := os.DirFS("../../..")
	pages, err := fs.Glob(root, ".github/*.md")
	if err != nil || len(pages) < 3 {
		t.Fatalf("%d pages: %v", len(pages), err)
	}
	for _, page := range append(pages, "README.md", "DEVELOPERS.md") {
		if err := brokenIn(root, page); err != nil {
			t.Error(err)
		}
	}
}

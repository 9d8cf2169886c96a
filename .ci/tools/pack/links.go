package main

import (
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"path"
	"regexp"
	"strings"
)

var (
	// link is an inline link or image, or the definition of one by reference.
	link = regexp.MustCompile(`\]\(<?([^)<>\s]+)>?[^)]*\)|(?m:^\[[^\]]+\]: *(\S+))`)
	// code is what a page shows and does not mean: a fenced block, or a span.
	code = regexp.MustCompile("(?ms:^```.*?^```)|`[^`\n]*`")
)

// broken lists the relative links of a folder's Markdown pages that lead to
// nothing in it: a reader without the repository can't follow them.
func broken(folder fs.FS) error {
	var faults []error
	err := fs.WalkDir(folder, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) != ".md" {
			return err
		}
		faults = append(faults, brokenIn(folder, name))
		return nil
	})
	return errors.Join(append(faults, err)...)
}

// brokenIn lists those of one page.
func brokenIn(folder fs.FS, page string) error {
	text, err := fs.ReadFile(folder, page)
	faults := []error{err}
	for _, m := range link.FindAllStringSubmatch(code.ReplaceAllString(string(text), ""), -1) {
		if to, ok := target(page, m[1]+m[2]); ok {
			if _, err := fs.Stat(folder, to); err != nil {
				faults = append(faults, fmt.Errorf("%s links to %s, which is not there", page, m[1]+m[2]))
			}
		}
	}
	return errors.Join(faults...)
}

// target is the file that a link of a page leads to, and whether it leads to
// one: not to the web, and not to a place in the page itself.
func target(page, to string) (string, bool) {
	u, err := url.Parse(to)
	if err == nil && (u.IsAbs() || u.Host != "" || u.Path == "") {
		return "", false
	}
	file, _, _ := strings.Cut(to, "#")
	if err == nil {
		file = u.Path
	}
	return path.Join(path.Dir(page), file), true
}

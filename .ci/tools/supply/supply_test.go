package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What nobody decided on is refused: no licence, one that was not agreed to, no
// reason.
func TestRefuses(t *testing.T) {
	dir := t.TempDir()
	text := filepath.Join(dir, "LICENSE")
	for _, c := range []struct {
		name, licence, refused string
	}{
		{"golang.org/x/sync", "Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice and this permission notice appear in all copies.", "no licence is known"},
		{"golang.org/x/sync", mpl, "its licence MPL-2.0 is none of"},
		{"example.org/unheard-of", mit, "is used and has no reason"},
		{"golang.org/x/sync", mit, ""},
	} {
		if err := os.WriteFile(text, []byte(c.licence), 0o644); err != nil {
			t.Fatal(err)
		}
		m := &module{path: c.name, version: "v1.0.0", dir: dir}
		m.take(dir)
		err := m.license()
		if err == nil {
			err = table(&bytes.Buffer{}, map[string]*module{c.name: m}, true)
		}
		if got := errorText(err); !strings.Contains(got, c.refused) || c.refused == "" && got != "" {
			t.Errorf("%s: got %q, want %q", c.name, got, c.refused)
		}
	}
}

func TestSums(t *testing.T) {
	path := filepath.Join(t.TempDir(), "go.sum")
	// The sum of the empty text, from FIPS 180-4's examples (from memory).
	if err := os.WriteFile(path, []byte("example.org/m v1.0.0 h1:47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	sums, err := sumsOf(path)
	if want := "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"; err != nil || sums["example.org/m v1.0.0"] != want {
		t.Errorf("got %v, %v", sums, err)
	}
	if err := os.WriteFile(path, []byte("example.org/m v1.0.0 h2:47DE\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := sumsOf(path); err == nil {
		t.Error("a line without a sum was taken")
	}
}

func errorText(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

const mpl = `This Source Code Form is subject to the terms of the Mozilla Public
License, v. 2.0. If a copy of the MPL was not distributed with this
file, You can obtain one at http://mozilla.org/MPL/2.0/.`

const mit = `Permission is hereby granted, free of charge, to any person obtaining a copy
of this software and associated documentation files (the "Software"), to deal
in the Software without restriction, including without limitation the rights
to use, copy, modify, merge, publish, distribute, sublicense, and/or sell
copies of the Software, and to permit persons to whom the Software is
furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all
copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR
IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY,
FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE
AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER
LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM,
OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE
SOFTWARE.`

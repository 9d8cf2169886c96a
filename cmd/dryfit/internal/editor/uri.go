package editor

import (
	"net/url"
	"path/filepath"
	"strings"
)

// pathOf is the path of a file's URI. Others, as of a text that is not saved,
// have none.
func pathOf(uri string) (string, bool) {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" || u.Path == "" {
		return "", false
	}
	path := u.Path
	if drive := strings.TrimPrefix(path, "/"); len(drive) > 1 && drive[1] == ':' {
		path = drive
	}
	if u.Host != "" && u.Host != "localhost" {
		path = "//" + u.Host + path
	}
	return filepath.FromSlash(path), true
}

// uriOf is the URI of a file.
func uriOf(path string) string {
	if absolute, err := filepath.Abs(path); err == nil {
		path = absolute
	}
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}

// samePath reports whether two paths name one place, as far as their texts say.
func samePath(a, b string) bool {
	absolute := func(p string) string {
		if abs, err := filepath.Abs(p); err == nil {
			return abs
		}
		return p
	}
	return absolute(a) == absolute(b)
}

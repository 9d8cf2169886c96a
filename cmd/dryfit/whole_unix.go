//go:build !windows

package main

import "github.com/google/renameio/v2"

// writeWhole replaces the file at path by one with these bytes, or leaves it as
// it was.
func writeWhole(path string, data []byte) error {
	return renameio.WriteFile(path, data, 0o644)
}

// rewriteWhole is writeWhole for a file that keeps who may read it.
func rewriteWhole(path string, data []byte) error {
	return renameio.WriteFile(path, data, 0o644, renameio.WithExistingPermissions())
}

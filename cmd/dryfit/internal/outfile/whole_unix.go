//go:build !windows

package outfile

import (
	"github.com/google/renameio/v2"
)

// writeWhole replaces the file at path by one with these bytes, or leaves it as
// it was. A file that is there keeps who may read it.
func writeWhole(path string, data []byte) error {
	return renameio.WriteFile(path, data, 0o644, renameio.WithExistingPermissions())
}

package outfile

import (
	"os"
	"path/filepath"
)

// writeWhole replaces the file at path by one with these bytes. Windows has no
// call that does so at once under every condition; the rename is the nearest. A
// folder decides who may read its files.
func writeWhole(path string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".dryfit-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if _, err := f.Write(data); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

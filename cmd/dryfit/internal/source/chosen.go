package source

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"path/filepath"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/design/study"
)

// Specs is a number of specs in words.
func Specs(n int) string {
	if n == 1 {
		return "1 spec"
	}
	return fmt.Sprintf("%d specs", n)
}

// Placed is where an input is, the same from whichever folder it is named: from the
// repository's root, and outside of one from the folder above all inputs.
func Placed(r report.Report, in Input, above string) string {
	if above == "" || in.Stdin {
		return r.InRepository(in.Name)
	}
	return Below(above, Absolute(in.Path))
}

// Common is the nearest folder above all inputs; "" where there is no input.
func Common(inputs []Input) (folder string) {
	for _, in := range inputs {
		if in.Stdin {
			continue
		}
		at := filepath.Dir(Absolute(in.Path))
		for folder != "" && folder != at && !strings.HasPrefix(at, strings.TrimSuffix(folder, string(filepath.Separator))+string(filepath.Separator)) {
			folder = filepath.Dir(folder)
		}
		if folder == "" {
			folder = at
		}
	}
	return folder
}

// InPart puts a path into one of some parts, evenly, the same on every machine and
// whatever else is checked.
func InPart(p study.Part, path string) bool {
	sum := sha256.Sum256([]byte(path))
	return binary.BigEndian.Uint64(sum[:])%uint64(p.Of) == uint64(p.Number-1)
}

// real is a path as git has it: absolute, and through no symbolic link but
// perhaps the file itself.
func real(path string) string {
	abs, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(abs))
	if err != nil {
		return abs
	}
	return filepath.Join(folder, filepath.Base(abs))
}

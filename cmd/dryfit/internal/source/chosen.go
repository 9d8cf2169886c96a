package source

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/git"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/design/study"
	"dryfit/rules/model/standards"
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

// changes tells which files of the working tree differ from a revision.
type changes struct{ *Snapshot }

// ChangedSince asks git what was at a revision. What a file is now is read from
// the working tree, so that nothing of the repository's has a say in it.
func ChangedSince(ctx context.Context, rev string) (changes, error) {
	s, err := SnapshotAt(ctx, rev)
	return changes{s}, err
}

// Concerned are the inputs that changed, or whose standards did: those named, or
// any from the spec's folder up to the root, deleted ones too. A spec that was
// deleted is left out. Standard input has no history and stays.
func (c changes) Concerned(inputs []Input, named []string) []Input {
	namedChanged := slices.ContainsFunc(named, c.changed)
	return slices.DeleteFunc(inputs, func(in Input) bool {
		if in.Stdin {
			return false
		}
		if _, err := os.Lstat(in.Path); err != nil && c.was(in.Path) {
			return true
		}
		return !(c.changed(in.Path) || namedChanged || len(named) == 0 && c.standardsOf(in.Path))
	})
}

// entry is what the revision had at a path; zero where it had nothing.
func (c changes) entry(path string) git.Entry {
	rel, err := filepath.Rel(c.repository.Root(), real(path))
	if err != nil {
		return git.Entry{}
	}
	return c.files[filepath.ToSlash(rel)]
}

func (c changes) was(path string) bool { return c.entry(path) != git.Entry{} }

// changed reports whether a path is new, gone or different. A symbolic link has
// changed too where what it leads to has.
func (c changes) changed(path string) bool {
	e := c.entry(path)
	if e == (git.Entry{}) {
		_, err := os.Lstat(path)
		return err == nil
	}
	if !c.repository.Same(e) {
		return true
	}
	to, err := filepath.EvalSymlinks(real(path))
	return e.Link() && (err != nil || c.changed(to))
}

func (c changes) standardsOf(path string) bool {
	for at := filepath.Dir(real(path)); ; at = filepath.Dir(at) {
		if c.changed(filepath.Join(at, standards.FileName)) {
			return true
		}
		if at == c.repository.Root() || at == filepath.Dir(at) {
			return false
		}
	}
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

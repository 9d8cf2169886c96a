package main

import (
	"context"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/standards"
	"dryfit/rules/study"
)

// chosen are the inputs that are left by --changed-since and --part. Where none
// is left, that is said: nothing to check is no failure.
func (f checkFlags) chosen(ctx context.Context, s streams, r report.Report, inputs []input) ([]input, error) {
	all := len(inputs)
	if f.since != "" {
		changed, err := changedSince(ctx, f.since)
		if err != nil {
			return nil, fmt.Errorf("--changed-since %s: %w", f.since, err)
		}
		inputs = changed.concerned(inputs, f.standards)
		if len(inputs) == 0 {
			fmt.Fprintln(s.err, report.Safe(fmt.Sprintf("dryfit: of %s none has changed since %s, nor have its standards", specs(all), f.since)))
		}
	}
	if f.part == "" {
		return inputs, nil
	}
	part, err := study.ParsePart(f.part)
	if err != nil {
		return nil, fmt.Errorf("--part %w", err)
	}
	before := len(inputs)
	inputs = slices.DeleteFunc(inputs, func(in input) bool { return !inPart(part, r.InRepository(in.name)) })
	if len(inputs) == 0 && before > 0 {
		fmt.Fprintf(s.err, "dryfit: of %s none is in part %s\n", specs(before), f.part)
	}
	return inputs, nil
}

func specs(n int) string {
	if n == 1 {
		return "1 spec"
	}
	return fmt.Sprintf("%d specs", n)
}

// inPart puts a path into one of some parts, the same on every machine and
// whatever else is checked.
func inPart(p study.Part, path string) bool {
	h := fnv.New64a()
	h.Write([]byte(path))
	return h.Sum64()%uint64(p.Of) == uint64(p.Number-1)
}

// changes are the files that differ from a revision, by their absolute paths.
type changes struct {
	root  string
	files map[string]bool
}

// changedSince asks git which files in the working tree differ from a revision:
// edited, staged, new ones that are not ignored, and deleted ones.
func changedSince(ctx context.Context, rev string) (*changes, error) {
	root, err := git(ctx, "", "rev-parse", "--show-toplevel")
	if err != nil {
		return nil, err
	}
	c := &changes{root: strings.TrimSuffix(string(root), "\n"), files: map[string]bool{}}
	commit, err := git(ctx, "", "rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	if err != nil {
		return nil, fmt.Errorf("git knows no such revision")
	}
	for _, ask := range [][]string{
		{"-C", c.root, "diff", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--ignore-submodules", strings.TrimSpace(string(commit)), "--"},
		{"-C", c.root, "ls-files", "--others", "--exclude-standard", "-z"},
	} {
		names, err := git(ctx, "", ask...)
		if err != nil {
			return nil, err
		}
		for _, name := range strings.Split(string(names), "\x00") {
			if name != "" {
				c.files[filepath.Join(c.root, filepath.FromSlash(name))] = true
			}
		}
	}
	return c, nil
}

// concerned are the inputs that changed, or whose standards did: those named, or
// any from the spec's folder up to the root, deleted ones too. A spec that was
// deleted is left out. Standard input has no history and stays.
func (c *changes) concerned(inputs []input, named []string) []input {
	namedChanged := slices.ContainsFunc(named, func(file string) bool { return c.files[real(file)] })
	return slices.DeleteFunc(inputs, func(in input) bool {
		if in.stdin {
			return false
		}
		path := real(in.path)
		if _, err := os.Lstat(in.path); err != nil && c.files[path] {
			return true
		}
		return !(c.files[path] || namedChanged || len(named) == 0 && c.standardsOf(path))
	})
}

func (c *changes) standardsOf(path string) bool {
	for at := filepath.Dir(path); ; at = filepath.Dir(at) {
		if c.files[filepath.Join(at, standards.FileName)] {
			return true
		}
		if at == c.root || at == filepath.Dir(at) {
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

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"dryfit/spec"
)

// revision is a spec as git keeps it: REV:path, the path from the repository's
// root or, after ./, from this folder.
type revision struct{ rev, path string }

// revisionOf reads REV:path. What is there as a file is a file.
func revisionOf(name string) (revision, bool) {
	rev, path, ok := strings.Cut(name, ":")
	if _, err := os.Lstat(name); err == nil || !ok || rev == "" || path == "" || filepath.VolumeName(name) != "" {
		return revision{}, false
	}
	return revision{rev, path}, true
}

// fromGit reads a revision of a spec. The names reach git on its standard input
// and as the hash that it answers with, never as arguments, so that none can be
// taken for an option.
func fromGit(ctx context.Context, r revision) (src []byte, problem string) {
	if strings.ContainsAny(r.rev+r.path, "\n\r\x00") {
		return nil, "a revision and a path are one line"
	}
	answer, err := git(ctx, r.rev+"^{tree}\n"+r.rev+":"+r.path+"\n", "cat-file", "--batch-check")
	if err != nil {
		return nil, err.Error()
	}
	tree, blob, _ := strings.Cut(strings.TrimSpace(string(answer)), "\n")
	if fields := strings.Fields(tree); len(fields) != 3 || fields[1] != "tree" {
		return nil, "git knows no revision " + r.rev
	}
	fields := strings.Fields(blob)
	if len(fields) != 3 || fields[1] != "blob" {
		return nil, "there is no file " + r.path + " at " + r.rev
	}
	if size, err := strconv.ParseInt(fields[2], 10, 64); err != nil || size > spec.MaxSize {
		return nil, fmt.Sprintf("the file is over %dMiB, which no spec is", spec.MaxSize>>20)
	}
	src, err = git(ctx, "", "cat-file", "blob", fields[0])
	if err != nil {
		return nil, err.Error()
	}
	return src, ""
}

// folder is where a revision's path lies in the working tree, whose standards
// it is judged by.
func (r revision) folder(ctx context.Context) string {
	if strings.HasPrefix(r.path, "./") || strings.HasPrefix(r.path, "../") {
		return filepath.Dir(filepath.FromSlash(r.path))
	}
	root, err := git(ctx, "", "rev-parse", "--show-toplevel")
	if err != nil {
		return "."
	}
	return filepath.Dir(filepath.Join(strings.TrimSpace(string(root)), filepath.FromSlash(r.path)))
}

// git runs a command of git and returns what it prints.
func git(ctx context.Context, in string, args ...string) ([]byte, error) {
	c := exec.CommandContext(ctx, "git", args...)
	var out, errs bytes.Buffer
	c.Stdin, c.Stdout, c.Stderr = strings.NewReader(in), &out, &errs
	err := c.Run()
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, errors.New("git is not installed here, and reads it")
	case err != nil:
		said, _, _ := strings.Cut(strings.TrimSpace(errs.String()), "\n")
		return nil, fmt.Errorf("git: %s", said)
	}
	return out.Bytes(), nil
}

package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// block is the fenced block that follows a mark in the README.
func block(t *testing.T, readme, mark string) string {
	_, after, found := strings.Cut(readme, "<!-- "+mark+" -->\n```")
	require.True(t, found, mark)
	_, after, _ = strings.Cut(after, "\n")
	text, _, found := strings.Cut(after, "```")
	require.True(t, found, mark)
	return text
}

// Every command that the README shows runs, and each part of its sample is what the
// main command prints.
func TestReadme(t *testing.T) {
	t.Chdir("../..")
	src, err := os.ReadFile("README.md")
	require.NoError(t, err)
	readme := string(src)

	main := strings.TrimSpace(block(t, readme, "main"))
	out, _, status := printed(t, strings.TrimPrefix(main, "go run ./cmd/"))
	assert.Zero(t, status, "the main command passes")
	parts := strings.Split(block(t, readme, "sample"), "…\n")
	assert.Len(t, parts, 3)
	for _, part := range parts {
		_, rest, found := strings.Cut(out, part)
		assert.True(t, found, "the sample has it, and the command prints it: %s", part)
		out = rest
	}

	assert.Equal(t, "go test ./...\n", block(t, readme, "test"))
	examples, err := filepath.Abs("docs/examples/alder-quay")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.CopyFS(".", os.DirFS(examples)))
	commands := regexp.MustCompile("(?m)^\\| `(dryfit [^`]*)` \\|").FindAllStringSubmatch(readme, -1)
	assert.Len(t, commands, 17)
	for _, c := range commands {
		out, errs, _ := printed(t, c[1])
		assert.True(t, out != "" || strings.Contains(c[1], "--output") || c[1] == "dryfit serve-editor", "%s: %s", c[1], errs)
	}
}

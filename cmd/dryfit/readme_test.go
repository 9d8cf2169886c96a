package main

import (
	"os"
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

// Every command that the README shows runs, and its sample is what the main
// command prints but for the date.
func TestReadme(t *testing.T) {
	t.Chdir("../..")
	src, err := os.ReadFile("README.md")
	require.NoError(t, err)
	readme := string(src)

	main := strings.TrimSpace(block(t, readme, "main"))
	out, _, status := printed(t, strings.TrimPrefix(main, "go run ./cmd/"))
	assert.Zero(t, status, "the main command passes")
	date := regexp.MustCompile(`\d{4}-\d{2}-\d{2}`)
	sample := block(t, readme, "sample")
	if *update {
		readme = strings.Replace(readme, sample, strings.TrimSuffix(date.ReplaceAllString(out, "2026-11-25"), "\n"), 1)
		require.NoError(t, os.WriteFile("README.md", []byte(readme), 0o644))
		sample = block(t, readme, "sample")
	}
	assert.Equal(t, date.ReplaceAllString(sample, "DATE"), strings.TrimSuffix(date.ReplaceAllString(out, "DATE"), "\n"))

	assert.Equal(t, "go test ./...\n", block(t, readme, "test"))
	for _, line := range strings.Split(strings.TrimSpace(block(t, readme, "run")), "\n") {
		out, _, _ := printed(t, line)
		assert.True(t, out != "" || strings.Contains(line, "--output"), line)
	}
}

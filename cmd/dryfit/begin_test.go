package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
)

// The prompts go to standard error, so that standard output is the spec alone.
func TestDraftsToStandardOutput(t *testing.T) {
	var out, errs bytes.Buffer
	args := []string{"begin", "--profile", "flat", "--span", "3m", "--length", "5m"}
	require.Zero(t, run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs}), errs.String())
	assert.True(t, strings.HasPrefix(out.String(), "# A first spec"))
	assert.Contains(t, errs.String(), "passes its own check")
}

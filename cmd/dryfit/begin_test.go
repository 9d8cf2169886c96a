package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// On a terminal what is missing is asked for, again until it is a length, and
// what is said is not asked for.
func TestAsksForWhatIsMissing(t *testing.T) {
	f := beginFlags{profile: "segmental", rise: "600mm"}
	var said bytes.Buffer
	f.ask(strings.NewReader("3\n 3m \n\n6m\n"), &said)
	assert.Equal(t, "3m", f.span)
	assert.Equal(t, "6m", f.length)
	assert.Empty(t, f.missing())
	assert.Equal(t, 2, strings.Count(said.String(), "Span, springing to springing"), said.String())
	assert.Equal(t, 2, strings.Count(said.String(), "Length, over all panels"), said.String())
	assert.NotContains(t, said.String(), "Rise")
	assert.Contains(t, said.String(), `write "2700mm"`)

	f = beginFlags{profile: "flat"}
	f.ask(strings.NewReader("3m\n"), &said)
	assert.Equal(t, []string{"--length"}, f.missing(), "the end of the input leaves it missing")
}

// The prompts go to standard error, so that standard output is the spec alone.
func TestDraftsToStandardOutput(t *testing.T) {
	var out, errs bytes.Buffer
	args := []string{"begin", "--profile", "flat", "--span", "3m", "--length", "5m"}
	require.Zero(t, run(context.Background(), args, streams{in: strings.NewReader(""), out: &out, err: &errs}), errs.String())
	assert.True(t, strings.HasPrefix(out.String(), "# A first spec"))
	assert.Contains(t, errs.String(), "passes its own check")
}

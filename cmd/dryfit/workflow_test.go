package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// The files that a forge reads are YAML, and what they name is there: every
// input that the action's script reads is one of the action's, and the workflow
// to copy gives it no other.
func TestWorkflowFiles(t *testing.T) {
	read := func(path string, into any) string {
		src, err := os.ReadFile("../../" + path)
		require.NoError(t, err)
		require.NoError(t, yaml.Unmarshal(src, into), path)
		return string(src)
	}
	var action struct {
		Inputs map[string]any
		Runs   struct {
			Steps []struct {
				Env map[string]string
				Run string
			}
		}
	}
	read(".github/actions/check/action.yml", &action)
	script, err := os.ReadFile("../../.github/actions/check/run.sh")
	require.NoError(t, err)
	step := action.Runs.Steps[0]
	assert.NotContains(t, step.Run, "${{", "inputs reach the script by its environment")
	given := map[string]bool{}
	for name, value := range step.Env {
		assert.Contains(t, string(script), name)
		if _, input, ok := strings.Cut(value, "inputs."); ok {
			given[strings.TrimSuffix(input, " }}")] = true
		}
	}
	for input := range action.Inputs {
		assert.True(t, given[input], "%s reaches the script", input)
	}

	var workflow struct {
		Jobs map[string]struct {
			Steps []struct {
				Uses string
				With map[string]any
			}
		}
	}
	read("docs/examples/ci/ceilings.yml", &workflow)
	used := false
	for _, s := range workflow.Jobs["check"].Steps {
		if strings.Contains(s.Uses, "/.github/actions/check@") {
			used = true
			for input := range s.With {
				assert.Contains(t, action.Inputs, input)
			}
		}
	}
	assert.True(t, used)
}

// What our own workflows run is named by its commit: a tag may be moved.
func TestWorkflowsArePinned(t *testing.T) {
	files, err := filepath.Glob("../../.github/workflows/*.yml")
	require.NoError(t, err)
	uses := regexp.MustCompile(`(?m)uses: (.*)$`)
	pinned := regexp.MustCompile(`^[\w-]+/[\w-]+@[0-9a-f]{40} # v[\d.]+$`)
	for _, f := range files {
		src, err := os.ReadFile(f)
		require.NoError(t, err)
		var workflow map[string]any
		require.NoError(t, yaml.Unmarshal(src, &workflow), f)
		actions := uses.FindAllStringSubmatch(string(src), -1)
		assert.NotEmpty(t, actions, f)
		for _, a := range actions {
			assert.Regexp(t, pinned, a[1], f)
		}
	}
}

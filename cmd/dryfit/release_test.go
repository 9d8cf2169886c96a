package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/internal/outside"
)

func TestVersionSaysTheCommit(t *testing.T) {
	out, _, status := printed(t, "dryfit --version")
	assert.Zero(t, status)
	assert.Equal(t, "dryfit "+build.Version()+build.Said(build.Commit())+"\n", out)
}

// releaseTag is how releases are named, as the release script has it.
var releaseTag = regexp.MustCompile(`^v[0-9]+\.[0-9]+\.[0-9]+(-[0-9A-Za-z.]+)?$`)

// What people are shown to copy names a release as releases are named: a tag
// such as v1 does not exist.
func TestExamplesNameReleases(t *testing.T) {
	script, err := os.ReadFile("../../.ci/release")
	require.NoError(t, err)
	assert.Contains(t, string(script), releaseTag.String())
	named := regexp.MustCompile(`(?m)OWNER/dryfit\S*@(\S+)|repo: \S*OWNER/dryfit\s+rev: (\S+)`)
	found := 0
	for _, pattern := range []string{"../../README.md", "../../docs/*.md", "../../docs/examples/ci/*"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, f := range files {
			src, err := os.ReadFile(f)
			require.NoError(t, err)
			for _, m := range named.FindAllStringSubmatch(string(src), -1) {
				found++
				assert.Regexp(t, releaseTag, m[1]+m[2], f)
			}
		}
	}
	assert.Positive(t, found)
}

// A release's notes are its own section of the change log, and without one
// there is no release.
func TestNotesOfARelease(t *testing.T) {
	bash := outside.Program(t, "bash")
	folder := t.TempDir()
	script, err := os.ReadFile("../../.ci/notes")
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(folder+"/.ci", 0o755))
	require.NoError(t, os.MkdirAll(folder+"/docs", 0o755))
	require.NoError(t, os.WriteFile(folder+"/.ci/notes", script, 0o644))
	require.NoError(t, os.WriteFile(folder+"/docs/CHANGELOG.md", []byte("# Changes\n\n## Unreleased\n\n- Next.\n\n"+
		"## v1.2.3, 2026-12-01\n\n- A line.\n\n### Rules\n\n- Another.\n\n## v1.2.30\n\n- Longer.\n\n## v1.2.2\n\n## v1.2.1, 2026-10-01\n\n- First.\n"), 0o644))
	for version, want := range map[string]string{
		"v1.2.3": "- A line.\n\n### Rules\n\n- Another.\n", "v1.2.30": "- Longer.\n", "v1.2.1": "- First.\n",
		"v1.2.2": "", "v1.2": "", "v1x2.3": "", "v9.9.9": "",
	} {
		var complaint strings.Builder
		c := exec.Command(bash, folder+"/.ci/notes", version)
		c.Stderr = &complaint
		out, err := c.Output()
		assert.Equal(t, want, string(out), version)
		assert.Equal(t, want == "", err != nil, version)
		if want == "" {
			assert.Equal(t, "docs/CHANGELOG.md has no section \"## "+version+"\" with anything in it\n", complaint.String())
		}
	}
	workflow, err := os.ReadFile("../../.github/workflows/release.yml")
	require.NoError(t, err)
	assert.Contains(t, string(workflow), `bash .ci/notes "$GITHUB_REF_NAME" >"$RUNNER_TEMP/notes.md"`)
	assert.Contains(t, string(workflow), `--notes-file "$RUNNER_TEMP/notes.md"`)
}

// The forms have what a forge asks of them; it shows none that lacks it.
func TestIssueForms(t *testing.T) {
	files, err := filepath.Glob("../../.github/ISSUE_TEMPLATE/*.yml")
	require.NoError(t, err)
	forms := 0
	for _, f := range files {
		if filepath.Base(f) == "config.yml" {
			continue
		}
		forms++
		src, err := os.ReadFile(f)
		require.NoError(t, err)
		var form struct {
			Name, Description string
			Labels            []string
			Body              []struct {
				Type, ID    string
				Attributes  struct{ Label, Description, Value, Render string }
				Validations struct{ Required bool }
			}
		}
		d := yaml.NewDecoder(strings.NewReader(string(src)))
		d.KnownFields(true)
		require.NoError(t, d.Decode(&form), f)
		assert.NotEmpty(t, form.Name, f)
		assert.NotEmpty(t, form.Description, f)
		ids := map[string]bool{}
		for _, field := range form.Body {
			if field.Type == "markdown" {
				assert.NotEmpty(t, field.Attributes.Value, f)
				continue
			}
			assert.Contains(t, []string{"textarea", "input"}, field.Type, f)
			assert.NotEmpty(t, field.Attributes.Label, f)
			assert.Regexp(t, `^[a-z]+$`, field.ID, f)
			assert.False(t, ids[field.ID], "%s: %s twice", f, field.ID)
			ids[field.ID] = true
		}
		assert.NotEmpty(t, ids, f)
	}
	assert.Equal(t, 3, forms)
}

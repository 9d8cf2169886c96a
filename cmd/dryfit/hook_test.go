package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
)

// standIn is a program that the framework builds in a moment: it runs the dryfit
// that is tested. That the whole program is built so too, .ci/run tries.
const standIn = `package main

import (
	"errors"
	"os"
	"os/exec"
)

func main() {
	c := exec.Command(os.Getenv("DRYFIT_TESTED"), os.Args[1:]...)
	c.Stdout, c.Stderr = os.Stdout, os.Stderr
	var exit *exec.ExitError
	if err := c.Run(); errors.As(err, &exit) {
		os.Exit(exit.ExitCode())
	} else if err != nil {
		panic(err)
	}
}
`

// team is a repository that uses the hook.
type team struct {
	t      *testing.T
	folder string
	env    []string
}

func (r team) run(name string, args ...string) (string, error) {
	c := exec.Command(name, args...)
	c.Dir, c.Env = r.folder, r.env
	out, err := c.CombinedOutput()
	return string(out), err
}

func (r team) must(name string, args ...string) {
	r.t.Helper()
	out, err := r.run(name, args...)
	require.NoError(r.t, err, "%s %s: %s", name, args, out)
}

func (r team) write(name, text string) {
	r.t.Helper()
	path := filepath.Join(r.folder, filepath.FromSlash(name))
	require.NoError(r.t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(r.t, os.WriteFile(path, []byte(text), 0o644))
}

// commit tries to commit all that has changed.
func (r team) commit() (out string, err error) {
	r.must("git", "add", "-A")
	return r.run("git", "commit", "-m", "a change")
}

// hooked is a new repository with the configuration of the docs, whose hook is
// the one of this repository.
func hooked(t *testing.T) team {
	for _, program := range []string{"git", "go", "pre-commit"} {
		outside.Program(t, program)
	}
	work := t.TempDir()
	tested := filepath.Join(work, "dryfit") // by which name the tests' program is dryfit
	self, err := os.Executable()
	require.NoError(t, err)
	require.NoError(t, os.Symlink(self, tested))
	cache, err := exec.Command("go", "env", "GOCACHE").Output()
	require.NoError(t, err)
	env := append(os.Environ(), "HOME="+work, "PRE_COMMIT_HOME="+filepath.Join(work, "framework"), "DRYFIT_TESTED="+tested,
		"GOCACHE="+strings.TrimSpace(string(cache)), "GOFLAGS=-buildvcs=false", "GOPROXY=off", "GOTOOLCHAIN=local", "GOWORK=off", "NO_COLOR=1",
		"GIT_CONFIG_NOSYSTEM=1", "GIT_AUTHOR_NAME=t", "GIT_AUTHOR_EMAIL=t@example.com", "GIT_COMMITTER_NAME=t", "GIT_COMMITTER_EMAIL=t@example.com")

	hooks := team{t, filepath.Join(work, "hooks"), env}
	definition, err := os.ReadFile("../../.pre-commit-hooks.yaml")
	require.NoError(t, err)
	hooks.write(".pre-commit-hooks.yaml", string(definition))
	hooks.write("go.mod", "module dryfit\n\ngo 1.21\n")
	hooks.write("cmd/dryfit/main.go", standIn)
	hooks.must("git", "init", "-q", ".")
	hooks.must("git", "add", ".")
	hooks.must("git", "commit", "-q", "-m", "hooks")
	hooks.must("git", "tag", "v1.0.0")

	r := team{t, filepath.Join(work, "team"), env}
	page, err := os.ReadFile("../../docs/ci.md")
	require.NoError(t, err)
	block := regexp.MustCompile("(?s)```yaml\n(repos:\n.*?)```").FindSubmatch(page)
	require.NotNil(t, block, "the configuration to copy")
	const address = "https://github.com/OWNER/dryfit"
	require.True(t, bytes.Contains(block[1], []byte(address)))
	r.write(".pre-commit-config.yaml", strings.ReplaceAll(string(block[1]), address, hooks.folder))
	r.must("git", "init", "-q", ".")
	r.must("pre-commit", "install")
	return r
}

// The hook, as the framework runs it on a commit.
func TestHookForThePreCommitFramework(t *testing.T) {
	long(t)
	t.Parallel()
	r := hooked(t)
	good, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	sound := string(good) + strings.ReplaceAll(accepted, "DAY", time.Now().AddDate(0, 1, 0).Format(time.DateOnly))
	house := "dryfit = 1\nname = \"House\"\n"

	out, err := r.commit()
	require.NoError(t, err, out)
	assert.Contains(t, out, "no files to check", "nothing for the hook")
	r.write("specs/hall.ceiling.toml", sound)
	r.write("specs/deep/room.ceiling.toml", sound)
	r.write("--output=taken.ceiling.toml", sound)
	r.write("a b;c.ceiling.toml", sound)
	out, err = r.commit()
	require.NoError(t, err, out)
	assert.Contains(t, out, "Passed")
	assert.NoFileExists(t, filepath.Join(r.folder, "taken.ceiling.toml"), "a file name is no option")

	r.write("specs/hall.ceiling.toml", strings.Replace(sound, "\ncover = \"60mm\"", "\ncover = \"40mm\"", 1))
	out, err = r.commit()
	assert.Error(t, err)
	assert.Contains(t, out, "specs/hall.ceiling.toml")
	assert.NotContains(t, out, "room.ceiling.toml", "only what is committed")
	r.must("git", "reset", "-q", "--hard")

	// The standards alone change: all that they rule is checked.
	r.write("specs/dryfit.toml", house)
	out, err = r.commit()
	require.NoError(t, err, out)
	assert.Contains(t, out, "Passed")
	r.write("specs/dryfit.toml", house+"[limit]\n\"bend.lamination.ratio\" = { value = 900, source = \"house rule\" }\n")
	out, err = r.commit()
	assert.Error(t, err)
	assert.Contains(t, out, "specs/hall.ceiling.toml")
	assert.Contains(t, out, "specs/deep/room.ceiling.toml")
	assert.Contains(t, out, "FAIL: 2 files", "and no other")
	r.write("specs/dryfit.toml", house+"[limits]\n")
	out, err = r.commit()
	assert.Error(t, err)
	assert.Contains(t, out, "line 3, column 2")
	r.must("git", "reset", "-q", "--hard")
	r.write("standards.toml", house)
	r.write("not-dryfit.toml", house)
	out, err = r.commit()
	require.NoError(t, err, out)
	assert.Contains(t, out, "no files to check")
}

// accepted answers what is queried of the reading room, so that it passes
// strictly, until DAY.
const accepted = `
[[accept]]
rule = "bend.springback"
reason = "a trial rib comes first"
by = "team"
until = DAY

[[accept]]
rule = "close.cover"
reason = "a wider one comes"
by = "team"
until = DAY

[[accept]]
rule = "raise.hands"
reason = "two more come for the day"
by = "team"
until = DAY

[[accept]]
rule = "rib.sag"
reason = "a jig is made"
by = "team"
until = DAY

[[accept]]
rule = "strap.setting"
reason = "a jig is made"
by = "team"
until = DAY
`

package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the expected outputs of the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"dryfit": main})
}

// Each script is one archive: commands, and the files that they work on and
// compare with.
func TestScripts(t *testing.T) {
	repository, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("testdata/script/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	if testing.Short() { // what reads many specs side by side
		files = []string{"testdata/script/formats.txtar", "testdata/script/study.txtar", "testdata/script/walk.txtar"}
	}
	testscript.Run(t, testscript.Params{
		Files:         files,
		UpdateScripts: *update,
		Cmds:          map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
		Condition: func(c string) (bool, error) {
			switch c {
			case "root":
				return os.Getuid() == 0, nil
			case "git":
				_, err := exec.LookPath("git")
				if err != nil && os.Getenv("DRYFIT_FORBID_SKIPS") != "" {
					return false, errors.New("git is missing, and skips are forbidden")
				}
				return err == nil, nil
			default:
				return false, fmt.Errorf("unknown condition %q", c)
			}
		},
		Setup: func(e *testscript.Env) error {
			e.Setenv("REPOSITORY", repository)
			// The folder of the program alone, for scripts on a machine without git.
			e.Setenv("PROGRAMS", filepath.SplitList(e.Getenv("PATH"))[0])
			return os.CopyFS(filepath.Join(e.WorkDir, "examples"), os.DirFS(filepath.Join(repository, "docs/examples")))
		},
	})
}

// exits runs a command and compares its exit status: exits 2 dryfit check x.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	if neg || err != nil || len(args) < 2 {
		ts.Fatalf("usage: exits STATUS COMMAND [ARG...]")
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		status, ok := err.(interface{ ExitCode() int })
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = status.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

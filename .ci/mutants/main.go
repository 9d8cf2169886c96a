// Mutants measures whether the tests would notice an error: it changes one place
// of the code at a time, runs the tests that could fail, and lists the changes
// that none of them has noticed.
//
//	go run ./.ci/mutants -n 200 -seed 26
//
// A change is one of: an operator for its opposite or its neighbour, a number by a
// tenth or by one, the lesser for the greater, a condition for its negation, a
// statement left out. Places are drawn evenly over the packages' files.
package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// far are the tests, after those of the mutant's own package, that may notice what
// it gives to others: the legs that are decided and followed, and the ceilings of testdata,
// among them.
var far = []string{"./rules/kernel/passage", "./rules/model/sample", "./rules/model/result/...", "./rules/model/layout", "./rules/review"}

// How long the tests of one mutant may take, and those of the code as it stands,
// which are all of them.
const (
	longest = 10 * time.Minute
	whole   = time.Hour
)

func main() {
	n := flag.Int("n", 200, "mutants")
	seed := flag.Uint64("seed", 26, "of the draw")
	only := flag.String("only", "", "mutants by their places, file:line:column, with commas between")
	skip := flag.Int("skip", 0, "mutants to leave out at first, which were tried before")
	list := flag.Bool("list", false, "list the mutants and run nothing")
	flag.Parse()
	roots := flag.Args()
	if len(roots) == 0 {
		roots = []string{"rules/kernel", "rules/family", "rules/model/result"}
	}
	all, err := mutantsOf(roots)
	if err != nil {
		log.Fatal(err)
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	if !*list && run(whole, append([]string{"test", "-short", "-vet=off"}, packages(roots)...)...) != passed {
		log.Fatal("the tests fail of the code as it stands: nothing can be told from them")
	}
	survived, endless, tried := 0, 0, 0
	for _, m := range all[min(*skip, len(all)):] {
		if *only != "" && !slices.Contains(strings.Split(*only, ","), m.place()) {
			continue
		}
		if tried == *n {
			break
		}
		if *list {
			tried++
			fmt.Println(m)
			continue
		}
		end, built := m.tried()
		if !built {
			continue // the change is no program
		}
		tried++
		fmt.Printf("%s: %s\n", end, m)
		switch end {
		case passed:
			survived++
		case outOfTime:
			endless++
		}
	}
	if *list {
		return
	}
	fmt.Printf("%d of %d mutants noticed, %d of them by tests that did not end in %v, of %d places\n", tried-survived, tried, endless, longest, len(all))
}

// packages are those below the roots, and the far ones.
func packages(roots []string) []string {
	out := slices.Clone(far)
	for _, root := range roots {
		out = append(out, "./"+root+"/...")
	}
	return out
}

// outcome is how the tests of a mutant end.
type outcome string

const (
	passed    outcome = "survived"
	failed    outcome = "noticed"
	outOfTime outcome = "out of time"
)

// tried is how the tests of the mutant end; built is whether it compiles.
func (m mutant) tried() (end outcome, built bool) {
	dir, err := os.MkdirTemp("", "mutant")
	if err != nil {
		log.Fatal(err)
	}
	defer os.RemoveAll(dir)
	overlay, err := m.overlay(dir)
	if err != nil {
		log.Fatal(err)
	}
	own := "./" + filepath.ToSlash(filepath.Dir(m.file))
	if run(longest, "build", "-overlay", overlay, own) != passed {
		return failed, false
	}
	if end := run(longest, "test", "-overlay", overlay, "-short", "-vet=off", "-failfast", own); end != passed {
		return end, true
	}
	return run(longest, append([]string{"test", "-overlay", overlay, "-short", "-vet=off", "-failfast"}, far...)...), true
}

// overlay writes the changed file, and the list that puts it in the place of the
// true one.
func (m mutant) overlay(dir string) (string, error) {
	src, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(dir, "changed.go")
	text := string(src[:m.from]) + m.to + string(src[m.end:])
	if err := os.WriteFile(changed, []byte(text), 0o600); err != nil {
		return "", err
	}
	abs, err := filepath.Abs(m.file)
	if err != nil {
		return "", err
	}
	said, err := json.Marshal(map[string]any{"Replace": map[string]string{abs: changed}})
	if err != nil {
		return "", err
	}
	name := filepath.Join(dir, "overlay.json")
	return name, os.WriteFile(name, said, 0o600)
}

func run(most time.Duration, args ...string) outcome {
	ctx, stop := context.WithTimeout(context.Background(), most)
	defer stop()
	switch err := exec.CommandContext(ctx, "go", args...).Run(); {
	case err == nil:
		return passed
	case ctx.Err() != nil:
		return outOfTime
	default:
		return failed
	}
}

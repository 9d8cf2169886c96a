package passage_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"testing"
	"time"

	"dryfit/rules/kernel/passage"
)

func scan(t *testing.T, n int, cells int, decide func(r *rand.Rand, p pair, budget *passage.Budget) (passage.Decision, string)) {
	if os.Getenv("SCAN") == "" {
		t.Skip()
	}
	r := rand.New(rand.NewPCG(25, 1))
	count := map[string]int{}
	var spent time.Duration
	for i := range n {
		p := panel(r)
		budget := &passage.Budget{Cells: cells}
		at := time.Now()
		d, what := decide(r, p, budget)
		took := time.Since(at)
		spent += took
		key := fmt.Sprint(d.Outcome, " ", d.Bound, " way ", d.Motion.Way, " tilted ", d.Motion.Tilted)
		if d.Outcome != passage.Passes {
			key = fmt.Sprint(d.Outcome, " ", d.Bound)
		}
		count[key]++
		if os.Getenv("SCAN") != "q" && d.Outcome == passage.Undecided || took > 100*time.Millisecond {
			fmt.Printf("%d %s split %v span %.2f rise %.2f thick %.3f len %.2f %s: %v %v margin %.3f way %d %v cells %d\n", i, p.profile, p.split, p.span, p.rise, p.thick, p.body.Length(), what, d.Outcome, d.Bound, d.Motion.Margin, d.Motion.Way, took, cells-budget.Cells)
		}
	}
	fmt.Println(spent)
	for k, n := range count {
		fmt.Println(n, k)
	}
}

func TestScanCorner(t *testing.T) {
	scan(t, 300, 20000, func(r *rand.Rand, p pair, b *passage.Budget) (passage.Decision, string) {
		c := corner(r)
		return p.body.Around(c, b), fmt.Sprintf("%+v", c)
	})
}

func TestScanDoor(t *testing.T) {
	scan(t, 1000, 20000, func(r *rand.Rand, p pair, b *passage.Budget) (passage.Decision, string) {
		c := door(r)
		return p.body.Through(c, b), fmt.Sprintf("%+v", c)
	})
}

func TestScanHatch(t *testing.T) {
	scan(t, 1000, 20000, func(r *rand.Rand, p pair, b *passage.Budget) (passage.Decision, string) {
		c := hatch(r)
		return p.body.Through(c, b), fmt.Sprintf("%+v", c)
	})
}

package passage_test

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/stair"
)

// pairsOfAKind is how many random pairs of each kind are decided, and every one
// that passes replayed. The shares that may be left are promised of 1,000, which
// PASSAGE_PAIRS=1000 runs.
func pairsOfAKind(t *testing.T) int {
	if testing.Short() {
		return 4 // under the race detector: what is decided is not what it looks for
	}
	if s := os.Getenv("PASSAGE_PAIRS"); s != "" {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	return 40
}

// plainBudget is the cells that a spec has, and plainLooks the looks.
const (
	plainBudget = 20000
	plainLooks  = 650000
	freeLooks   = 120000 // of them for a motion on which the body turns as need be
)

// kind is one kind of leg: a random one, decided, and the walls it is made of.
type kind struct {
	name   string
	most   float64 // share that may be left undecided
	chance int     // how many more may be of fewer than 1000 pairs
	random func(r *rand.Rand, b *passage.Body) (decide func(*passage.Budget) passage.Decision, walls func(space.Vec) float64)
}

var kinds = []kind{
	{"door", 0.005, 1, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		d := anyDoor(r)
		return func(left *passage.Budget) passage.Decision { return opening.Through(b, d, left) }, doorWalls(d)
	}},
	{"hatch", 0.05, 1, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		d := anyHatch(r)
		return func(left *passage.Budget) passage.Decision { return opening.Through(b, d, left) }, doorWalls(d)
	}},
	{"corridor", 0.01, 1, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		c := anyCorridor(r)
		return func(left *passage.Budget) passage.Decision { return opening.Along(b, c, left) }, doorWalls(opening.Door{Width: c.Width, Height: c.Height, Wall: c.Length, Floor: true})
	}},
	{"vehicle", 0.03, 2, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		c := anyVehicle(r)
		return func(left *passage.Budget) passage.Decision { return car.Into(b, c, left) }, carWalls(c)
	}},
	{"elevator", 0.04, 1, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		c := anyElevator(r)
		return func(left *passage.Budget) passage.Decision { return car.Into(b, c, left) }, carWalls(c)
	}},
	{"corner", 0.02, 1, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		c := anyCorner(r)
		return func(left *passage.Budget) passage.Decision { return corner.Around(b, c, left) }, cornerWalls(c)
	}},
	{"stair", 0.10, 3, func(r *rand.Rand, b *passage.Body) (func(*passage.Budget) passage.Decision, func(space.Vec) float64) {
		s := anyStair(r)
		return func(left *passage.Budget) passage.Decision {
			d := stair.Climb(b, s, left)
			if d.Outcome != passage.Undecided {
				return d
			}
			share := &passage.Budget{Looks: min(left.Looks, freeLooks)}
			left.Looks -= share.Looks
			m, found := stair.ClimbFreely(b, s, share)
			if left.Looks += share.Looks; found {
				return passage.Decision{Outcome: passage.Passes, Motion: m}
			}
			if proven, _ := stair.Apart(b, s, left); proven {
				return passage.Decision{Outcome: passage.Cannot, Bound: passage.StairApart}
			}
			return d
		}, stairWalls(s)
	}},
}

// replayed is how near a replay's clearance must come to the one promised: poses
// are joined straight where the true way is an arc.
const replayed = 2e-4

// TestDecided decides random realistic panels and legs. What passes is followed
// by its points, in small steps against the walls; no more may be left undecided
// than is promised.
func TestDecided(t *testing.T) {
	for i, k := range kinds {
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			n := pairsOfAKind(t)
			r := rand.New(rand.NewPCG(25, uint64(i)))
			left, count := 0, map[passage.Outcome]int{}
			for j := range n {
				p := panel(r)
				decide, walls := k.random(r, p.body)
				d := decide(&passage.Budget{Cells: plainBudget, Looks: plainLooks})
				count[d.Outcome]++
				switch d.Outcome {
				case passage.Passes:
					r := rand.New(rand.NewPCG(26, uint64(j))) // so that the pairs are the same whatever passes
					follow(t, r, j, p, d.Motion, walls)
					for _, m := range d.Others {
						follow(t, r, j, p, m, walls)
					}
				case passage.Cannot:
					assert.NotZero(t, d.Bound, "%d", j)
				default:
					left++
				}
			}
			t.Logf("%v of %d", count, n)
			most := int(math.Ceil(k.most * float64(n)))
			if n < 1000 {
				most += k.chance
			}
			assert.LessOrEqual(t, left, most)
		})
	}
}

func follow(t *testing.T, r *rand.Rand, j int, p pair, m passage.Motion, walls func(space.Vec) float64) {
	poses := m.Poses()
	if !assert.NotEmpty(t, poses, "%d", j) {
		return
	}
	w := replay{points(r, p.body, 400), walls}
	least := w.least(poses, 0.03)
	margin := m.Margin
	if m.Way == passage.Threaded3 {
		// Of the faces of a wall it is kept up to 20 mm.
		margin = min(margin, 0.02)
	}
	assert.GreaterOrEqual(t, least, p.body.Wrap()+margin-replayed, "pair %d: %s split %v way %d margin %v", j, p.profile, p.split, m.Way, m.Margin)
}

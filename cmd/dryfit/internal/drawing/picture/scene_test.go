package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// solid is a flat four-cornered part of the ceiling, for a caster of rays that
// knows nothing of the order of painting.
type solid struct {
	corners [4]space
	tone    paper.Tone
}

// solids are all faces of the ceiling, seen or not.
func solids(c *layout.Ceiling, steps int) []solid {
	s := &scene{c: c}
	var out []solid
	add := func(tone paper.Tone, corners ...space) { out = append(out, solid{[4]space(corners), tone}) }
	depth := c.Skin.Setback.Get()
	for i := range c.Grid.Along.Get() {
		x0, x1 := c.RibAt(i)+c.Rib.Width.Get()/2, c.RibAt(i+1)-c.Rib.Width.Get()/2
		for j := range c.Grid.Around.Get() + 1 {
			a := float64(j) * c.Grid.ModuleAround.Get()
			r0, r1 := max(0, a-c.Rail.Width.Get()/2), min(c.Vault.Arc.Get(), a+c.Rail.Width.Get()/2)
			add(memberTone, s.at(x0, r0, 0), s.at(x1, r0, 0), s.at(x1, r1, 0), s.at(x0, r1, 0))
			for _, side := range []float64{r0, r1} {
				add(railTone, s.at(x0, side, 0), s.at(x1, side, 0), s.at(x1, side, depth), s.at(x0, side, depth))
			}
			if j == c.Grid.Around.Get() {
				continue
			}
			from, to := a+c.Rail.Width.Get()/2, a+c.Grid.ModuleAround.Get()-c.Rail.Width.Get()/2
			for k := range steps {
				s0, s1 := from+(to-from)*float64(k)/float64(steps), from+(to-from)*float64(k+1)/float64(steps)
				add(backTone, s.at(x0, s0, depth), s.at(x1, s0, depth), s.at(x1, s1, depth), s.at(x0, s1, depth))
				for _, x := range []float64{x0, x1} {
					add(ribTone, s.at(x, s0, 0), s.at(x, s1, 0), s.at(x, s1, depth), s.at(x, s0, depth))
				}
			}
		}
	}
	n := steps * c.Grid.Around.Get()
	for i := range c.Grid.Along.Get() + 1 {
		x0, x1 := c.RibAt(i)-c.Rib.Width.Get()/2, c.RibAt(i)+c.Rib.Width.Get()/2
		for k := range n {
			s0, s1 := c.Vault.Arc.Get()*float64(k)/float64(n), c.Vault.Arc.Get()*float64(k+1)/float64(n)
			add(memberTone, s.at(x0, s0, 0), s.at(x1, s0, 0), s.at(x1, s1, 0), s.at(x0, s1, 0))
		}
	}
	return out
}

// hit is the distance along a ray at which it meets a triangle, by Möller and
// Trumbore (1997); +Inf if it does not.
func hit(from, way, a, b, c space) float64 {
	minus := func(p, q space) space { return space{p.x - q.x, p.y - q.y, p.z - q.z} }
	cross := func(p, q space) space { return space{p.y*q.z - p.z*q.y, p.z*q.x - p.x*q.z, p.x*q.y - p.y*q.x} }
	dot := func(p, q space) float64 { return p.x*q.x + p.y*q.y + p.z*q.z }
	e1, e2 := minus(b, a), minus(c, a)
	h := cross(way, e2)
	d := dot(e1, h)
	if math.Abs(d) < 1e-14 {
		return math.Inf(1)
	}
	s := minus(from, a)
	u := dot(s, h) / d
	q := cross(s, e1)
	v := dot(way, q) / d
	if t := dot(e2, q) / d; u >= 0 && v >= 0 && u+v <= 1 && t > 1e-9 {
		return t
	}
	return math.Inf(1)
}

// toWall is the distance along a ray at which it leaves the room through an end
// wall, or a side wall below the springing.
func toWall(c *layout.Ceiling, from, way space) float64 {
	best := math.Inf(1)
	for _, x := range []float64{0, c.BuiltLength()} {
		if t := (x - from.x) / way.x; t > 0 {
			best = min(best, t)
		}
	}
	for _, y := range []float64{0, c.Vault.Span.Get()} {
		if t := (y - from.y) / way.y; t > 0 && from.z+t*way.z < 0 {
			best = min(best, t)
		}
	}
	return best
}

// cast is the tone of what a ray through a point of the picture meets first;
// Clear for the room.
func cast(c *layout.Ceiling, list []solid, eye camera, p flat) paper.Tone {
	way := space{1, p.x, p.y}
	switch {
	case eye.below: // from far under the floor, straight up
		eye.eye, way = space{p.x, -p.y, -50}, space{0, 0, 1}
	case eye.turns:
		way = space{-p.x, 1, p.y}
	}
	best, tone := math.Inf(1), paper.Clear
	for _, f := range list {
		for _, t := range []float64{hit(eye.eye, way, f.corners[0], f.corners[1], f.corners[2]), hit(eye.eye, way, f.corners[0], f.corners[2], f.corners[3])} {
			if t < best {
				best, tone = t, f.tone
			}
		}
	}
	if !eye.below && (best < nearest*1.2 || toWall(c, eye.eye, way) < best+1e-9) {
		return paper.Clear // cut off in the picture
	}
	return tone
}

// painted is the tone of the last face over a point of the picture; that of the member
// where a groove is in it.
func painted(s *scene, p flat) paper.Tone {
	tone := paper.Clear
	for _, f := range s.faces {
		if f.tone != paper.Clear && f.tone != grooveTone && inside(f.corners, p) {
			tone = f.tone
		}
	}
	return tone
}

func inside(f []flat, p flat) bool {
	in := false
	for i, a := range f {
		b := f[(i+1)%len(f)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

// What is painted is what rays meet first, for every profile, from both entries and
// from below, wherever a ray meets the ceiling and does not graze an edge.
func TestNearerHidesFarther(t *testing.T) {
	for profile, change := range sample.Profiles() {
		for _, from := range []string{"end", "side", "below"} {
			for _, around := range []int64{1, 5} {
				t.Run(fmt.Sprintf("%s/%s/%d", profile, from, around), func(t *testing.T) {
					entry := from
					if from == "below" {
						entry = "end"
					}
					c := room(t, change, map[string]any{"room.entry": entry, "grid.around": around})
					eye, w := entryCamera(c), window()
					if from == "below" {
						eye, w = camera{below: true}, [4]flat{{0, -c.Vault.Span.Get()}, {c.BuiltLength(), 0}, {c.BuiltLength(), 0}}
					}
					s := newScene(c, eye)
					list := solids(c, s.steps)
					random := rand.New(rand.NewPCG(1, 1))
					checked := 0
					for range 1500 {
						p := flat{w[0].x + random.Float64()*(w[2].x-w[0].x), w[0].y + random.Float64()*(w[2].y-w[0].y)}
						want := cast(c, list, eye, p)
						steady := want != paper.Clear
						const near = 1e-3
						for _, d := range []flat{{near, 0}, {-near, 0}, {0, near}, {0, -near}} {
							steady = steady && cast(c, list, eye, flat{p.x + d.x, p.y + d.y}) == want
						}
						if steady {
							checked++
							assert.Equal(t, want, painted(s, p), "at %.4f %.4f", p.x, p.y)
						}
					}
					assert.Greater(t, checked, 100)
				})
			}
		}
	}
}

func BenchmarkView(b *testing.B) {
	c := room(b, map[string]any{"grid.around": int64(20), "grid.along": int64(20), "panels.along": int64(20)})
	b.ReportAllocs()
	for b.Loop() {
		View(c, paper.Point{}, paper.Point{X: 300, Y: 190})
	}
}

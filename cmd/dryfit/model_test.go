package main

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/calculix"
	"dryfit/rules/model/sample"
)

// printedFrame is a frame of the JSON, as another program reads it.
type printedFrame struct {
	Key      string
	Section  printedSection
	Nodes    []frame.Vector
	Members  []printedMember
	Supports []struct {
		Node  int
		Holds string
	}
	Springs []struct {
		Node      int
		Toward    frame.Vector
		Stiffness float64
		Works     string
	}
	Weight struct{ Nodes, Members []printedLoad } `json:"self_weight"`
	Cases  []printedCase
}

type printedSection struct {
	E, G, A, I float64
	Shear      float64 `json:"shear_area"`
}

type printedMember struct {
	From, To  int
	HingeFrom bool `json:"hinge_from"`
	HingeTo   bool `json:"hinge_to"`
}

type printedLoad struct {
	Node, Member int
	X, Y, Couple float64
}

type printedCase struct {
	Key     string
	Springs []struct {
		Spring        int
		Longer, Force float64
		Slack         bool
	}
	Supports []float64
	Moves    []frame.Vector
}

func printedFrames(t *testing.T, name string) []printedFrame {
	t.Helper()
	var sheet struct {
		Model struct{ Frames []printedFrame }
	}
	out, status := writtenJSON(t, "calcs", "--format", "json", sample.Path(name, ".ceiling.toml"))
	require.Zero(t, status)
	require.NoError(t, json.Unmarshal(out, &sheet))
	require.NotEmpty(t, sheet.Model.Frames, name)
	return sheet.Model.Frames
}

// weight is the sum of the loads, and their moment about the origin, clockwise.
func (f *printedFrame) weight() (sum, moment float64) {
	for _, l := range f.Weight.Nodes {
		sum -= l.Y
		moment -= l.Y*f.Nodes[l.Node-1].X + l.Couple
	}
	for _, l := range f.Weight.Members {
		m := f.Members[l.Member-1]
		a, b := f.Nodes[m.From-1], f.Nodes[m.To-1]
		w := -l.Y * math.Hypot(b.X-a.X, b.Y-a.Y)
		sum, moment = sum+w, moment+w*(a.X+b.X)/2
	}
	return sum, moment
}

// The model is whole: in every case springs and supports balance the loads that it
// states, and their moment.
func TestModelOfTheFrameIsInBalance(t *testing.T) {
	for _, name := range []string{"reading-room", "orangery", "alcove"} {
		for _, f := range printedFrames(t, name) {
			require.NotEmpty(t, f.Cases)
			for _, c := range f.Cases {
				held, turned := 0.0, 0.0
				for _, s := range c.Springs {
					at, up := f.Springs[s.Spring-1], s.Force*f.Springs[s.Spring-1].Toward.Y
					held, turned = held+up, turned+up*f.Nodes[at.Node-1].X
				}
				for i, s := range f.Supports {
					turned -= c.Supports[i] * f.Nodes[s.Node-1].Y
				}
				weight, moment := f.weight()
				assert.InEpsilon(t, weight, held, 1e-6, "%s %s", name, c.Key)
				assert.InEpsilon(t, moment, turned, 1e-6, "%s %s", name, c.Key)
				assert.Len(t, c.Moves, len(f.Nodes))
			}
		}
	}
}

// An outside program that reads the printed model finds what is printed: forces of
// straps and of supports within 0.5 % of the greatest of them, movements likewise.
func TestModelOfTheFrameAgainstCalculiX(t *testing.T) {
	long(t)
	ccx := outside.Program(t, "ccx")
	for _, name := range []string{
		"alcove", "chapel", "concourse", "gallery-soffit", "music-room",
		"orangery", "pool-hall", "reading-room", "study", "vaulted-passage",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			for _, f := range printedFrames(t, name) {
				f.compare(t, ccx)
			}
		})
	}
}

// compare solves the frame as first hung, or with its feet held.
func (f *printedFrame) compare(t *testing.T, ccx string) {
	c := &f.Cases[0]
	for i := range f.Cases {
		switch f.Cases[i].Key {
		case "first-hung", "first-hung-alone", "feet-blocked":
			c = &f.Cases[i]
		}
	}
	there, err := f.deck(c).Solve(ccx, t.TempDir())
	require.NoError(t, err)
	var forces, moved, outside []float64
	for _, s := range c.Springs {
		forces, outside = append(forces, s.Force), append(outside, there.Forces[s.Spring-1])
	}
	forces, outside = append(forces, c.Supports...), append(outside, there.Supports...)
	for _, u := range c.Moves {
		moved = append(moved, u.X, u.Y)
	}
	calculix.Alike(t, f.Key+" "+c.Key+": force", forces, outside)
	calculix.Alike(t, f.Key+" "+c.Key+": movement", moved, there.Moved)
}

// deck writes the printed frame as input of CalculiX: the section as the rectangle
// of the same A and I, and G so that G·A is what the printed one has in shear.
func (f *printedFrame) deck(c *printedCase) calculix.Deck {
	s := f.Section
	depth := math.Sqrt(12 * s.I / s.A)
	d := calculix.Deck{E: s.E, G: s.G * s.Shear / s.A, Depth: depth, Breadth: s.A / depth, Parts: 4}
	d.Model.Nodes = f.Nodes
	for _, m := range f.Members {
		d.Model.Elements = append(d.Model.Elements, frame.Element{I: m.From - 1, J: m.To - 1, FreeI: m.HingeFrom, FreeJ: m.HingeTo})
	}
	for _, s := range f.Supports {
		way := map[string]frame.Direction{"x": frame.AlongX, "y": frame.AlongY, "turn": frame.Turning}[s.Holds]
		d.Model.Supports = append(d.Model.Supports, frame.Support{Node: s.Node - 1, Direction: way})
	}
	for i, s := range f.Springs {
		sense := map[string]frame.Sense{"both": frame.BothWays, "tension": frame.TensionOnly, "compression": frame.CompressionOnly}[s.Works]
		d.Model.Springs = append(d.Model.Springs, frame.Spring{Node: s.Node - 1, Toward: s.Toward, Stiffness: s.Stiffness, Sense: sense})
		d.Case.Without = append(d.Case.Without, i)
	}
	for _, s := range c.Springs {
		d.Case.Without = slices.DeleteFunc(d.Case.Without, func(i int) bool { return i == s.Spring-1 })
	}
	for _, l := range f.Weight.Nodes {
		d.Case.Loads = append(d.Case.Loads, frame.NodalLoad{Node: l.Node - 1, X: l.X, Y: l.Y, Couple: l.Couple})
	}
	for _, l := range f.Weight.Members {
		d.Case.Spread = append(d.Case.Spread, frame.SpreadLoad{Element: l.Member - 1, X: l.X, Y: l.Y, Per: frame.PerLength})
	}
	return d
}

package dxf_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/cmd/dryfit/internal/drawing/dxf"
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// pair is a code and its value.
type pair struct {
	code  int
	value string
}

// entity is what a file has between two codes 0.
type entity []pair

func (e entity) text(code int) string {
	for _, p := range e {
		if p.code == code {
			return p.value
		}
	}
	return ""
}

func (e entity) number(t require.TestingT, code int) float64 {
	x, err := strconv.ParseFloat(e.text(code), 64)
	require.NoError(t, err)
	return x
}

// read is a reader of its own: the entities of a file in turn.
func read(t require.TestingT, file []byte) (out []entity) {
	for _, b := range file {
		require.True(t, b < 0x7f && (b >= ' ' || b == '\r' || b == '\n'), "byte %x", b)
	}
	lines := strings.Split(strings.TrimSuffix(string(file), "\r\n"), "\r\n")
	require.Zero(t, len(lines)%2)
	within := false
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		require.NoError(t, err)
		p := pair{code, lines[i+1]}
		switch {
		case p == (pair{2, "ENTITIES"}):
			within = true
		case p == (pair{0, "ENDSEC"}):
			within = false
		case within && code == 0:
			out = append(out, entity{p})
		case within:
			out[len(out)-1] = append(out[len(out)-1], p)
		}
	}
	require.Equal(t, []string{"  0", "EOF"}, lines[len(lines)-2:])
	return out
}

func written(t require.TestingT, d dxf.Drawing) []entity {
	var b bytes.Buffer
	require.NoError(t, dxf.Write(&b, d))
	return read(t, b.Bytes())
}

var plain = paper.Stroke{Pen: paper.Fine}

// What is written is what was drawn: upward from the origin, in the file's unit.
func TestWhatIsRead(t *testing.T) {
	half := math.Tan(math.Pi / 4)
	out := written(t, dxf.Drawing{
		Origin: paper.Point{X: 10, Y: 100}, Unit: 25.4,
		Items: []paper.Item{
			paper.Group{ID: "CUT", Items: []paper.Item{paper.Path{
				From: paper.Point{X: 10, Y: 100}, Closed: true,
				Steps: []paper.Step{{To: paper.Point{X: 264, Y: 100}}, {To: paper.Point{X: 10, Y: 100}, Bulge: half}},
			}}},
			paper.Group{ID: "BORE", Items: []paper.Item{paper.Arc{C: paper.Point{X: 35.4, Y: 49.2}, R: 2.54, To: 2 * math.Pi, Stroke: plain}}},
			paper.Group{ID: "REVEAL", Items: []paper.Item{
				// From the right over the top to the left.
				paper.Path{From: paper.Point{X: 35.4, Y: 100}, Steps: []paper.Step{{To: paper.Point{X: -15.4, Y: 100}, Bulge: half}}},
				paper.Path{From: paper.Point{X: 10, Y: 100}, Steps: []paper.Step{{To: paper.Point{X: 10, Y: 74.6}}}},
			}},
			paper.Group{ID: "TEXT", Items: []paper.Item{paper.Text{At: paper.Point{X: 10, Y: 74.6}, Height: 2.54, Turn: 30, Anchor: paper.End, Text: "rib-1"}}},
		},
	})
	var kinds []string
	for _, e := range out {
		kinds = append(kinds, e.text(0)+" "+e.text(8))
	}
	require.Equal(t, []string{"POLYLINE CUT", "VERTEX CUT", "VERTEX CUT", "SEQEND CUT", "CIRCLE BORE", "ARC REVEAL", "LINE REVEAL", "TEXT TEXT"}, kinds)
	at := func(e entity, code int, want float64) {
		t.Helper()
		assert.InDelta(t, want, e.number(t, code), 1e-6, "%v", e)
	}
	at(out[0], 70, 1)
	at(out[1], 10, 0)
	assert.Empty(t, out[1].text(42))
	at(out[2], 10, 10)
	at(out[2], 42, 1)
	at(out[4], 10, 1)
	at(out[4], 20, 2)
	at(out[4], 40, 0.1)
	at(out[5], 40, 1)
	at(out[5], 50, 0)
	at(out[5], 51, 180)
	at(out[6], 21, 1)
	at(out[7], 40, 0.1)
	at(out[7], 50, 30)
	assert.Equal(t, "2", out[7].text(72))
}

// A text can't end its line, nor name an entity of its own.
func TestHostileTexts(t *testing.T) {
	for text, want := range map[string]string{
		"a\r\n  0\r\nLINE": "a    0  LINE", "Café": `Caf\U+00E9`, `\U+000A`: `\U+005CU+000A`, "^J": "^ J", "%%d": "% %d", "𝄞": "?",
		"\u2028x\u202ey": "x y", "": "", " \n ": "", strings.Repeat("é", 100): strings.Repeat(`\U+00E9`, 36),
	} {
		assert.Equal(t, want, dxf.Plain(text))
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(-1, 300, -1).Draw(t, "text")
		out := written(t, dxf.Drawing{Unit: 1, Items: []paper.Item{
			paper.Group{ID: "TEXT", Items: []paper.Item{paper.Text{Height: 3, Text: text}}}, paper.Line{A: paper.Point{}, B: paper.Point{X: 1}},
		}})
		if dxf.Plain(text) == "" {
			require.Len(t, out, 1)
			return
		}
		require.Len(t, out, 2)
		assert.Equal(t, "TEXT", out[0].text(0))
		assert.LessOrEqual(t, len(out[0].text(1)), 255)
	})
}

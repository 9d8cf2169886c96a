package beginning

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/curve"
)

// On a terminal what is missing is asked for, again until it is a length, and
// what is said is not asked for.
func TestAsksForWhatIsMissing(t *testing.T) {
	f := Flags{Profile: "segmental", Rise: "600mm"}
	var said bytes.Buffer
	f.ask(context.Background(), strings.NewReader("3\n 3m \n\n6m\n"), &said)
	assert.Equal(t, "3m", f.Span)
	assert.Equal(t, "6m", f.Length)
	assert.Empty(t, f.missing())
	assert.Equal(t, 2, strings.Count(said.String(), "Span, springing to springing"), said.String())
	assert.Equal(t, 2, strings.Count(said.String(), "Length, over all panels"), said.String())
	assert.NotContains(t, said.String(), "Rise")
	assert.Contains(t, said.String(), `write "2700mm"`)

	f = Flags{Profile: "flat"}
	f.ask(context.Background(), strings.NewReader("\n3m\n"), &said)
	assert.Equal(t, []string{"--length"}, f.missing(), "the end of the input leaves it missing")
}

// From the room to the curve to the grid: what can't be is said and asked again, and
// each answer shows its section in two lines.
func TestAsksFromTheRoomToTheGrid(t *testing.T) {
	f := Flags{Profile: "segmental"}
	var said bytes.Buffer
	f.ask(context.Background(), strings.NewReader("4m\n0.3m,5m,2.7m\n4m,5m,2.7m\nround\nelliptical\n300mm\n1m\nx\n200\n5\n\n"), &said)
	assert.Equal(t, []any{"4m,5m,2.7m", "elliptical", "1m", 5, 0}, []any{f.Room, f.Profile, f.Rise, f.Around, f.Along})
	assert.Empty(t, f.missing())
	for _, want := range []string{
		`"4m" is not width,length,height`, "the room is too small for any vault", `"round" is not one of these`,
		"no draft passes: bend.lamination", `"x" is not a count`, "200 modules around", "5 by ", "rise 1000mm", "flat, span 39",
	} {
		assert.Contains(t, said.String(), want)
	}
	assert.Equal(t, 4, strings.Count(said.String(), "; panels of "), said.String())

	f = Flags{Profile: "segmental"}
	f.ask(context.Background(), strings.NewReader("4m,5m,2.7m\n"), &said)
	assert.Equal(t, "4m,5m,2.7m", f.Room, "the end of the input leaves what was answered")
}

// A segmental vault of a span of four rises, by hand: 7 dots up, 28 across; the crown
// is in the upper line, the feet in the lower one.
func TestSketchIsTrueToScale(t *testing.T) {
	var line []curve.Point
	for i := range 101 {
		y := 4 * float64(i) / 100
		z := 1 - (y-2)*(y-2)/4 // a parabola
		line = append(line, curve.Point{Y: y, Z: z})
	}
	got := drawn(line, 4, 1, [2]string{"a", "b"})
	assert.Equal(t, 15, len([]rune(strings.TrimSuffix(got[0], "  a"))))
	assert.Equal(t, '⡀', []rune(got[1])[0]&^0x3f|0x2800, "the left foot is the lowest dot")
	assert.NotEqual(t, '\u2800', []rune(got[0])[7])
	assert.Equal(t, '\u2800', []rune(got[0])[0])
}

package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// words are texts with long words, marks and what the font lacks.
var words = rapid.StringOfN(rapid.RuneFrom([]rune("iW é\u0301ℵ漢 ")), 0, 200, -1)

func TestWrapKeepsTheTextWithinTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := words.Draw(t, "text")
		width := rapid.Float64Range(0.1, 60).Draw(t, "width")
		lines := Wrap(text, width, 2.5)
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.Join(strings.Fields(text), ""); got != want {
			t.Fatalf("%q became %q", want, got)
		}
		for _, l := range lines {
			letters := strings.TrimRight(l, "\u0301")
			if TextWidth(l, 2.5) > width+1e-9 && len([]rune(letters)) > 1 && !strings.HasSuffix(l, "\u0301") {
				t.Fatalf("%q is %vmm wide; the width is %vmm", l, TextWidth(l, 2.5), width)
			}
			if strings.HasPrefix(l, "\u0301") && !strings.Contains(" "+text, " \u0301") {
				t.Fatalf("%q begins with a mark that belongs to the letter before it", l)
			}
		}
	})
}

func TestCut(t *testing.T) {
	assert.Equal(t, "short", Cut("short", 50, 2.5))
	rapid.Check(t, func(t *rapid.T) {
		text := words.Draw(t, "text")
		width := rapid.Float64Range(8, 60).Draw(t, "width")
		got := Cut(text, width, 2.5)
		cut := strings.TrimSuffix(got, "…")
		if !strings.HasPrefix(text, cut) || got != text && TextWidth(strings.TrimRight(cut, "\u0301")+"…", 2.5) > width+1e-9 && len(cut) > 4 {
			t.Fatalf("%q became %q", text, got)
		}
		if TextWidth(text, 2.5) <= width && got != text {
			t.Fatalf("%q fits and became %q", text, got)
		}
	})
}

// A word of 100,000 letters is measured once: its time grows with its length,
// where it grew with the square.
func BenchmarkWrapLongWord(b *testing.B) {
	text := strings.Repeat("W", 100_000)
	for b.Loop() {
		Wrap(text, 60, 2.5)
	}
}

func BenchmarkCutLongWord(b *testing.B) {
	text := strings.Repeat("W", 100_000)
	for b.Loop() {
		Cut(text, 60, 2.5)
	}
}

package submittal

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// A page has room for 252mm, of which a caption takes 9mm: after 168mm there is room for
// 66mm and no more. A figure that follows another is not moved before it, and a lying
// one is not moved.
func TestSmallFiguresShareAPage(t *testing.T) {
	figure := func(name string, wide, high float64, after string) paper.Sheet {
		return paper.Sheet{Name: name, Width: wide, Height: high, After: after}
	}
	list := []paper.Sheet{
		figure("section", 182, 168, ""), figure("plan", 250, 60, ""), figure("panel", 182, 242, ""),
		figure("panel-2", 182, 66, ""), figure("raising", 182, 240, ""), figure("raising-2", 182, 50, "raising"),
	}
	names := func() (out []string) {
		for _, d := range packed(list) {
			out = append(out, d.Name)
		}
		return out
	}
	assert.Equal(t, []string{"section", "panel-2", "plan", "panel", "raising", "raising-2"}, names())
	list[3].Height = 67
	assert.Equal(t, []string{"section", "plan", "panel", "panel-2", "raising", "raising-2"}, names())
}

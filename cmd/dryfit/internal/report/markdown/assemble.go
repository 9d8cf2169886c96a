package markdown

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
)

func (p Piece) form(n int) string { return p.Forms[min(n, len(p.Forms)-1)] }

// heads is the length of the headings that the piece is the first under, but for
// those that are opened already.
func (p Piece) heads(opened map[*Heading]bool) (n int) {
	for _, h := range p.Under {
		if !h.open && !opened[h] {
			n += len(h.Text)
			if opened != nil {
				opened[h] = true
			}
		}
	}
	return n
}

// assembled is what has room, each heading once above what is under it.
func assembled(pieces []Piece, form []int) string {
	var b strings.Builder
	for i, p := range pieces {
		if form[i] == none {
			continue
		}
		for _, h := range p.Under {
			if h.open {
				b.WriteString(h.Text)
				h.open = false
			}
		}
		b.WriteString(p.form(form[i]))
	}
	return b.String()
}

// LeftOut says what had no room; "" where all had.
func LeftOut(left map[string]int) string {
	var parts []string
	for _, what := range []string{"hold", "query", "loosening", "file", "note", "part"} {
		if n := left[what]; n > 0 {
			parts = append(parts, counted(n, what))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("Left out for lack of space in a comment: %s.", strings.Join(parts, ", "))
}

func counted(n int, what string) string {
	if what == "query" && n != 1 {
		return fmt.Sprintf("%d queries", n)
	}
	return show.Plural(n, what)
}

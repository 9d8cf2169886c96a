package console

import (
	"fmt"
	"io"
	"time"
)

// Progress tells a person at a terminal how far a long work is. Elsewhere it
// only says that the work was cut short, and what a table has no room for.
type Progress struct {
	out        io.Writer
	what       string // "options"
	Shown      bool
	total      int
	count      int
	began      time.Time
	told       time.Time
	wroteLines bool
}

// tellEvery is how often the line is written again.
const tellEvery = 250 * time.Millisecond

// NewProgress is of a work on so many things; it shows itself where out is a terminal.
func NewProgress(out io.Writer, total int, what string) *Progress {
	return &Progress{out: out, what: what, Shown: Terminal(out), total: total}
}

// Begin starts the clock.
func (p *Progress) Begin() { p.began, p.told = time.Now(), time.Now() }

// Done counts one.
func (p *Progress) Done() {
	p.count++
	if !p.Shown || time.Since(p.told) < tellEvery {
		return
	}
	p.told, p.wroteLines = time.Now(), true
	fmt.Fprintf(p.out, "\r\x1b[K%s", progressLine(p.what, p.count, p.total, time.Since(p.began)))
}

// progressLine says how far, how fast, and how long still.
func progressLine(what string, count, total int, spent time.Duration) string {
	each := spent / time.Duration(max(count, 1))
	left := each * time.Duration(total-count)
	return fmt.Sprintf("%d of %d %s, %.0f a second, %s left",
		count, total, what, float64(count)/max(spent.Seconds(), 1e-9), left.Round(time.Second))
}

// End clears the line, and says where the work stopped before its end.
func (p *Progress) End() {
	if p.wroteLines {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
	if p.count < p.total {
		fmt.Fprintf(p.out, "dryfit: %d of %d %s were checked and written\n", p.count, p.total, p.what)
	}
}

// Say writes lines, as they are.
func (p *Progress) Say(lines []string) {
	for _, l := range lines {
		fmt.Fprintln(p.out, l)
	}
}

package main

import (
	"fmt"
	"io"
	"time"
)

// progress tells a person at a terminal how far a long work is. Elsewhere it
// only says that the work was cut short, and what a table has no room for.
type progress struct {
	out        io.Writer
	what       string // "options"
	shown      bool
	total      int
	count      int
	began      time.Time
	told       time.Time
	wroteLines bool
}

// tellEvery is how often the line is written again.
const tellEvery = 250 * time.Millisecond

func newProgress(out io.Writer, total int, what string) *progress {
	return &progress{out: out, what: what, shown: terminal(out), total: total}
}

func (p *progress) begin() { p.began, p.told = time.Now(), time.Now() }

// done counts one.
func (p *progress) done() {
	p.count++
	if !p.shown || time.Since(p.told) < tellEvery {
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

// end clears the line, and says where the work stopped before its end.
func (p *progress) end() {
	if p.wroteLines {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
	if p.count < p.total {
		fmt.Fprintf(p.out, "dryfit: %d of %d %s were worked out and are written\n", p.count, p.total, p.what)
	}
}

// say writes lines, as they are.
func (p *progress) say(lines []string) {
	for _, l := range lines {
		fmt.Fprintln(p.out, l)
	}
}

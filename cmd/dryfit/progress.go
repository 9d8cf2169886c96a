package main

import (
	"fmt"
	"io"
	"time"

	"dryfit/cmd/dryfit/internal/report"
)

// progress tells a person at a terminal how far a study is. Elsewhere it only
// says that a study was cut short, and what a table has no room for.
type progress struct {
	out        io.Writer
	shown      bool
	total      int
	count      int
	began      time.Time
	told       time.Time
	wroteLines bool
}

// tellEvery is how often the line is written again.
const tellEvery = 250 * time.Millisecond

func newProgress(out io.Writer, s report.Study) *progress {
	return &progress{out: out, shown: terminal(out), total: s.Last - s.First + 1}
}

func (p *progress) begin() { p.began, p.told = time.Now(), time.Now() }

// done counts one option.
func (p *progress) done() {
	p.count++
	if !p.shown || time.Since(p.told) < tellEvery {
		return
	}
	p.told, p.wroteLines = time.Now(), true
	fmt.Fprintf(p.out, "\r\x1b[K%s", progressLine(p.count, p.total, time.Since(p.began)))
}

// progressLine says how far, how fast, and how long still.
func progressLine(count, total int, spent time.Duration) string {
	each := spent / time.Duration(max(count, 1))
	left := each * time.Duration(total-count)
	return fmt.Sprintf("%d of %d options, %.0f a second, %s left",
		count, total, float64(count)/max(spent.Seconds(), 1e-9), left.Round(time.Second))
}

// end clears the line, and says where a study stopped before its end.
func (p *progress) end() {
	if p.wroteLines {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
	if p.count < p.total {
		fmt.Fprintf(p.out, "dryfit: %d of %d options were worked out and are written\n", p.count, p.total)
	}
}

// say writes lines, as they are.
func (p *progress) say(lines []string) {
	for _, l := range lines {
		fmt.Fprintln(p.out, l)
	}
}

package study

import (
	"slices"

	"dryfit/rules/engine"
)

// Tally counts what became of the options.
type Tally struct {
	Done     int // in order, from the first of the part
	Verdicts [engine.CouldNotCheck + 1]int
	// Invalid are the options that can't be made, by the key that is to be
	// edited; the reasons are kept in the order of their first option.
	Invalid int
	Reasons []Reason
	// Loosened is what the standards loosen and any option's check has used, each
	// once.
	Loosened []engine.Loosened
}

// Reason is why some options can't be made.
type Reason struct {
	Key   string
	Count int
	First int    // the first option
	Text  string // what is said of it
}

// Add counts a row.
func (t *Tally) Add(r Row) {
	t.Done++
	if r.Made() {
		t.Verdicts[r.Verdict]++
		t.Loosen(r.Loosened)
		return
	}
	t.Invalid++
	for i := range t.Reasons {
		if t.Reasons[i].Key == r.Key {
			t.Reasons[i].Count++
			return
		}
	}
	t.Reasons = append(t.Reasons, Reason{r.Key, 1, r.Index, r.Reason})
}

// Loosen keeps what the standards loosen, each once.
func (t *Tally) Loosen(list []engine.Loosened) {
	for _, l := range list {
		if !slices.ContainsFunc(t.Loosened, func(had engine.Loosened) bool { return had.Name == l.Name }) {
			t.Loosened = append(t.Loosened, l)
		}
	}
}

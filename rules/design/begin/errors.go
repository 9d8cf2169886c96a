package begin

import (
	"strings"

	"dryfit/rules/engine"
)

// ImpossibleError says that what is wanted is no ceiling at all.
type ImpossibleError struct {
	Key, Text string
	Instead   []string // what would do, if that was found
}

// Error is the key and what is wrong with its value.
func (e *ImpossibleError) Error() string { return e.Key + ": " + e.Text }

// NoAnswerError says what stands against every draft: the findings of the one
// that came nearest.
type NoAnswerError struct {
	Against []engine.Finding
	Instead []string // what would do, if that was found
}

// Error lists the findings that stand against the nearest draft.
func (e *NoAnswerError) Error() string {
	var said []string
	for _, f := range e.Against {
		said = append(said, f.Rule.ID+": "+f.Text)
	}
	return "no draft passes; the nearest draft fails " + strings.Join(said, "; ")
}

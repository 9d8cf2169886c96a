// Package exit has the exit statuses, and the errors that end a command with one.
package exit

import (
	"errors"
	"fmt"

	"dryfit/rules/engine"
)

// The exit statuses.
const (
	Fail        = 1
	NotChecked  = 2
	Interrupted = 130
)

// VerdictError ends a command whose work was done but whose outcome is not a
// pass. What there is to say has been written.
type VerdictError struct{ Status int }

// Error is seen only where a caller prints it by mistake.
func (e VerdictError) Error() string { return fmt.Sprintf("exit status %d", e.Status) }

// ErrNothingWritten ends an interrupted command whose whole purpose is its folder: the
// status is that of any folder that could not be written.
var ErrNothingWritten = errors.New("nothing is written")

// Outcome turns a verdict into the command's exit status.
func Outcome(v engine.Verdict) error {
	switch v {
	case engine.CouldNotCheck:
		return VerdictError{NotChecked}
	case engine.Failed:
		return VerdictError{Fail}
	default:
		return nil
	}
}

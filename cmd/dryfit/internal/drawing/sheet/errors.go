package sheet

import (
	"fmt"
)

// NeedsError says which key a sheet can't be drawn without.
type NeedsError struct{ Sheet, Key string }

// Error names the sheet and the key.
func (e *NeedsError) Error() string { return "the " + e.Sheet + " sheet needs " + e.Key }

// LimitError says what of a ceiling is more than a sheet can show.
type LimitError struct{ Sheet, Why string }

// Error names the sheet.
func (e *LimitError) Error() string { return "the " + e.Sheet + " sheet " + e.Why }

// FitError says that a drawing does not fit its paper at the scale asked for.
type FitError struct {
	Sheet, Scale, Paper string
	Fits                string // a scale, or a paper, that would do
}

// Error names the scale at which the sheet does fit.
func (e *FitError) Error() string {
	return fmt.Sprintf("the %s sheet does not fit %s at %s; %s does", e.Sheet, e.Paper, e.Scale, e.Fits)
}

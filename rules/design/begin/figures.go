package begin

import (
	"fmt"

	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// figures prints what a note says of the resolved ceiling.
type figures struct {
	ceiling *layout.Ceiling
}

// say prints a note with lengths of the ceiling in it; without a ceiling the
// note is left out.
func (f figures) say(format string, of func(c *layout.Ceiling) []any) string {
	if f.ceiling == nil {
		return ""
	}
	args := of(f.ceiling)
	for i, a := range args {
		switch a := a.(type) {
		case quantity.Length:
			args[i] = f.ceiling.Units.Format(a.Value())
		case quantity.Mass:
			args[i] = f.ceiling.Units.Format(a.Value())
		}
	}
	return fmt.Sprintf(format, args...)
}

package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/console"
)

// Help has a first line under 60 characters, lines that fit a terminal of 100
// columns with an indent, and says each flag's use without a capital or a full stop.
func TestHelpIsPlain(t *testing.T) {
	var all func(c *cobra.Command)
	all = func(c *cobra.Command) {
		assert.Less(t, utf8.RuneCountInString(c.Short), 60, c.CommandPath())
		for line := range strings.Lines(c.Long) {
			assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSuffix(line, "\n")), 90, "%s: %s", c.CommandPath(), line)
		}
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			assert.NotEmpty(t, f.Usage, f.Name)
			assert.False(t, strings.HasSuffix(f.Usage, "."), f.Usage)
		})
		for _, sub := range c.Commands() {
			all(sub)
		}
	}
	all(rootCommand(console.Streams{}))
}

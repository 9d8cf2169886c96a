// Package usage has what the commands' flags share, and answers unknown words.
package usage

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"
)

// CompleteWith gives the words that a shell completes a flag of the command with.
func CompleteWith(c *cobra.Command, flag string, words ...string) {
	err := c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic(err) // the flag is not one of the command's
	}
}

// JudgedOn is the date given, or today in UTC.
func JudgedOn(given string) (string, error) {
	if given == "" {
		return time.Now().UTC().Format(time.DateOnly), nil
	}
	if _, err := time.Parse(time.DateOnly, given); err != nil {
		return "", fmt.Errorf("--on %q is not a date; write 2027-06-30", given)
	}
	return given, nil
}

// OneOf lists words to choose from.
func OneOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

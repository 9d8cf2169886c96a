package usage

import (
	"errors"
	"runtime"
	"strconv"

	"github.com/spf13/cobra"
)

// Jobs is how many things a command does at a time. It has no default in the
// help, which is then the same on every machine.
type Jobs int

// AtATime adds --jobs to a command: as many as there are processors unless said
// otherwise.
func (j *Jobs) AtATime(c *cobra.Command, what string) {
	*j = Jobs(runtime.NumCPU())
	c.Flags().Var(j, "jobs", "how many "+what+" at a time (default: one for each processor)")
	c.Flags().Lookup("jobs").DefValue = ""
}

// Set takes a whole number from 1.
func (j *Jobs) Set(text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return errors.New("not a whole number from 1")
	}
	*j = Jobs(n)
	return nil
}

// String is the number, as a flag's default prints it.
func (j *Jobs) String() string { return strconv.Itoa(int(*j)) }

// Type is what the help calls the flag's value.
func (j *Jobs) Type() string { return "number" }

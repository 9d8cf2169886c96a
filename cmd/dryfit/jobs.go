package main

import (
	"errors"
	"runtime"
	"strconv"

	"github.com/spf13/cobra"
)

// jobs is how many things a command does at a time. It has no default in the
// help, which is then the same on every machine.
type jobs int

// atATime adds --jobs to a command: as many as there are processors unless said
// otherwise.
func (j *jobs) atATime(c *cobra.Command, what string) {
	*j = jobs(runtime.NumCPU())
	c.Flags().Var(j, "jobs", "how many "+what+" at a time (default: one for each processor)")
	c.Flags().Lookup("jobs").DefValue = ""
}

func (j *jobs) Set(text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return errors.New("not a whole number from 1")
	}
	*j = jobs(n)
	return nil
}

func (j *jobs) String() string { return strconv.Itoa(int(*j)) }
func (j *jobs) Type() string   { return "number" }

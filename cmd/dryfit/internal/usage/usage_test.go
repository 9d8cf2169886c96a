package usage

import (
	"runtime"
	"testing"
	"time"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// program has one command, draw, with the shared flags.
type program struct {
	root, draw *cobra.Command
	output, on string
	strict     bool
	standards  []string
}

func newProgram() *program {
	p := &program{root: &cobra.Command{Use: "dryfit"}, draw: &cobra.Command{Use: "draw", Run: func(*cobra.Command, []string) {}}}
	OutputFlag(p.draw.Flags(), &p.output)
	DateFlag(p.draw.Flags(), &p.on)
	StrictFlag(p.draw.Flags(), &p.strict)
	StandardsFlag(p.draw.Flags(), &p.standards)
	p.root.AddCommand(p.draw)
	return p
}

// The shared flags take what is given; a comma in the name of a standards file is part
// of the name.
func TestSharedFlags(t *testing.T) {
	p := newProgram()
	require.NoError(t, p.draw.ParseFlags([]string{"--output", "a.svg", "--on", "2027-06-30", "--strict", "--standards", "a,b.toml", "--standards", "c.toml"}))
	assert.Equal(t, "a.svg", p.output)
	assert.Equal(t, "2027-06-30", p.on)
	assert.True(t, p.strict)
	assert.Equal(t, []string{"a,b.toml", "c.toml"}, p.standards)
}

func TestJudgedOn(t *testing.T) {
	got, err := JudgedOn("2028-02-29")
	require.NoError(t, err)
	assert.Equal(t, "2028-02-29", got)
	for _, wrong := range []string{"2027-02-29", "30.6.2027", "2027-6-30", "tomorrow"} {
		_, err := JudgedOn(wrong)
		assert.EqualError(t, err, `--on "`+wrong+`" is not a date; write 2027-06-30`)
	}
	before := time.Now().UTC().Format(time.DateOnly)
	got, err = JudgedOn("")
	require.NoError(t, err)
	assert.Contains(t, []string{before, time.Now().UTC().Format(time.DateOnly)}, got, "today")
}

func TestJobs(t *testing.T) {
	draw := newProgram().draw
	var j Jobs
	j.AtATime(draw, "sheets to draw")
	assert.Equal(t, Jobs(runtime.NumCPU()), j)
	assert.NotContains(t, draw.Flags().FlagUsages(), j.String()+")", "the help is the same on every machine")
	require.NoError(t, draw.ParseFlags([]string{"--jobs", "3"}))
	assert.Equal(t, Jobs(3), j)
	for _, wrong := range []string{"0", "-1", "1.5", "all"} {
		assert.ErrorContains(t, draw.ParseFlags([]string{"--jobs", wrong}), "not a whole number from 1")
	}
	assert.Equal(t, Jobs(3), j)
}

// A mistyped word is answered with the nearest, one unlike all with where they are listed.
func TestUnknownWords(t *testing.T) {
	p := newProgram()
	for word, want := range map[string]string{
		"drew":           `no command "drew"; is it draw?`,
		"zzz":            `no command "zzz"; dryfit --help lists them`,
		"a.ceiling.toml": `no command "a.ceiling.toml"; is it dryfit check a.ceiling.toml?`,
	} {
		assert.EqualError(t, UnknownCommand(p.root, []string{word}), want)
	}
	assert.NoError(t, UnknownCommand(p.root, []string{"draw", "--zzz"}))
	for flag, want := range map[string]string{
		"--stirct": "unknown flag: --stirct; is it --strict?",
		"--zzzzzz": "unknown flag: --zzzzzz; dryfit draw --help lists them",
		"-z":       "unknown shorthand flag: 'z' in -z",
	} {
		assert.EqualError(t, UnknownFlag(p.draw, p.draw.ParseFlags([]string{flag})), want)
	}
}

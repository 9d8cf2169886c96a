package usage

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dryfit/cmd/dryfit/internal/source"
	"dryfit/spec/nearest"
)

// UnknownCommand is the error of arguments that begin with the name of no
// command; nil where they begin with one.
func UnknownCommand(root *cobra.Command, args []string) error {
	_, rest, err := root.Find(args)
	if err == nil {
		return nil
	}
	word := ""
	for _, a := range rest { // the flags of the program itself have no values
		if !strings.HasPrefix(a, "-") {
			word = a
			break
		}
	}
	if strings.HasSuffix(word, source.Extension) {
		return fmt.Errorf("no command %q; is it dryfit check %s?", word, word)
	}
	var known []string
	for _, c := range root.Commands() {
		if !c.Hidden {
			known = append(known, c.Name())
		}
	}
	return fmt.Errorf("no command %q%s", word, IsIt(word, known, "dryfit --help lists them"))
}

// RefuseUnknownHelp has the help command answer a name that is none as the
// program itself does.
func RefuseUnknownHelp(root *cobra.Command) {
	root.InitDefaultHelpCmd()
	help, _, err := root.Find([]string{"help"})
	if err != nil {
		panic(err) // it was just made
	}
	show := help.Run
	help.Run = nil
	help.RunE = func(c *cobra.Command, args []string) error {
		if err := UnknownCommand(root, args); err != nil {
			return err
		}
		show(c, args)
		return nil
	}
}

// UnknownFlag names the flag that was probably meant.
func UnknownFlag(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) || unknown.GetSpecifiedShortnames() != "" {
		return err
	}
	var known []string
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			known = append(known, "--"+f.Name)
		}
	})
	return fmt.Errorf("%w%s", err, IsIt("--"+unknown.GetSpecifiedName(), known, c.CommandPath()+" --help lists them"))
}

// IsIt ends a message on an unknown word: with the nearest known one, or else
// with where they are listed.
func IsIt(word string, known []string, otherwise string) string {
	if near, ok := nearest.Word(word, known); ok {
		return "; is it " + near + "?"
	}
	return "; " + otherwise
}

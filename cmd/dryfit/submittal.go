package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/submitting"
	"dryfit/cmd/dryfit/internal/usage"
)

func submittalCommand(s console.Streams) *cobra.Command {
	var f submitting.Flags
	c := &cobra.Command{
		Use:   "submittal SPEC...",
		Short: "Write the page that a reviewer reads and signs",
		Long: "Writes one self-contained page for the reviewer. It has the verdict; the findings beside\n" +
			"the drawings that show them; what is referred and to whom, with lines to sign; what was\n" +
			"accepted, assumed and not checked; the calculation sheet; the takeoff; and the SHA-256\n" +
			"of every file that it was made from. For several specs, or a folder, it writes a folder\n" +
			"of pages with an index.\n" +
			"\n" +
			"--verify reports whether an existing page still matches a spec, its standards and this\n" +
			"version of dryfit.\n" +
			"\n" +
			"Exit status: as check; with --verify 0 it matches, 1 it does not, 2 unknown. 130\n" +
			"interrupted.",
		Example: "  dryfit submittal specs/reading-room.ceiling.toml --output reading-room.html\n" +
			"  dryfit submittal specs --output submittals\n" +
			"  dryfit submittal --verify reading-room.html specs/reading-room.ceiling.toml",
		Args: cobra.MinimumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if f.Verify != "" {
				return submitting.Verify(s, args, f)
			}
			return submitting.Run(c.Context(), s, args, f)
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.Output, "output", "", "write to a `file` instead of standard output; of several specs, to a folder")
	flags.StringVar(&f.Verify, "verify", "", "an existing `page` to compare with the spec")
	usage.DateFlag(flags, &f.On)
	usage.StrictFlag(flags, &f.Strict)
	usage.StandardsFlag(flags, &f.Standards)
	f.Jobs.AtATime(c, "pages to make")
	return c
}
